/** In the place of a page when the browser can't read what it stored; `reason` is the browser's own. */
export function Unreadable({ reason }: { reason: string }) {
  return (
    <main class="alone">
      <h1>This browser can’t read what it stored</h1>
      <p>
        Close the browser whole and start it again; see also that its disk has room. Nothing that the daemon
        has is lost.
      </p>
      <p class="soft small">It says: {reason}</p>
    </main>
  );
}
