import type { Caution } from '@platewright/core/call/output.ts';

const heads: Record<Caution['level'], string> = {
  stop: 'Stop, and see a professional.',
  warn: 'Before you accept:',
  note: 'Good to know:',
};

/** Cautions of a call, the weightiest first. */
export function CallCautions({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  const order: readonly Caution['level'][] = ['stop', 'warn', 'note'];
  return (
    <div class="caution" role="note" aria-label="Cautions">
      {order.flatMap((level) =>
        cautions
          .filter((caution) => caution.level === level)
          .map((caution) => (
            <p key={caution.code}>
              <b>{heads[level]}</b> {caution.text}
            </p>
          )),
      )}
    </div>
  );
}
