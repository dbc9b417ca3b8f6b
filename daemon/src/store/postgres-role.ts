import type { PoolClient } from 'pg';
import { StoreTrouble } from './trouble.ts';

/** Throws StoreTrouble for a user whom row security does not bind (PostgreSQL manual, 5.8), superuser or BYPASSRLS. */
export async function demandBoundRole(client: PoolClient): Promise<void> {
  const { rows } = await client.query(
    `SELECT quote_ident(rolname) AS name FROM pg_roles
     WHERE rolname = current_user AND (rolsuper OR rolbypassrls)`,
  );
  if (rows[0] === undefined) return;
  const { name } = rows[0];
  throw new StoreTrouble(
    'unbound',
    `The database's user ${name} passes by row security, which keeps athletes apart. Run ALTER ROLE ${name} NOSUPERUSER NOBYPASSRLS in it, or name another user after --store.`,
  );
}
