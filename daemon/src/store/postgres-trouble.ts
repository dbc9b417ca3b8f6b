import { damaged } from './rows.ts';
import { StoreTrouble } from './trouble.ts';

/** No address in these: it may hold a password. */
const UNREACHABLE = new StoreTrouble(
  'unreachable',
  'The database does not answer. Look whether PostgreSQL runs, and at the address after --store.',
);
const REFUSED = new StoreTrouble(
  'unreachable',
  'The database does not let this user in, or does not let it make tables. Look at user, password and name of the database.',
);
const UNTRUSTED = new StoreTrouble(
  'unreachable',
  'The database does not show a certificate that is trusted. Name the file of its authority after --store, as sslrootcert=FILE.',
);
const FULL = new StoreTrouble(
  'full',
  'The disk of the database is full. Nothing was saved; free some space.',
);

/** SQLSTATE codes or their classes (PostgreSQL manual, appendix A) in words for the person whose store it is. */
const IN_WORDS: readonly [RegExp, () => StoreTrouble][] = [
  [/^53100$/, () => FULL],
  [/^(28|3D|42501)/, () => REFUSED],
  [/^XX00[12]$/, () => damaged('PostgreSQL can not read it')],
  [/^(CERT_|DEPTH_|SELF_SIGNED|UNABLE_TO_|ERR_TLS)/, () => UNTRUSTED],
  [/^(08|53|57P|E[A-Z]+$)/, () => UNREACHABLE],
];

/** The error as StoreTrouble when a person can mend it, else as it came. */
export function explainPostgres(error: unknown): unknown {
  if (!(error instanceof Error) || error instanceof StoreTrouble) return error;
  if (
    /Connection terminated|timeout exceeded when trying to connect|does not support SSL/.test(error.message)
  ) {
    return UNREACHABLE;
  }
  const code = 'code' in error ? String(error.code) : '';
  return IN_WORDS.find(([codes]) => codes.test(code))?.[1]() ?? error;
}
