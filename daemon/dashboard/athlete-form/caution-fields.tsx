import type { Caution } from '@platewright/core/records/athlete.ts';
import type { AthletePartProps } from './part.ts';

const words: readonly { caution: Caution; label: string }[] = [
  { caution: 'kidney', label: 'Kidney disease' },
  { caution: 'diabetes', label: 'Diabetes, or medicine for blood glucose' },
  { caution: 'pregnancy', label: 'Pregnancy or breast-feeding' },
  { caution: 'eating-disorder', label: 'An eating disorder, now or before' },
];

/** What the tool must be careful with. Each one shows a caution that defers to a professional. */
export function CautionFields({ draft, set }: Pick<AthletePartProps, 'draft' | 'set'>) {
  const toggle = (caution: Caution) =>
    set({
      cautions: draft.cautions.includes(caution)
        ? draft.cautions.filter((known) => known !== caution)
        : [...draft.cautions, caution],
    });
  return (
    <fieldset class="field">
      <legend>Does any of this apply? It stays with your records.</legend>
      {words.map(({ caution, label }) => (
        <label key={caution} class="check">
          <input
            type="checkbox"
            checked={draft.cautions.includes(caution)}
            onChange={() => toggle(caution)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
