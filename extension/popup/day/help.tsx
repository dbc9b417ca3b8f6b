const keys = [
  ['Enter', 'log what the line says; or take what the list points at'],
  ['↓ ↑', 'through the list'],
  ['Esc', 'close these keys or the list, then empty the line'],
  ['Alt 1 … 9', 'log a standing meal'],
  ['Page Up, Down', 'meal before, meal after'],
  ['Alt Page Up, Down', 'day before, day after'],
  ['Ctrl Z', 'undo, when the line is empty'],
  ['Tab', 'to the entries'],
  ['↓ ↑ Enter M Delete', 'on an entry: next, weigh anew, move, remove'],
  ['?', 'these keys, when the line is empty'],
] as const;

/** What the keys do. */
export function Help({ close }: { close: () => void }) {
  return (
    <section class="help" aria-labelledby="help-title">
      <h2 id="help-title">Keys</h2>
      <dl>
        {keys.map(([key, does]) => (
          <div key={key} class="help-row">
            <dt>{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <button type="button" class="button small" onClick={close}>
        Close
      </button>
    </section>
  );
}
