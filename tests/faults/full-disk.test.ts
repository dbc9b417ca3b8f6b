import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { pairExtension } from './daemon-process.ts';
import { checkStore, Load, weighIns } from './load.ts';
import { useMachine } from './machine.ts';
import { systemTool } from './system-tool.ts';

const mount = systemTool('mount', 'mount');
const unmount = systemTool('umount', 'mount');
const canMount = mount !== null && unmount !== null && process.getuid?.() === 0;
if (!canMount) console.log('Only root may mount a small disk: the test of a full disk is left out.');

/** Left for the store when the rest of the disk is taken, bytes. */
const LEFT = 200 * 1024;

describe.skipIf(!canMount)('when the disk is full', () => {
  const machine = useMachine();
  const disk = () => join(machine().folder, 'disk');
  function mountDisk(size: string): string {
    mkdirSync(disk());
    execFileSync(mount ?? '', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', disk()]);
    return disk();
  }
  afterEach(() => execFileSync(unmount ?? '', ['-l', disk()]));

  it('writes are refused in words, reads go on, and writes resume once there is room', async () => {
    const disk = mountDisk('8m');
    const args = ['start', '--port', '0', '--data', join(disk, 'store')];
    const daemon = await machine().start(args);
    const headers = await pairExtension(daemon);
    const code = machine().run('pair', '--data', join(disk, 'store')).stdout.trim();
    // Its first sight would be written down, and can't be.
    const reader = await pairExtension({ ...daemon, code });
    const load = new Load(daemon.url, headers);
    await load.push(weighIns('before', 50));

    const ballast = join(disk, 'ballast');
    const { bavail, bsize } = statfsSync(disk);
    writeFileSync(ballast, Buffer.alloc(bavail * bsize - LEFT));
    for (let i = 0; load.refusals.length < 3 && i < 100; i++) await load.push(weighIns(`fill-${i}`, 100));
    expect(load.refusals).toEqual([507, 507, 507]);
    const init = { method: 'POST', headers, body: JSON.stringify({ changes: weighIns('more', 400) }) };
    const refused = await fetch(`${daemon.url}/v1/push`, init);
    expect(await refused.json()).toMatchObject({
      status: 507,
      detail: expect.stringMatching(/free some space/),
    });

    const records = await fetch(`${daemon.url}/v1/records?kind=weigh-in`, { headers: reader });
    expect([records.status, (await records.json()).records.length]).toEqual([200, load.told.size]);
    expect((await fetch(`${daemon.url}/v1/pull?since=0`, { headers: reader })).status).toBe(200);

    rmSync(ballast);
    const again = await load.push(weighIns('after', 50));
    expect(again.every(({ outcome }) => outcome === 'stored')).toBe(true);
    expect(await daemon.stop('SIGTERM')).toBe(0);
    expect(daemon.notes.join('')).not.toMatch(/at .*\.ts/);
    await checkStore(join(disk, 'store'), load.sent, load.told.keys());
  });

  it.each([['start'], ['devices'], ['restore', 'copy.sqlite']])(
    'a store in it is called full by %s, and not its disk broken',
    async (...command) => {
      const disk = mountDisk('2m');
      const copy = join(machine().folder, 'copy.sqlite');
      const store = openSqliteStore(disk, 'owner');
      await store.append(weighIns('w', 100), (clock) => clock);
      await store.backup(copy);
      await store.close();
      const args = [...command.map((word) => (word === 'copy.sqlite' ? copy : word)), '--data', disk];
      const withRoom = (bytes: number) => {
        const { bavail, bsize } = statfsSync(disk);
        writeFileSync(join(disk, 'ballast'), Buffer.alloc(Math.max(0, bavail * bsize - bytes)));
        const ended = machine().run(...args);
        rmSync(join(disk, 'ballast'));
        return ended;
      };
      // A restore fails at another place for each room that is left.
      const rooms = command.length === 1 ? [0] : Array.from({ length: 12 }, (_, i) => i * 16 * 1024);
      const failed = rooms.map(withRoom).filter(({ status }) => status !== 0);
      expect(failed.length).toBeGreaterThan(0);
      for (const { stderr } of failed) expect(stderr).toMatch(/^The disk that holds .* is full/);
      expect(machine().run('verify', '--data', disk).status).toBe(0);
    },
  );

  it.each([
    ['backup', 'copy.sqlite'],
    ['export', 'records.jsonl'],
  ])('%s names the disk that is, and leaves no part of a file behind', async (command, name) => {
    const disk = mountDisk('64k');
    const store = openSqliteStore(machine().data, 'owner');
    await store.append(weighIns('w', 1000), (clock) => clock);
    await store.close();
    const { status, stdout, stderr } = machine().run(command, join(disk, name));
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(new RegExp(`^The disk that holds ${disk} is full`));
    expect(readdirSync(disk)).toEqual([]);
  });
});
