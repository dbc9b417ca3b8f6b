import { PROTOCOL_HEADER } from '@platewright/core/protocol/version.ts';
import { getPath } from 'hono/utils/url';
import type { Bindings, Deps } from './deps.ts';
import { type Headed, readableBy } from './headers.ts';
import { ProblemError, problemResponse } from './problem.ts';
import { type Site, siteOf, withoutBase } from './site.ts';

const EXTENSION_ORIGIN = /^(chrome-extension|moz-extension):\/\/[A-Za-z0-9-]{1,64}$/;

/** What answers a request. */
export type Answering<B> = (request: Request, bindings: B) => Response | Promise<Response>;

/** A request as the guard looks at it. */
interface Asked {
  method: string;
  /** Without a proxy's base path. */
  path: string;
  header(name: string): string | undefined;
}

/**
 * What stands before every route; not a step of the router's chain, because each of those costs every request. Another
 * host is refused before anything else: a page whose name was rebound to this address sends neither Origin nor Sec-Fetch
 * headers, so only Host tells. The answer has no body, because that page could read it.
 */
export function guard(
  { front, isOwnHost }: Pick<Deps, 'front' | 'isOwnHost'>,
  route: Answering<Bindings>,
): Answering<Headed & Pick<Bindings, 'seen'>> {
  return (request, bindings) => {
    const { method, url, headers } = request;
    const header = (name: string) => headers.get(name) ?? undefined;
    const site = siteOf({ url, header, socket: bindings.incoming?.socket }, front);
    // What a proxy adds a page can say as well, when its requests come from where the proxy's do.
    const said = header('host') ?? '';
    const isOwn = isOwnHost(said) && (site.host === said || isOwnHost(site.host));
    if (!isOwn) return new Response(null, { status: 421 });
    const asked = { method, path: withoutBase(getPath(request), front.basePath), header };
    const extension = extensionOf(asked);
    const answer = () => route(request, { ...bindings, site, extension });
    if (extension === null) return isOwnOrigin(asked, site) ? answer() : problemResponse(foreign());
    if (!asked.path.startsWith('/v1/')) return answer();
    return readableBy(extension, bindings, method === 'OPTIONS' ? preflight : answer);
  };
}

/** Origin of the extension that asks. */
function extensionOf({ header }: Asked): string | null {
  const origin = header('origin');
  return origin !== undefined && EXTENSION_ORIGIN.test(origin) ? origin : null;
}

/**
 * Whether the dashboard's own origin asks: beside extensions, nothing else is let in. A write must say its Origin; a GET
 * may lack it, as an extension's with host permission does.
 */
function isOwnOrigin(asked: Asked, { scheme, host }: Site): boolean {
  const origin = asked.header('origin');
  if (origin === undefined ? !isRead(asked) : origin !== `${scheme}://${host}`) return false;
  return !isFromOtherSite(asked) || isPageVisit(asked);
}

function isRead({ method }: Asked): boolean {
  return method === 'GET' || method === 'HEAD';
}

/** Other ports of this machine count as the same site, so `same-site` is foreign too. */
function isFromOtherSite({ header }: Asked): boolean {
  const site = header('sec-fetch-site');
  return site === 'cross-site' || site === 'same-site';
}

/** A link to the dashboard that was followed in a tab. */
function isPageVisit(asked: Asked): boolean {
  return (
    isRead(asked) &&
    asked.header('sec-fetch-mode') === 'navigate' &&
    asked.header('sec-fetch-dest') === 'document' &&
    !asked.path.startsWith('/v1/')
  );
}

/** An extension that was not granted this address as a host asks first. */
function preflight(): Response {
  const headers = {
    'access-control-allow-methods': 'GET, POST, DELETE',
    'access-control-allow-headers': `authorization, content-type, ${PROTOCOL_HEADER}`,
    'access-control-max-age': '600',
  };
  return new Response(null, { status: 204, headers });
}

function foreign(): ProblemError {
  return new ProblemError(403, 'foreign-origin', {
    detail:
      'Only the dashboard and a paired extension may ask. Open the dashboard at the address the daemon printed.',
  });
}
