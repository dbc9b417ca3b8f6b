import type { WeeklyCall } from '@platewright/core/call/output.ts';

/** What the call rests on, what was left out and why, and what would have made it another one. */
export function Evidence({ call }: { call: WeeklyCall }) {
  const used = call.evidence.filter((item) => item.used);
  const left = call.evidence.filter((item) => !item.used);
  return (
    <div class="two-columns even">
      <div>
        <h3>Used</h3>
        <ul class="rows">
          {used.map((item) => (
            <li key={item.code}>
              {item.text} <span class="soft small">{item.why}</span>
            </li>
          ))}
        </ul>
      </div>
      <div class="stack">
        {left.length > 0 && (
          <div>
            <h3>Left out</h3>
            <ul class="rows">
              {left.map((item) => (
                <li key={item.code}>
                  {item.text} <span class="soft small">{item.why}</span>
                </li>
              ))}
            </ul>
          </div>
        )}
        {call.wouldChange.length > 0 && (
          <div>
            <h3>What would have changed it</h3>
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
