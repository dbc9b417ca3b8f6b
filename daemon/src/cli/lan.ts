import { readFileSync } from 'node:fs';
import { localName, ownAddresses } from '../network/addresses.ts';
import { type Certificate, fingerprints, isPair, keptCertificate } from '../network/certificate.ts';
import type { Network } from '../server/serve.ts';
import type { Store } from '../store/store.ts';
import { CommandTrouble, note } from './command.ts';
import { type Addresses, keepAddresses, pairingLink } from './known-addresses.ts';
import type { NetworkSettings } from './network-settings.ts';

const RENEW_EVERY_MS = 12 * 3600 * 1000;

/** What to serve with: certificate and names, from settings and the folder that certificates are kept in. */
export async function networkOf(settings: NetworkSettings, folder: string): Promise<Network> {
  const { lan, front } = settings;
  if (lan === null) return { lan, front, names: settings.names };
  const names = [localName(), ...settings.names];
  return { lan: { port: lan.port, certificate: await certificateOf(settings, folder) }, front, names };
}

/** Where the network finds a daemon that listens on `port`. */
export function lanAddresses({ lan, front }: Network, port: number | null): Addresses['lan'] {
  if (lan === null || port === null) return null;
  const { certificate: fingerprint, key } = fingerprints(lan.certificate);
  return { named: `https://${localName()}:${port}${front.basePath}/`, fingerprint, key };
}

/** The same page by the address that this machine has now. */
function byAddress(named: string): string {
  const url = new URL(named);
  const [first] = ownAddresses();
  if (first !== undefined) url.hostname = first.includes(':') ? `[${first}]` : first;
  return url.href;
}

/** Says how to let a phone in, with a code to scan. */
export async function sayLan({ named, fingerprint }: NonNullable<Addresses['lan']>, code: string) {
  const link = pairingLink(byAddress(named), code);
  const { toString: draw } = await import('qrcode');
  note(await draw(link, { type: 'utf8', errorCorrectionLevel: 'L' }));
  note(`On a phone in this network scan this, or open ${link} (or ${named} and the code ${code}).
Its browser warns that it does not know the certificate, because it is your own. Go on only if it shows this fingerprint:
${fingerprint}`);
}

interface RunningLan {
  lanPort: number | null;
  /** Where it is served, as other commands are told. */
  addresses: Addresses;
  renew(certificate: Certificate): void;
}

/** Makes the daemon known in the network and renews its certificate in time. Returns how to end that. */
export async function keepLan(
  running: RunningLan,
  settings: NetworkSettings,
  { folder, store }: { folder: string; store: Store },
): Promise<() => void> {
  if (settings.lan === null || running.lanPort === null) return () => undefined;
  const renew = async () => {
    const certificate = await certificateOf(settings, folder);
    running.renew(certificate);
    const { page, lan } = running.addresses;
    // Whoever pairs compares it with what the browser shows.
    const fingerprint = fingerprints(certificate).certificate;
    if (lan !== null) await keepAddresses(store, { page, lan: { ...lan, fingerprint } });
  };
  const { announce } = await import('../network/announce.ts');
  const announcement = announce(localName(), running.lanPort, (reason) =>
    note(`The name ${localName()} could not be announced in the network (${reason}); the address works.`),
  );
  const renewal = setInterval(() => {
    renew().catch((error: unknown) =>
      note(`The certificate could not be renewed: ${error instanceof Error ? error.message : String(error)}`),
    );
  }, RENEW_EVERY_MS).unref();
  return () => {
    clearInterval(renewal);
    announcement.stop();
  };
}

async function certificateOf({ lan, names }: NetworkSettings, folder: string): Promise<Certificate> {
  if (lan?.own === null || lan === null) {
    const wanted = { names: [localName(), ...names], addresses: ownAddresses() };
    return await keptCertificate(folder, wanted, Date.now());
  }
  const own = { key: read(lan.own.key), cert: read(lan.own.cert) };
  if (isPair(own)) return own;
  throw new CommandTrouble(
    `${lan.own.key} is not the key of the certificate ${lan.own.cert}, or one can't be read.`,
  );
}

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new CommandTrouble(`${path} can't be read.`);
  }
}
