import { openSqliteStore } from '../store/sqlite.ts';
import type { Command } from './command.ts';
import { runDaemon } from './run-daemon.ts';
import { serveOptions, settings } from './settings.ts';

export const start: Command = {
  name: 'start',
  operands: '',
  mostOperands: 0,
  options: serveOptions,
  help: `  platewright start
  platewright start --port 9000 --data ~/records

It listens on 127.0.0.1 only. Records are kept in $XDG_DATA_HOME/platewright unless --data names another folder, on port
8787 unless --port names another one. PLATEWRIGHT_DATA and PLATEWRIGHT_PORT do the same, and so do data and port in
$XDG_CONFIG_HOME/platewright/config.json.`,
  async run(given) {
    const { data, port } = settings(given);
    const store = openSqliteStore(data, 'owner');
    await runDaemon(
      store,
      port,
      'Only looking? npm start -- --demo shows a finished season of an invented athlete, in a store of its own.',
    );
  },
};
