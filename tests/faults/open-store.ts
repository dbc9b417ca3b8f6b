/**
 * Opens the store in a folder as its owner, as a start does. With a number it kills itself before the statement of that
 * number; without one it prints how many there are.
 */
import { DatabaseSync, StatementSync } from 'node:sqlite';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';

const [folder = '', stop] = process.argv.slice(2);
let statements = 0;

function count(): void {
  statements += 1;
  if (String(statements) === stop) process.kill(process.pid, 'SIGKILL');
}

const { exec } = DatabaseSync.prototype;
DatabaseSync.prototype.exec = function (sql) {
  // The model in memory, which the schema is compared with, is nobody's store.
  if (this.location() === null) return exec.call(this, sql);
  for (const statement of sql.split(/;\s*(?:\n|$|(?=PRAGMA))/).filter((part) => part.trim() !== '')) {
    count();
    exec.call(this, statement);
  }
};
StatementSync.prototype.run = new Proxy(StatementSync.prototype.run, {
  apply(run, statement, values) {
    count();
    return Reflect.apply(run, statement, values);
  },
});

await openSqliteStore(folder, 'owner').close();
console.log(statements);
