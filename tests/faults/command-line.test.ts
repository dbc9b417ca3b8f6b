import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { athleteFields, change } from '../server/fields.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { listen } from '../support/port.ts';
import { type Daemon, pairExtension, platewright } from './daemon-process.ts';
import { weighIns } from './load.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();

const run = (...args: string[]) => machine().run(...args);

describe('the command line', () => {
  it('says what it can do, and more of each command', () => {
    const { status, stdout, stderr } = run();
    expect([status, stderr]).toEqual([0, '']);
    const names = [...stdout.matchAll(/^ {2}(\w+) {2,}/gm)].map(([, name]) => name ?? '');
    expect(names).toEqual([
      'start',
      'demo',
      'pair',
      'devices',
      'export',
      'import',
      'backup',
      'restore',
      'verify',
      'service',
      'doctor',
    ]);
    expect(run('--help').stdout).toBe(stdout);
    for (const name of names)
      expect(run(name, '--help').stdout).toMatch(new RegExp(`^npx platewright ${name}\\b`));
  });

  it.each([
    [['nonsense'], /no command “nonsense”/],
    [['start', '--porte', '1'], /--porte/],
    [['start', '--port', 'high'], /number from 0 to 65535/],
    [['start', 'now'], /too much/],
    [['devices', 'revoke'], /devices revoke ID/],
  ])('does not guess at %j', (args, message) => {
    const { status, stdout, stderr } = run(...args);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/at .*\.ts/);
  });

  it.each([['pair'], ['devices'], ['export'], ['backup']])('%s says when there is no store yet', (name) => {
    const { status, stderr } = run(name);
    expect(status).toBe(1);
    expect(stderr).toMatch(/no store .*Run npx platewright start\.$/m);
    const options = ['--data', join(machine().folder, 'elsewhere')];
    expect(run(name, ...options).stderr).toContain(`Run npx platewright start ${options.join(' ')}.`);
  });

  it.each([
    ['export', []],
    ['demo', ['--port', '0']],
  ])('%s says of a damaged store which one to look at', async (name, more) => {
    const data = join(machine().folder, 'elsewhere');
    const store = openSqliteStore(data, 'owner');
    await store.putSetting('demo', '2026-03-02');
    await store.append([change('d', 'day', 'd', { date: '2026-03-02' })], (clock) => clock);
    await store.close();
    const db = new DatabaseSync(join(data, 'store.sqlite'));
    db.exec(
      "UPDATE records SET fields = '{}'; UPDATE settings SET value = value || ' '; UPDATE head SET seq = 2",
    );
    db.close();
    const { stderr } = run(name, '--data', data, ...more);
    expect(stderr).toContain(`Run npx platewright verify --data ${data}, which`);
  });

  it('the rest of the way to a store leads there too', async () => {
    const data = join(machine().folder, 'elsewhere');
    expect(run('doctor', '--data', data).stdout).toContain(`Run npx platewright start --data ${data}`);
    await openSqliteStore(data, 'owner').close();
    expect(run('devices', '--data', data).stderr).toContain(`Run npx platewright pair --data ${data}.`);
    expect(run('devices', 'revoke', 'x', '--data', data).stderr).toContain(`devices --data ${data} lists`);
  });
});

it('a file that is no sound backup is called so by verify and restore, whatever is wrong with it', async () => {
  const store = openSqliteStore(machine().data, 'owner');
  await store.append(weighIns('w', 500), (clock) => clock);
  await store.close();
  const whole = readFileSync(run('backup').stdout.trim());
  const put = (name: string, content: Uint8Array | string) => {
    const path = join(machine().folder, name);
    writeFileSync(path, content);
    return path;
  };
  const end = (path: string, faults: RegExp, restored: RegExp) => {
    const [verified, tried] = [run('verify', path), run('restore', path)];
    expect([verified.status, tried.status]).toEqual([1, 1]);
    expect(verified.stdout + verified.stderr).toMatch(faults);
    expect(tried.stderr).toMatch(restored);
    expect(verified.stderr + tried.stderr).not.toMatch(
      /should not happen|restoring|Run npx platewright verify/,
    );
  };
  const torn = /^file: .*malformed\nDo not go back/;
  end(
    put('torn', whole.subarray(0, whole.length / 2)),
    torn,
    /torn is not sound \(.*malformed\)\. Try an older/,
  );
  const none = /^file: .*not a database\nDo not go back/;
  end(put('text', 'x'.repeat(5000)), none, /text is not sound \(.*not a database\)/);
  end(join(machine().folder, 'gone'), /^There is no file .*gone\.$/m, /^There is no file .*gone\.$/m);
  end(machine().folder, /is no file\. Name a backup/, /is no file\. Name a backup/);
  expect(run('verify').status).toBe(0);
});

describe('the way to another code leads to the store that is served', () => {
  /** What is said to make another code, as words. */
  const another = async ({ notes }: Daemon) => {
    const said = () => /npx platewright (pair.*) makes another/.exec(notes.join(''))?.[1];
    await expect.poll(said).toBeDefined();
    return said()?.split(' ') ?? [];
  };
  const makes = async (args: string[], options: string[]) => {
    const daemon = await machine().start([...args, '--port', '0']);
    const words = await another(daemon);
    expect(words).toEqual(['pair', ...options]);
    const code = run(...words).stdout.trim();
    await pairExtension({ ...daemon, code });
    expect(run('devices', ...options).stdout).toContain('extension');
  };

  it('the usual one', () => makes(['start'], []));

  it('one in another folder', () => {
    const data = join(machine().folder, 'elsewhere');
    return makes(['start', '--data', data], ['--data', data]);
  });

  it('the invented one', () => makes(['demo'], ['--data', join(machine().folder, 'data/platewright-demo')]));
});

describe('start ends with a clear sentence and exit code 1', () => {
  function refused(message: RegExp, ...args: string[]): void {
    const { status, stdout, stderr } = run('start', '--port', '0', ...args);
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/at .*\.ts|Error:/);
  }

  it('when the port is taken', async () => {
    const other = createServer();
    refused(/Port \d+ is taken\..*--port/, '--port', String(await listen(other)));
    other.close();
  });

  it('when the folder is not writable', () => {
    const file = join(machine().folder, 'file');
    writeFileSync(file, '');
    refused(/can't be written\..*--data/, '--data', join(file, 'below'));
    const closed = join(machine().folder, 'closed');
    mkdirSync(closed);
    chmodSync(closed, 0o500);
    // Root may write everywhere.
    if (process.getuid?.() !== 0) refused(/can't be written\..*--data/, '--data', closed);
  });

  it('when the store is newer than the program', async () => {
    const daemon = await machine().start();
    await daemon.stop('SIGTERM');
    const db = new DatabaseSync(join(machine().data, 'store.sqlite'));
    db.exec('PRAGMA user_version = 99');
    db.close();
    refused(/newer Platewright.*Update Platewright/);
  });

  it('when another daemon serves the folder', async () => {
    await machine().start();
    refused(/Another Platewright serves/);
    expect(platewright(machine().folder, ['import'], '').stderr).toMatch(/Another Platewright serves/);
  });

  it('when its settings are not as they should be', () => {
    mkdirSync(join(machine().folder, 'config/platewright'), { recursive: true });
    writeFileSync(join(machine().folder, 'config/platewright/config.json'), '{"prot": 1}');
    const { status, stderr } = run('start');
    expect(status).toBe(1);
    expect(stderr).toMatch(/config\.json is not as it should be/);
  });
});

it('devices prints a name as text, whatever is in it', async () => {
  const daemon = await machine().start();
  const name = 'A\u001b[31mB\tC\nD\u202eE';
  await fetch(`${daemon.url}/v1/pair`, {
    method: 'POST',
    headers: { origin: EXTENSION, 'content-type': 'application/json' },
    body: JSON.stringify({ code: daemon.code, name, kind: 'extension' }),
  });
  const { stdout } = run('devices');
  expect(stdout).toMatch(/\tA\ufffd\[31mB\ufffdC\ufffdD\ufffdE\n$/);
  expect(stdout.trim().split('\n')).toHaveLength(1);
  const [id = ''] = stdout.split('\t');
  expect(run('devices', 'revoke', id).stderr).toBe(
    'The key of A\ufffd[31mB\ufffdC\ufffdD\ufffdE was taken back.\n',
  );
});

it('devices takes no key back when the id is empty, as a variable that was never set leaves it', async () => {
  await pairExtension(await machine().start());
  expect(run('devices', 'revoke', '')).toMatchObject({
    status: 2,
    stderr: expect.stringMatching(/revoke ID/),
  });
  expect(run('devices').stdout).toMatch(/\tpaired\t/);
});

it('keeps every file to its user: store, certificate, backups, exports', async () => {
  const daemon = await machine().start(['start', '--port', '0', '--lan', '--lan-port', '0']);
  await pairExtension(daemon);
  expect(run('backup').status).toBe(0);
  expect(run('export', join(machine().data, 'records.jsonl')).status).toBe(0);
  const kept = readdirSync(join(machine().folder, 'data'), { recursive: true, withFileTypes: true }).map(
    (item) => ({
      name: item.name,
      mode: statSync(join(item.parentPath, item.name)).mode & 0o077,
    }),
  );
  const names = kept.map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(['store.sqlite', 'tls.pem', 'backups', 'records.jsonl']));
  expect(names.filter((name) => /^platewright-.*\.sqlite$/.test(name))).toHaveLength(1);
  expect(kept.filter(({ mode }) => mode !== 0)).toEqual([]);
});

describe('rights', () => {
  it('go with the code that pair prints', async () => {
    const daemon = await machine().start();
    const owner = await pairExtension(daemon);
    const edits = ['Ann', 'Bob'].map((name) => ({
      kind: 'athlete',
      athlete: name.toLowerCase(),
      fields: { ...athleteFields, name },
    }));
    const made = await fetch(`${daemon.url}/v1/records`, {
      ...{ method: 'POST', headers: owner, body: JSON.stringify({ edits }) },
    });
    expect(made.status).toBe(200);
    expect(run('pair', '--athlete', 'Carl').stderr).toMatch(
      /No athlete is called Carl\. There are: .*Ann \(ann\)/,
    );
    const { stdout } = run('pair', '--athlete', 'BOB', '--read-only');
    const partner = await pairExtension({ ...daemon, code: stdout.trim() });
    const session = await (await fetch(`${daemon.url}/v1/session`, { headers: partner })).json();
    expect(session).toMatchObject({
      rights: { athlete: 'bob', access: 'read' },
      athletes: [{ id: 'bob', name: 'Bob' }],
    });
    expect(run('devices').stdout).toMatch(/\tread bob\t[0-9A-Z]{4}-[0-9A-Z]{4}\tTest$/m);
  });
});
