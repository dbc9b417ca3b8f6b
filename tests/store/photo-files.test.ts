import { readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listBackups, makeBackup } from '../../daemon/src/keep/backup.ts';
import { bytesFolder, copyBytes, getBytes, putBytes } from '../../daemon/src/keep/bytes.ts';
import { dropPhotos } from '../../daemon/src/keep/drop-photos.ts';
import { photoFaults } from '../../daemon/src/keep/photo-check.ts';
import { upkeep } from '../../daemon/src/keep/upkeep.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { useFolder } from '../support/use-folder.ts';
import { weighIn } from './contract.ts';
import { DAY, openLiveStore, START } from './live-store.ts';

const folder = useFolder();
const backups = () => join(folder(), 'backups');

let store: Store;
beforeEach(async () => {
  store = await openLiveStore(folder());
});
afterEach(() => store.close());

describe('a file beside the store', () => {
  const bytes = () => bytesFolder(folder());
  const content = Buffer.from('not really a picture');

  it('is kept once under its SHA-256, goes with backups, and is noticed when it is not as it was', async () => {
    const sha256 = putBytes(bytes(), content);
    expect(putBytes(bytes(), content)).toBe(sha256);
    expect(readdirSync(bytes(), { recursive: true })).toHaveLength(2);
    expect(getBytes(bytes(), sha256)).toEqual(new Uint8Array(content));
    expect(getBytes(bytes(), 'a'.repeat(64))).toBeNull();
    const fields = { date: '2026-01-02', sha256, mediaType: 'image/png' };
    const photos = [fields, { ...fields, sha256: 'b'.repeat(64) }].map((photo, i) =>
      weighIn(`p${i}`, photo, { kind: 'photo', record: `photo-${i}` }),
    );
    expect((await store.append(photos, (clock) => clock)).map(({ outcome }) => outcome)).toEqual([
      'stored',
      'stored',
    ]);
    expect(photoFaults(await store.records({ kind: 'photo' }), bytes())).toEqual([
      'photo photo-1 of athlete ann: its file is missing',
    ]);
    await makeBackup({ store, data: folder(), backups: backups() }, START);
    const file = join(bytes(), sha256.slice(0, 2), sha256);
    writeFileSync(file, 'something else');
    expect(photoFaults(await store.records({ kind: 'photo' }), bytes())[0]).toMatch(
      /photo-0 .*differs from its name/,
    );
    rmSync(file);
    await copyBytes(bytesFolder(backups()), bytes());
    expect(getBytes(bytes(), sha256)).toEqual(new Uint8Array(content));
  });
});

describe('photos that can’t be copied', () => {
  it('keep neither the rows from being backed up nor the rotation from going on', async () => {
    writeFileSync(bytesFolder(folder()), 'no folder');
    for (let day = 0; day < 40; day += 1)
      await expect(
        makeBackup({ store, data: folder(), backups: backups() }, START + day * DAY),
      ).rejects.toThrow(/photos in .*bytes can't be read \(ENOTDIR\)/);
    expect(listBackups(backups(), START + 99 * DAY, null).length).toBeLessThan(20);
  });
});

describe('a file that no record names', () => {
  const [live, kept] = [() => bytesFolder(folder()), () => bytesFolder(backups())];
  const of = () => ({ store, data: folder(), backups: backups() });
  const at = (day: number) => START + day * DAY;
  const named = (folder: string) =>
    readdirSync(folder, { recursive: true })
      .map(String)
      .map((path) => basename(path));

  /** A file that was last put there on a day. */
  function put(content: string, day: number): string {
    const name = putBytes(live(), Buffer.from(content));
    utimesSync(join(live(), name.slice(0, 2), name), at(day) / 1000, at(day) / 1000);
    return name;
  }

  function photo(sha256: string, day: number, removed: boolean) {
    const fields = { date: '2026-01-02', sha256, mediaType: 'image/png', removed };
    const more = {
      kind: 'photo',
      record: `photo-${sha256.slice(0, 9)}`,
      clock: formatClock(at(day), 0, 'phone'),
    };
    return weighIn(`p-${sha256.slice(0, 9)}-${day}`, fields, more);
  }

  it('goes a day later, and from the backups once none of them names it', async () => {
    const [stays, goes, undone] = [put('stays', 0), put('goes', 0), put('undone', 0)];
    await store.append(
      [stays, goes, undone].map((name) => photo(name, 0, false)),
      (clock) => clock,
    );
    const first = await makeBackup(of(), at(0));
    for (const name of named(kept())) {
      if (name.length === 64) utimesSync(join(kept(), name.slice(0, 2), name), at(0) / 1000, at(0) / 1000);
    }
    await store.append([photo(goes, 2, true), photo(undone, 4, true)], (clock) => clock);
    const [lost, fresh] = [put('sent, and its record was lost', 2), put('waits for its record', 4)];

    await dropPhotos(of(), at(4) + DAY / 2);
    for (const name of [stays, undone, fresh]) expect(named(live())).toContain(name);
    for (const name of [goes, lost]) expect(named(live())).not.toContain(name);
    expect(named(kept())).toContain(goes);

    rmSync(first);
    await makeBackup(of(), at(5));
    writeFileSync(join(backups(), 'mine'), 'may be one');
    await dropPhotos(of(), at(5));
    expect(named(kept())).toContain(goes);
    rmSync(join(backups(), 'mine'));
    await dropPhotos(of(), at(5));
    expect(named(kept())).not.toContain(goes);
    expect(named(kept())).toContain(stays);
  });

  it('is looked for by the upkeep', async () => {
    const lost = put('sent, and its record was lost', -3);
    await upkeep({ ...of(), now: () => START });
    expect(named(live())).not.toContain(lost);
  });

  it('counts as new when it is sent again', async () => {
    const again = put('again', -3);
    expect(putBytes(live(), Buffer.from('again'))).toBe(again);
    await dropPhotos(of(), START);
    expect(named(live())).toContain(again);
  });
});
