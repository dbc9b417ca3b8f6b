/** What this daemon is called. */
interface Own {
  /** Those it listens on. */
  ports: readonly number[];
  /** Of its interfaces, besides loopback; IPv6 without brackets. */
  addresses: readonly string[];
  /** Host names; they may come with any port, because a proxy may stand in front. */
  names: readonly string[];
}

const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]'];
/** Ports that a browser leaves out of the Host header. */
const UNSAID = [80, 443];

/**
 * Whether a Host header names this daemon. `own` is asked each time, because addresses change and a port may be chosen on
 * listening. No name beyond these: a name can be rebound to this machine by whoever owns it, an address can't.
 */
export function ownHosts(own: () => Own): (host: string) => boolean {
  return (host) => {
    const [, name = '', port] = /^(\[[\da-f:.]+\]|[a-z\d.-]+)(?::(\d{1,5}))?$/i.exec(host) ?? [];
    const lower = name.toLowerCase();
    const { ports, addresses, names } = own();
    if (names.includes(lower)) return true;
    const fits = port === undefined ? ports.some((p) => UNSAID.includes(p)) : ports.includes(Number(port));
    if (!fits) return false;
    return LOOPBACK.includes(lower) || addresses.some((a) => lower === (a.includes(':') ? `[${a}]` : a));
  };
}
