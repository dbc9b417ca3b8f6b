/** What a page says when the browser can't read what it stored; `reason` is the browser's own. */
export function Unreadable({ reason }: { reason: string }) {
  return (
    <>
      <h1>This browser can’t read what it stored</h1>
      <p>
        Close all its windows and start it again, and see that its disk has room. What the daemon has is not
        lost.
      </p>
      <p class="soft small">It says: {reason}</p>
    </>
  );
}
