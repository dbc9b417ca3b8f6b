import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pictureType } from '@platewright/core/records/photo.ts';
import { afterEach, beforeEach, expect } from 'vitest';
import { bytesFolder } from '../../daemon/src/keep/bytes.ts';
import { type App, createApp } from '../../daemon/src/server/app.ts';
import { createAthletes } from '../../daemon/src/server/athletes.ts';
import type { Deps } from '../../daemon/src/server/deps.ts';
import { ownHosts } from '../../daemon/src/server/hosts.ts';
import { createHub, type Hub } from '../../daemon/src/server/hub.ts';
import { issueCode } from '../../daemon/src/server/issue-code.ts';
import { createKeys } from '../../daemon/src/server/keys.ts';
import { silent } from '../../daemon/src/server/log.ts';
import type { PageFiles } from '../../daemon/src/server/pages.ts';
import { createRoster } from '../../daemon/src/server/roster.ts';
import { createSeasons } from '../../daemon/src/server/seasons.ts';
import { noProxy } from '../../daemon/src/server/site.ts';
import { createWriter } from '../../daemon/src/server/writer.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { EXTENSION } from '../support/extension-origin.ts';

const HOST = '127.0.0.1:8787';
export const OWN = `http://${HOST}`;
/** What a browser says of a request of the dashboard's own page. */
export const FROM_PAGE = { origin: OWN, 'sec-fetch-site': 'same-origin' };

export interface Call {
  method?: string;
  headers?: Record<string, string>;
  body?: unknown;
}

/** A daemon without a socket, at a time that stands still until it is moved. */
export class House {
  readonly folder = mkdtempSync(join(tmpdir(), 'platewright-house-'));
  readonly files = bytesFolder(this.folder);
  readonly store: Store;
  readonly hub: Hub = createHub(0);
  /** What the app is made of, for one that differs in a part. */
  readonly deps: Deps;
  readonly app: App;
  now = Date.parse('2026-03-02T12:00:00Z');

  constructor(pages: PageFiles | null = null) {
    this.store = openSqliteStore(this.folder, 'owner');
    const now = () => this.now;
    const [athletes, seasons] = [createAthletes(this.store), createSeasons(this.store)];
    this.deps = {
      store: this.store,
      hub: this.hub,
      keys: createKeys({ store: this.store, hub: this.hub, log: silent, now }),
      files: this.files,
      writer: createWriter({ store: this.store, hub: this.hub, now }),
      ...{ athletes, seasons, roster: createRoster({ store: this.store, athletes, seasons, now }) },
      pages,
      now,
      isOwnHost: ownHosts(() => ({ ports: [8787], addresses: [], names: [] })),
      front: noProxy,
      key: '',
      paired: () => undefined,
    };
    this.app = createApp(this.deps);
  }

  async call(path: string, { method, headers = {}, body }: Call = {}): Promise<Response> {
    const init: RequestInit = { method: method ?? (body === undefined ? 'GET' : 'POST') };
    const type = body instanceof Uint8Array ? pictureType(body) : 'application/json';
    const said = body === undefined || type === null ? {} : { 'content-type': type };
    if (body instanceof Uint8Array) init.body = new Uint8Array(body);
    else if (body !== undefined) init.body = typeof body === 'string' ? body : JSON.stringify(body);
    init.headers = { host: HOST, ...said, ...headers };
    return await this.app.request(`http://${HOST}${path}`, init, {});
  }

  async code(): Promise<string> {
    return (await issueCode(this.store, this.now)).code;
  }

  /** Headers of a fresh extension. */
  async extension(): Promise<Record<string, string>> {
    const body = { code: await this.code(), name: 'Browser', kind: 'extension' };
    const answer = await this.call('/v1/pair', { headers: { origin: EXTENSION }, body });
    expect(answer.status).toBe(200);
    return { origin: EXTENSION, authorization: `Bearer ${(await answer.json()).token}` };
  }

  /** Headers of a fresh dashboard. */
  async dashboard(): Promise<Record<string, string>> {
    const body = { code: await this.code(), name: 'Page', kind: 'dashboard' };
    const answer = await this.call('/v1/pair', { headers: FROM_PAGE, body });
    expect(answer.status).toBe(200);
    return { ...FROM_PAGE, cookie: (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
  }

  async close(): Promise<void> {
    this.hub.close();
    await this.store.close();
    rmSync(this.folder, { recursive: true });
  }
}

/** A new house for each test of a file. */
export function useHouse(): () => House {
  let house: House;
  beforeEach(() => {
    house = new House();
  });
  afterEach(() => house.close());
  return () => house;
}

/** A JSON answer, which must be a problem when it is an error. */
export async function problemOf(answer: Response): Promise<{ type: string; detail: string; status: number }> {
  expect(answer.headers.get('content-type')).toBe('application/problem+json');
  const problem = await answer.json();
  expect(problem.status).toBe(answer.status);
  expect(problem.title.length).toBeGreaterThan(3);
  expect(problem.detail.length).toBeGreaterThan(10);
  expect(JSON.stringify(problem)).not.toMatch(/node_modules|\.ts:|Error:/);
  return problem;
}
