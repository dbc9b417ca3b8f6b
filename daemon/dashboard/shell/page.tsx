import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';

export interface PageProps {
  title: string;
  /** One line under the title. */
  lead?: ComponentChildren;
  /** What stands at the right of the title: a date, a button. */
  aside?: ComponentChildren;
  children: ComponentChildren;
}

/** A page: its head over a double rule, then what it shows. */
export function Page({ title, lead, aside, children }: PageProps) {
  useEffect(() => {
    document.title = `${title} · Platewright`;
  }, [title]);
  return (
    <main class="page" id="main" tabIndex={-1}>
      <header class="page-head">
        <div>
          <h1>{title}</h1>
          {lead && <p class="soft">{lead}</p>}
        </div>
        {aside && <div class="page-aside">{aside}</div>}
      </header>
      {children}
    </main>
  );
}

/** A part of a page under its own heading. */
export function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="section">
      <h2>{title}</h2>
      {children}
    </section>
  );
}
