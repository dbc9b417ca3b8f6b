import { pairingCheck } from '../server/secrets.ts';
import { openStore } from '../store/open.ts';
import type { Store, StoredDevice } from '../store/store.ts';
import { type Command, CommandTrouble, note, printable, say } from './command.ts';
import { knownAddresses } from './known-addresses.ts';
import { optionsFor, settings, storeOptions } from './settings.ts';

export const devices: Command = {
  name: 'devices',
  operands: '[revoke ID]',
  mostOperands: 2,
  options: storeOptions,
  help: `  npx platewright devices
  npx platewright devices revoke 0193a5c2

A line for each device: id, kind, when it was last seen, state, rights, check, name. The rights are write or read, and the
id of the athlete when they are held to one; the check is what the device showed when it was paired. The start of an id is enough to revoke it. It is
shut out with its next request, and what it has not sent yet stays on it.`,
  async run(given) {
    const [action, id] = given.positionals;
    if (action !== undefined && (action !== 'revoke' || !id)) {
      throw new CommandTrouble('It is npx platewright devices, or npx platewright devices revoke ID.', 2);
    }
    const place = settings(given);
    const [store, options] = [await openStore(place, 'guest'), optionsFor(place)];
    try {
      if (id === undefined) await list(store, options);
      else await revoke(store, id, options);
    } finally {
      await store.close();
    }
  },
};

async function list(store: Store, options: string): Promise<void> {
  const all = await store.devices();
  const key = (await knownAddresses(store)).lan?.key ?? '';
  for (const device of all) say(row(device, key));
  if (all.length === 0) note(`No device is paired yet. Run npx platewright pair${options}.`);
}

function row({ id, kind, name, rights, lastSeenAt, revokedAt }: StoredDevice, key: string): string {
  const seen = lastSeenAt === null ? 'never' : new Date(lastSeenAt).toISOString();
  const state = revokedAt === null ? 'paired' : 'revoked';
  const may = rights.athlete === null ? rights.access : `${rights.access} ${rights.athlete}`;
  return [id, kind, seen, state, may, pairingCheck(key, id), printable(name)].join('\t');
}

async function revoke(store: Store, start: string, options: string): Promise<void> {
  const found = (await store.devices()).filter(({ id }) => id.startsWith(start));
  const [device] = found;
  if (device === undefined || found.length > 1) {
    const many = found.length > 1 ? `${found.length} devices start` : 'No device starts';
    throw new CommandTrouble(`${many} with ${start}. npx platewright devices${options} lists them.`);
  }
  await store.putDevice({ ...device, revokedAt: device.revokedAt ?? Date.now() });
  note(`The key of ${printable(device.name)} was taken back.`);
}
