import { Client, Pool, type PoolClient, types } from 'pg';
import * as z from 'zod/mini';
import { StoreTrouble } from './trouble.ts';

/** Connections at a time; a daemon writes over one (common practice, no source). */
const CONNECTIONS = 8;
/** How long a connection or a lock is waited for, ms. */
const WAIT_MS = 5000;
/** PostgreSQL's number of the type bigint. */
const BIGINT = 20;

/** All athletes, where one is named. */
const ALL = '*';

/** Keep-alives let go of the lock of a daemon whose machine is gone within a minute, and not after hours. */
const SESSION = `SET search_path TO platewright; SET platewright.athlete TO '${ALL}';
  SET synchronous_commit TO on; SET lock_timeout TO ${WAIT_MS};
  SET tcp_keepalives_idle TO 30; SET tcp_keepalives_interval TO 10; SET tcp_keepalives_count TO 3`;

/**
 * Connections to the database of an address. TLS as the address says: `sslmode=verify-full` checks the server's
 * certificate, with `sslrootcert=FILE` against an own authority. A commit is on disk before it is answered. Throws
 * StoreTrouble for a database beyond this machine without such a check.
 */
export function openPool(address: string): Pool {
  demandTls(address);
  const pool = new Pool({
    connectionString: address,
    max: CONNECTIONS,
    connectionTimeoutMillis: WAIT_MS,
    application_name: 'platewright',
    // Waited for, before the connection is given to who asked for it.
    async onConnect(client) {
      client.on('error', () => {});
      await client.query(SESSION);
    },
    types: {
      getTypeParser: (type, format) =>
        type === BIGINT && format !== 'binary' ? Number : types.getTypeParser(type, format),
    },
  });
  // A connection that breaks while no one uses it is made anew; whoever uses one has the error.
  pool.on('error', () => {});
  return pool;
}

/** Records leave this machine over TLS only, to a server that showed who it is (ASVS 5.0, 12.3.1 and 12.3.2). */
function demandTls(address: string): void {
  const { host, ssl }: { host: string; ssl: unknown } = new Client({ connectionString: address });
  const isHere = host.startsWith('/') || /^(localhost|127\.[\d.]+|::1|\[::1\])$/.test(host);
  const checks = z.object({
    rejectUnauthorized: z.optional(z.literal(true)),
    checkServerIdentity: z.optional(z.never()),
  });
  if (isHere || ssl === true || checks.safeParse(ssl).success) return;
  throw new StoreTrouble(
    'unreachable',
    'The database is on another machine. Add ?sslmode=verify-full to the address after --store, and for an own authority &sslrootcert=FILE.',
  );
}

/** Work that is done whole or not at all. */
export function writing<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  return within(pool, 'BEGIN', work);
}

/** Reads one state of the store, and only rows of one athlete when it is named: the database itself holds back others. */
export function reading<T>(
  pool: Pool,
  athlete: string | undefined,
  work: (client: PoolClient) => Promise<T>,
): Promise<T> {
  const only = athlete === undefined ? ALL : athlete;
  return within(
    pool,
    `BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY; SET LOCAL platewright.athlete TO ${quoted(only)}`,
    work,
  );
}

async function within<T>(pool: Pool, begin: string, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect();
  let broken = false;
  try {
    await client.query(begin);
    const result = await work(client);
    await client.query('COMMIT');
    return result;
  } catch (error) {
    // When even that fails, the connection is of no more use.
    await client.query('ROLLBACK').catch(() => {
      broken = true;
    });
    throw error;
  } finally {
    client.release(broken);
  }
}

/** A string of SQL (PostgreSQL manual, 4.1.2.1), because SET takes no parameters. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
