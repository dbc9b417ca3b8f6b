import type { EvidenceItem, WeeklyCall } from '@platewright/core/call/output.ts';

/** What the call rests on, what was left out and why, and what would have made it another one. */
export function Evidence({ call }: { call: WeeklyCall }) {
  const used = call.evidence.filter((item) => item.used);
  const left = call.evidence.filter((item) => !item.used);
  return (
    <div class="two-columns even">
      {used.length > 0 && (
        <div>
          <h3>Used</h3>
          <EvidenceRows items={used} />
        </div>
      )}
      <div class="stack">
        {left.length > 0 && (
          <div>
            <h3>Left out</h3>
            <EvidenceRows items={left} />
          </div>
        )}
        {call.wouldChange.length > 0 && (
          <div>
            <h3>{call.verdict === 'not-enough' ? 'What to record' : 'What would have changed it'}</h3>
            <ul class="rows">
              {call.wouldChange.map((item) => (
                <li key={item.code}>{item.text}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </div>
  );
}

function EvidenceRows({ items }: { items: readonly EvidenceItem[] }) {
  return (
    <ul class="rows">
      {items.map((item) => (
        // Two told moves have one code.
        <li key={item.text}>
          {item.text} <span class="soft small">{item.why}</span>
        </li>
      ))}
    </ul>
  );
}
