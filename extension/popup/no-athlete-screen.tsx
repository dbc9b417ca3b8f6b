/** Paired, but the store holds no athlete yet. */
export function NoAthleteScreen({ address }: { address: string }) {
  return (
    <main class="alone">
      <h1>One step left</h1>
      <p>
        Beams and meals follow from who you are and what you aim for. Say that once on the dashboard; it takes
        under a minute.
      </p>
      <p>
        <a class="button first" href={address} target="_blank" rel="noreferrer">
          Set up on the dashboard
        </a>
      </p>
    </main>
  );
}
