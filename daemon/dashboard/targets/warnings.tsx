/** Cautions, each one before anything it is about. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <div class="caution" role="note" aria-label="Cautions">
      {cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}

/** The rules that gave way to others, one sentence each. */
export function GaveWay({ sentences }: { sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <div class="gave-way">
      <h3>Which rule gave way</h3>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}
