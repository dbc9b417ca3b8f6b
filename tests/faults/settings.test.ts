import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();
afterEach(() => vi.unstubAllEnvs());

const run = (...args: string[]) => machine().run(...args);
const config = () => join(machine().folder, 'config/platewright/config.json');
function writeConfig(content: object): void {
  mkdirSync(dirname(config()), { recursive: true });
  writeFileSync(config(), JSON.stringify(content));
}

it.each(['launch.js', 'platewright.js'])(
  '%s says which Node it needs, where that is an older one',
  (file) => {
    const old = 'data:text/javascript,Object.defineProperty(process,"version",{value:"v20.19.0"})';
    const path = resolve(import.meta.dirname, '../../daemon', file);
    const { status, stderr } = spawnSync(process.execPath, ['--import', old, path], { encoding: 'utf8' });
    expect([status, stderr]).toEqual([
      1,
      expect.stringMatching(/^Platewright needs Node 24 .*v20\.19\.0.*\n$/),
    ]);
  },
);

it('doctor sends nobody to start where the folder can’t be used', () => {
  const file = join(machine().folder, 'file');
  writeFileSync(file, '');
  expect(run('doctor', '--data', file).stdout).toMatch(/mend {2}folder: .*Give it to this user/);
  expect(run('doctor', '--data', join(machine().folder, 'none')).stdout).toMatch(
    /is not there\. Run npx platewright start/,
  );
});

it('the folder of backups in the config file is for the store of the config file', () => {
  const backups = join(machine().folder, 'disk');
  writeConfig({ backups });
  const own = machine().data;
  const partners = join(machine().folder, 'partner');
  for (const data of [own, partners]) openSqliteStore(data, 'owner').close();
  // One folder for both would rotate one's away, and hand one's to the other where it is damaged.
  expect(run('backup').stdout).toMatch(new RegExp(`^${backups}/platewright-`));
  expect(run('backup', '--data', partners).stdout).toMatch(new RegExp(`^${partners}/backups/platewright-`));
});

describe('no other store than the one that was meant is used', () => {
  it('when the config file can’t be read', () => {
    mkdirSync(config(), { recursive: true });
    const { status, stderr } = run('devices');
    expect(status).toBe(1);
    expect(stderr).toMatch(/config\.json can't be read \(EISDIR\)/);
  });

  it.each(['records', '~/records', ''])(
    'when the config file names “%s”, which is another folder in each place',
    (data) => {
      writeConfig({ data });
      const { status, stderr } = run('devices');
      expect(status).toBe(1);
      expect(stderr).toMatch(/config\.json is not as it should be.*absolute/);
    },
  );

  it.each(['', '~', '~/records'])('when a flag names the folder “%s”', (data) => {
    for (const flag of ['--data', '--backups']) {
      const { status, stderr } = run('doctor', `${flag}=${data}`);
      expect([status, stderr]).toEqual([2, `A folder is a path such as /home/ann/records, not “${data}”.\n`]);
    }
  });

  it('when a variable of the environment is set, but empty: it counts as not set', () => {
    for (const name of ['DATA', 'PORT', 'STORE', 'BACKUPS', 'LOG_LEVEL'])
      vi.stubEnv(`PLATEWRIGHT_${name}`, '');
    const { status, stderr } = run('devices');
    expect(status).toBe(1);
    expect(stderr).toContain(`There is no store in ${machine().data} yet`);
    expect(run('doctor').stdout).toMatch(/port: \d+ is/);
    expect(existsSync(join(machine().folder, 'data'))).toBe(false);
    expect(readdirSync(machine().folder)).toEqual([]);
  });
});
