import { dateSchema } from '@platewright/core/records/scalars.ts';
import { useEffect, useState } from 'preact/hooks';

const pages = ['today', 'larder', 'body', 'lifts', 'week', 'plan', 'roster', 'devices', 'set-up'] as const;
export type Page = (typeof pages)[number];

/** Where the reader is: the page, and what follows it in the address, such as a date. */
export interface Route {
  page: Page;
  rest: string;
}

/** The route of an address fragment such as `#/today/2025-03-03`; a page that is unknown, and a date that is none, is today. */
function routeOf(hash: string): Route {
  const [name = '', rest = ''] = hash.replace(/^#\/?/, '').split('/');
  const page = pages.find((known) => known === name);
  const date = dateSchema.safeParse(rest);
  return page ? { page, rest: date.success ? date.data : '' } : { page: 'today', rest: '' };
}

export function hrefOf(page: Page, rest = ''): string {
  return rest ? `#/${page}/${rest}` : `#/${page}`;
}

/** The code of an address such as `#pair=ABCD-EFGH`, taken out of the address so that it is not left in the history. */
function takePairingCode(): string | null {
  const match = /^#pair=([A-Za-z0-9-]+)$/.exec(location.hash);
  if (!match?.[1]) return null;
  history.replaceState(null, '', location.pathname + location.search);
  return match[1];
}

/** The code of the link that was opened last; `arrived` is called when one comes while the page stands open. */
export function usePairingCode(arrived: () => void): string | null {
  const [code, setCode] = useState(takePairingCode);
  useEffect(() => {
    const follow = () => {
      const next = takePairingCode();
      if (next === null) return;
      setCode(next);
      arrived();
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return code;
}

export function useRoute(): Route {
  const [route, setRoute] = useState(() => routeOf(location.hash));
  useEffect(() => {
    const follow = () => setRoute(routeOf(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return route;
}
