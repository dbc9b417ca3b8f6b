import { issueCode } from '../server/issue-code.ts';
import { openStore } from '../store/open.ts';
import { isServed } from '../store/sqlite.ts';
import { type Command, note, say } from './command.ts';
import { dashboardLink, PORT_SETTING } from './run-daemon.ts';
import { DEFAULT_PORT, settings, storeOptions } from './settings.ts';

export const pair: Command = {
  name: 'pair',
  operands: '',
  mostOperands: 0,
  options: storeOptions,
  help: `  platewright pair

Prints a code to type into the extension, and a link that pairs a dashboard with the same code. It is good once, for ten
minutes; five wrong tries burn it.`,
  async run(given) {
    const { data, store: address } = settings(given);
    const store = await openStore({ data, store: address }, 'guest');
    try {
      const { code } = await issueCode(store, Date.now());
      const port = Number((await store.setting(PORT_SETTING)) ?? DEFAULT_PORT);
      say(code);
      note(
        `Type it into the extension, or open ${dashboardLink(port, code)} in a browser. It is good once, for ten minutes.`,
      );
      if (!isServed(data)) note('The daemon is not running: start it within these ten minutes.');
    } finally {
      await store.close();
    }
  },
};
