import type { ComponentChildren } from 'preact';

/** A page with nothing on it yet: what it will show, what it needs, and the one button that starts it. */
export function Empty({
  shows,
  needs,
  children,
}: {
  shows: string;
  needs: string;
  children?: ComponentChildren;
}) {
  return (
    <div class="empty">
      <p class="empty-shows">{shows}</p>
      <p class="soft">{needs}</p>
      {children}
    </div>
  );
}
