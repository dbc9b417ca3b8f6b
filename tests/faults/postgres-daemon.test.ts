import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { startPostgres } from '../support/postgres.ts';
import { pairExtension } from './daemon-process.ts';
import { weighIns } from './load.ts';
import { useMachine } from './machine.ts';

const postgres = await startPostgres();
if (typeof postgres === 'string') {
  it.skip(`a daemon with a store in PostgreSQL: ${postgres}`, () => {});
} else {
  const machine = useMachine();
  let address: string;
  beforeEach(async () => {
    address = await postgres.database();
  });
  afterAll(() => postgres.stop());

  const run = (...args: string[]) => machine().run(...args, '--store', address);
  const start = () => machine().start(['start', '--port', '0', '--store', address]);

  describe('a daemon with a store in PostgreSQL', () => {
    it('keeps what it acknowledged when it is killed, and knows it again', async () => {
      let daemon = await start();
      const headers = await pairExtension(daemon);
      const push = async (count: number) => {
        const body = JSON.stringify({ changes: weighIns('a', count) });
        const answer = await fetch(`${daemon.url}/v1/push`, { method: 'POST', headers, body });
        const { outcomes }: { outcomes: { outcome: string }[] } = await answer.json();
        return outcomes.filter(({ outcome }) => outcome === 'known').length;
      };
      expect(await push(20)).toBe(0);
      await daemon.stop('SIGKILL');
      daemon = await start();
      expect(await push(25)).toBe(20);
      expect(run('devices').stdout).toMatch(/paired/);
      expect(run('pair').stdout).toMatch(/^\w{4}-\w{4}\n$/);
      const backup = run('backup').stdout.trim();
      expect(machine().run('verify', backup).status).toBe(0);
      expect(await daemon.stop('SIGTERM')).toBe(0);
      expect(run('verify').stderr).toMatch(/as it was written/);
      expect(run('export').stdout.split('\n')).toHaveLength(27);
    });

    it('does not start under a superuser, whom row security does not bind, and doctor says so', async () => {
      const admin = new URL(address);
      admin.username = 'test';
      const asAdmin = (command: string) => machine().run(command, '--store', admin.href);
      const started = asAdmin('start');
      expect(started.status).toBe(1);
      expect(started.stderr).toMatch(/user test passes by row security.*name another user after --store/);
      expect(asAdmin('doctor').stdout).toMatch(/^mend {2}store: .*user test passes by row security/m);
    });

    it('stays up and says so while the database is gone, and goes on when it is back', async () => {
      const daemon = await start();
      const headers = await pairExtension(daemon);
      const pull = async () => (await fetch(`${daemon.url}/v1/pull`, { headers })).status;
      expect(await pull()).toBe(200);
      postgres.asSuperuser(
        address,
        'SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()',
      );
      const statuses = [await pull(), await pull(), await pull()];
      expect(statuses.every((status) => status === 200 || status === 503)).toBe(true);
      expect(statuses.at(-1)).toBe(200);
      expect(await daemon.stop('SIGTERM')).toBe(0);
    });
  });
}
