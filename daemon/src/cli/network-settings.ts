import { behindProxies, type Front, noProxy } from '../server/site.ts';
import { CommandTrouble, type Given } from './command.ts';
import { configFile } from './config-file.ts';
import { PORTS, readPort, text } from './settings.ts';

export const networkOptions = {
  lan: { type: 'boolean' },
  'lan-port': { type: 'string' },
  cert: { type: 'string' },
  key: { type: 'string' },
  host: { type: 'string', multiple: true },
  'base-path': { type: 'string' },
  'trusted-proxy': { type: 'string', multiple: true },
} as const;

export interface NetworkSettings {
  /** Null for loopback only. `own` are files of a certificate that the person has. */
  lan: { port: number; own: { cert: string; key: string } | null } | null;
  /** In small letters. */
  names: readonly string[];
  front: Front;
}

export const loopbackOnly: NetworkSettings = { lan: null, names: [], front: noProxy };

/** Who may reach the daemon: the command line over the config file. Without either it is this machine alone. */
export function networkSettings({ values }: Given): NetworkSettings {
  const file = configFile();
  const port = text(values['lan-port']);
  const typed = { cert: text(values.cert), key: text(values.key) };
  const { cert, key } = typed.cert === undefined && typed.key === undefined ? file : typed;
  if ((cert === undefined) !== (key === undefined))
    throw new CommandTrouble('A certificate and its key go together: name both --cert and --key.', 2);
  const own = cert === undefined || key === undefined ? null : { cert, key };
  const lanPort = port === undefined ? (file.lanPort ?? PORTS.lan) : readPort(port);
  return {
    lan: (values.lan ?? file.lan) === true ? { port: lanPort, own } : null,
    names: (texts(values.host) ?? file.hosts ?? []).map(readName),
    front: readFront(
      text(values['base-path']) ?? file.basePath ?? '',
      texts(values['trusted-proxy']) ?? file.trustedProxies ?? [],
    ),
  };
}

function readName(typed: string): string {
  if (/^[a-z\d]([a-z\d.-]*[a-z\d])?$/i.test(typed)) return typed.toLowerCase();
  throw new CommandTrouble(`A host is a name without port or slash, not “${typed}”.`, 2);
}

function readFront(basePath: string, proxies: readonly string[]): Front {
  const path = basePath.replace(/\/+$/, '');
  // A browser takes away . and .. before it asks.
  if (path !== '' && !/^(\/(?!\.{1,2}(\/|$))[\w.~-]+)+$/.test(path))
    throw new CommandTrouble(`A base path is like /plates, not “${basePath}”.`, 2);
  try {
    return behindProxies(path, proxies);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new CommandTrouble(
      `A trusted proxy is an address or a network such as 10.0.0.0/8: ${error.message}.`,
      2,
    );
  }
}

function texts(value: unknown): string[] | undefined {
  return Array.isArray(value) ? value.map(String) : undefined;
}
