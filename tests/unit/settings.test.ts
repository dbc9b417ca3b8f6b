import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { networkSettings } from '../../daemon/src/cli/network-settings.ts';
import { optionsFor, settings } from '../../daemon/src/cli/settings.ts';

const ADDRESS = 'postgres://ann@localhost/file';
const OTHER = 'postgres://ann@localhost/other';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'platewright-settings-'));
  vi.stubEnv('XDG_CONFIG_HOME', folder);
  for (const name of ['DATA', 'PORT', 'STORE', 'BACKUPS']) vi.stubEnv(`PLATEWRIGHT_${name}`, '');
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

const given = (values: Record<string, unknown> = {}) => ({ values, positionals: [] });
function writeConfig(content: object): void {
  mkdirSync(join(folder, 'platewright'), { recursive: true });
  writeFileSync(join(folder, 'platewright/config.json'), JSON.stringify(content));
}
function setEnvironment(variables: Record<string, string>): void {
  for (const [name, value] of Object.entries(variables)) vi.stubEnv(`PLATEWRIGHT_${name}`, value);
}

describe('where a store is', () => {
  const own = { data: '/own', store: ADDRESS, backups: '/disk' };

  it('is said by the command line, else the environment, else the config file, else by default', () => {
    expect(settings(given())).toMatchObject({ port: 8787, store: null });
    writeConfig({ ...own, port: 1 });
    expect(settings(given())).toEqual({ ...own, port: 1 });
    setEnvironment({ STORE: OTHER, PORT: '2', BACKUPS: '/shell' });
    expect(settings(given())).toEqual({ data: '/own', store: OTHER, port: 2, backups: '/shell' });
    const flags = { store: 'postgres://typed', port: '3', backups: '/typed' };
    expect(settings(given(flags))).toEqual({ ...flags, data: '/own', port: 3 });
  });

  it('is said whole: who names another folder does not get the store and the backups of the one before', () => {
    writeConfig(own);
    const elsewhere = { data: '/typed', store: null, backups: '/typed/backups' };
    expect(settings(given({ data: '/typed' }))).toMatchObject(elsewhere);
    expect(settings(given({ data: '/own' }))).toMatchObject(own);
    setEnvironment({ DATA: '/shell' });
    expect(settings(given())).toMatchObject({ store: null, backups: '/shell/backups' });
    expect(settings(given({ data: '/own' }))).toMatchObject(own);
    setEnvironment({ STORE: OTHER, BACKUPS: '/shell-disk' });
    expect(settings(given())).toMatchObject({ data: '/shell', store: OTHER, backups: '/shell-disk' });
    expect(settings(given({ data: '/typed' }))).toMatchObject(elsewhere);
    expect(settings(given({ data: '/typed', store: OTHER }))).toMatchObject({ data: '/typed', store: OTHER });
  });

  it('is led back to by the options that are said for it', () => {
    writeConfig(own);
    expect(optionsFor({ data: '/own', store: ADDRESS })).toBe('');
    expect(optionsFor({ data: '/typed', store: null })).toBe(' --data /typed');
    expect(optionsFor({ data: '/typed', store: ADDRESS })).toBe(' --data /typed --store ADDRESS');
    expect(optionsFor({ data: '/own', store: OTHER })).toBe(' --store ADDRESS');
  });
});

it('backups are not kept in the data folder itself, whose photos would pass for theirs', () => {
  expect(() => settings(given({ data: '/own', backups: '/own/' }))).toThrow(/folder of their own, not \/own/);
});

describe('a config file that is not as it should be', () => {
  it.each([
    [{ prot: 8787 }, /config\.json .* at “prot”/],
    [{ port: '8787' }, / at “port”/],
    [{ hosts: ['shed.home', 1] }, / at “hosts\.1”/],
    [[], /as it should be: JSON/],
  ])('%j is told where', (content, where) => {
    writeConfig(content);
    expect(() => settings(given())).toThrow(where);
  });
});

describe('a base path', () => {
  it.each(['/..', '/plates/../x', '/./plates', '/a b', 'plates'])('is not “%s”', (typed) => {
    expect(() => networkSettings(given({ 'base-path': typed }))).toThrow(/base path is like \/plates/);
  });
});

describe('a certificate', () => {
  it('and its key are of one place', () => {
    writeConfig({ lan: true, cert: '/own.pem', key: '/own.key' });
    expect(networkSettings(given()).lan).toMatchObject({ own: { cert: '/own.pem', key: '/own.key' } });
    const typed = { cert: '/typed.pem', key: '/typed.key' };
    expect(networkSettings(given(typed)).lan).toMatchObject({ own: typed });
    expect(() => networkSettings(given({ cert: '/typed.pem' }))).toThrow(/both --cert and --key/);
  });
});
