import { BlockList, isIP, type Socket } from 'node:net';

/** What stands between a browser and this daemon. */
export interface Front {
  /** Path under which a proxy shows this daemon: `/a/b`, or empty. */
  basePath: string;
  /** Whether what an address says in X-Forwarded headers counts. */
  isTrusted(address: string): boolean;
}

/** How the browser that asks sees this daemon. */
export interface Site {
  scheme: 'http' | 'https';
  /** With its port, unless that is the scheme's own. */
  host: string;
  /** Path that all of its addresses begin with, with a slash at both ends. */
  path: string;
}

/** Nothing in between. */
export const noProxy: Front = { basePath: '', isTrusted: () => false };

/** Trusts the proxies at these addresses or networks (`172.16.0.0/12`). Throws RangeError for what is neither. */
export function behindProxies(basePath: string, proxies: readonly string[]): Front {
  const list = new BlockList();
  for (const proxy of proxies) {
    const [address = '', bits] = proxy.split('/');
    const version = isIP(address);
    if (version === 0) throw new RangeError(`${proxy} is no address`);
    const family = version === 4 ? 'ipv4' : 'ipv6';
    if (bits === undefined) list.addAddress(address, family);
    else list.addSubnet(address, /^\d{1,3}$/.test(bits) ? Number(bits) : -1, family);
  }
  return {
    basePath,
    isTrusted(address) {
      const plain = address.replace(/^::ffff:(?=\d+\.)/, '');
      return isIP(plain) !== 0 && list.check(plain, isIP(plain) === 4 ? 'ipv4' : 'ipv6');
    },
  };
}

interface Asked {
  url: string;
  header(name: string): string | undefined;
  /** Without one, as in tests, the address alone tells. */
  socket: Socket | undefined;
}

/** The site of a request. What X-Forwarded headers say counts only when a trusted proxy sent it. */
export function siteOf({ url, header, socket }: Asked, { basePath, isTrusted }: Front): Site {
  const encrypted = socket === undefined ? url.startsWith('https:') : 'encrypted' in socket;
  const direct = { scheme: encrypted ? 'https' : 'http', host: header('host') ?? '' } as const;
  const forwarded = isTrusted(socket?.remoteAddress ?? '');
  // A proxy may take the base path away before it passes a request on.
  const within = forwarded || (basePath !== '' && new URL(url).pathname.startsWith(`${basePath}/`));
  const path = within ? `${basePath}/` : '/';
  if (!forwarded) return { ...direct, path };
  const proto = lastOf(header('x-forwarded-proto'));
  return {
    scheme: proto === 'https' || proto === 'http' ? proto : direct.scheme,
    host: lastOf(header('x-forwarded-host')) ?? direct.host,
    path,
  };
}

/** A path without the base path that a proxy left in front of it. */
export function withoutBase(path: string, basePath: string): string {
  return basePath !== '' && path.startsWith(`${basePath}/`) ? path.slice(basePath.length) : path;
}

/** Of a list that proxies add to, only what the nearest one added is its own word. */
function lastOf(list: string | undefined): string | undefined {
  return list?.split(',').at(-1)?.trim().toLowerCase();
}
