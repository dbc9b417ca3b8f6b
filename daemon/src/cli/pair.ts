import { readRecord } from '@platewright/core/changes/read.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { issueCode } from '../server/issue-code.ts';
import { openStore } from '../store/open.ts';
import { isServed } from '../store/sqlite.ts';
import type { Store } from '../store/store.ts';
import { type Command, CommandTrouble, note, printable, say } from './command.ts';
import { knownAddresses, pairingLink, pairingText } from './known-addresses.ts';
import { sayLan } from './lan.ts';
import { settings, storeOptions, text } from './settings.ts';

export const pair: Command = {
  name: 'pair',
  operands: '',
  mostOperands: 0,
  options: { ...storeOptions, athlete: { type: 'string' }, 'read-only': { type: 'boolean' } },
  help: `  npx platewright pair
  npx platewright pair --athlete Ann --read-only

Prints a code to type into the extension, and a link that pairs a dashboard with the same code. It is good once, for ten
minutes; five wrong tries burn it. The device it pairs may do everything, unless --athlete holds it to one athlete (by name
or id) or --read-only lets it look and not write.`,
  async run(given) {
    const { data, store: address } = settings(given);
    const store = await openStore({ data, store: address }, 'guest');
    try {
      const athlete = text(given.values.athlete);
      const rights: Rights = {
        athlete: athlete === undefined ? null : await athleteCalled(store, athlete),
        access: given.values['read-only'] === true ? 'read' : 'write',
      };
      const { code } = await issueCode(store, Date.now(), rights);
      const { page, lan } = await knownAddresses(store);
      say(code);
      note(
        `Type ${pairingText(page, code)} into the extension, or open ${pairingLink(page, code)} in a browser. It is good once, for ten minutes.`,
      );
      if (lan !== null) await sayLan(lan, code);
      if (!isServed(data)) note('The daemon is not running: start it within these ten minutes.');
    } finally {
      await store.close();
    }
  },
};

async function athleteCalled(store: Store, called: string): Promise<string> {
  const athletes = (await store.records({ kind: 'athlete' }))
    .map((record) => readRecord('athlete', record))
    .filter((athlete) => athlete !== null);
  const lower = called.trim().toLowerCase();
  const found = athletes.filter(({ id, name }) => id === called || name.toLowerCase() === lower);
  const [athlete] = found;
  if (athlete !== undefined && found.length === 1) return athlete.id;
  const many = found.length > 1 ? `${found.length} athletes are` : 'No athlete is';
  const known = athletes.map(({ id, name }) => `${printable(name)} (${id})`).join(', ');
  throw new CommandTrouble(`${many} called ${called}. There are: ${known || 'none yet'}.`);
}
