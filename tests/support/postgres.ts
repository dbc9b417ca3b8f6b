import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './port.ts';

/** A PostgreSQL of one's own, in a folder that is gone when it stops. */
export interface Postgres {
  /** Address of a new empty database, whose owner is no superuser. */
  database(): Promise<string>;
  /** File of the certificate that it shows. */
  certificate: string;
  /** Runs SQL as superuser in the database of an address. */
  asSuperuser(address: string, sql: string): void;
  /** The database of an address as its own tool dumps it, and such a dump as a new database. */
  dump(address: string): string;
  load(dump: string): Promise<string>;
  /** Takes lines of COPY's text format into a table, named with its columns, of the database of an address. */
  copyInto(address: string, table: string): { write(lines: string): Promise<void>; end(): Promise<void> };
  stop(): void;
}

/** What openssl is told to make a certificate of its own for 127.0.0.1. */
const CERTIFICATE = [
  ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-days', '2'],
  ...['-subj', '/CN=127.0.0.1', '-addext', 'subjectAltName=IP:127.0.0.1'],
];

/** It need not outlast a loss of power. */
const HASTE = '-c fsync=off -c full_page_writes=off -c max_wal_size=4GB';

/** Starts one, or says in words why that is impossible here. */
export async function startPostgres(): Promise<Postgres | string> {
  const bin = findPrograms() ?? install();
  if (bin === null) return 'PostgreSQL is not installed, and only root can install it';
  const parent = mkdtempSync(join(tmpdir(), 'platewright-postgres-'));
  const data = join(parent, 'data');
  const port = await freePort();
  const run = asPostgres(parent);
  const quiet = { stdio: 'pipe' } as const;
  const options = `-p ${port} -k ${parent} -c listen_addresses=127.0.0.1 -c ssl=on ${HASTE}`;
  run(join(bin, 'initdb'), ['-D', data, '-A', 'trust', '-U', 'test', '--no-sync', '--locale=C.UTF-8'], quiet);
  run(
    'openssl',
    [...CERTIFICATE, '-keyout', join(data, 'server.key'), '-out', join(data, 'server.crt')],
    quiet,
  );
  // Its own output must not be the pipe, which it would hold open.
  const ends = ['ignore', 'ignore', 'ignore'] as const;
  run(join(bin, 'pg_ctl'), ['-D', data, '-w', '-o', options, 'start'], { stdio: [...ends] });
  const client = join(bin, 'psql');
  const at = (database: string) => ['-h', '127.0.0.1', '-p', String(port), '-U', 'test', '-d', database];
  const asTest = (database: string, sql: string) => [...at(database), '-qc', sql];
  const psql = (database: string, sql: string) => run(client, asTest(database, sql), quiet);
  const nameOf = (address: string) => new URL(address).pathname.slice(1);
  psql('postgres', 'CREATE ROLE coach LOGIN');
  let count = 0;
  const database = async () => {
    count += 1;
    psql('postgres', `CREATE DATABASE store${count} OWNER coach`);
    return `postgres://coach@127.0.0.1:${port}/store${count}`;
  };
  return {
    database,
    certificate: join(data, 'server.crt'),
    asSuperuser: (address, sql) => psql(nameOf(address), sql),
    dump: (address) => String(run(join(bin, 'pg_dump'), at(nameOf(address)), quiet)),
    async load(dump) {
      const address = await database();
      run(client, [...at(nameOf(address)), '-q', '-v', 'ON_ERROR_STOP=1'], { ...quiet, input: dump });
      return address;
    },
    copyInto(address, table) {
      const copy = spawn(client, asTest(nameOf(address), `COPY ${table} FROM STDIN`), {
        stdio: ['pipe', 'ignore', 'inherit'],
      });
      const ended = once(copy, 'exit');
      return {
        write: (lines) =>
          new Promise((resolve, reject) =>
            copy.stdin.write(lines, (error) => (error ? reject(error) : resolve())),
          ),
        async end() {
          copy.stdin.end();
          const [code] = await ended;
          if (code !== 0) throw new Error(`psql ended with ${code}`);
        },
      };
    },
    stop() {
      run(join(bin, 'pg_ctl'), ['-D', data, '-m', 'immediate', 'stop'], { stdio: [...ends] });
      rmSync(parent, { recursive: true, force: true });
    },
  };
}

/** PostgreSQL refuses to run as root; Debian's package brings a user for it. */
function asPostgres(parent: string) {
  const isRoot = process.getuid?.() === 0;
  if (isRoot) {
    const id = (flag: string) => execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }).trim();
    execFileSync('chown', ['postgres', parent]);
    chmodSync(parent, 0o700);
    const become = [`--reuid=${id('-u')}`, `--regid=${id('-g')}`, '--clear-groups'];
    return (program: string, args: string[], options: Parameters<typeof execFileSync>[2]) =>
      execFileSync('setpriv', [...become, program, ...args], { cwd: parent, ...options });
  }
  return (program: string, args: string[], options: Parameters<typeof execFileSync>[2]) =>
    execFileSync(program, args, { cwd: parent, ...options });
}

/** Folder of the server's programs. */
function findPrograms(): string | null {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort().reverse() : [];
  const folders = [...versions.map((version) => join(debian, version, 'bin')), '/usr/local/bin', '/usr/bin'];
  return folders.find((folder) => existsSync(join(folder, 'initdb'))) ?? null;
}

function install(): string | null {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null;
  try {
    execFileSync('apt-get', ['update'], { stdio: 'ignore' });
    execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'postgresql'], { stdio: 'ignore' });
  } catch {
    return null;
  }
  return findPrograms();
}
