import type { Caution } from '@platewright/core/call/output.ts';

const heads: Record<Caution['level'], string> = {
  stop: 'Stop, and see a professional.',
  warn: 'Before you accept:',
  note: 'Good to know:',
};

interface CallCautionsProps {
  /** What the athlete said at set-up. */
  stated: readonly string[];
  cautions: readonly Caution[];
}

/** What the athlete stated, then the cautions of a call with the weightiest first. */
export function CallCautions({ stated, cautions }: CallCautionsProps) {
  if (stated.length + cautions.length === 0) return null;
  const order: readonly Caution['level'][] = ['stop', 'warn', 'note'];
  return (
    <div class="caution" role="note" aria-label="Cautions">
      {stated.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
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
