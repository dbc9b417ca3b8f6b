import type { Change, Json } from '@platewright/core/changes/change.ts';
import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { clampAhead } from '../../daemon/src/server/writer.ts';
import { type Edit, edit } from '../../extension/replica/edit.ts';
import { amend, letGo, resend } from '../../extension/replica/outbox.ts';
import { type Daemon, type SyncEnd, sync } from '../../extension/replica/sync.ts';
import { seededChance } from '../../fixtures/season/chance.ts';
import { MemoryReplica } from './memory-replica.ts';
import { MemoryStore } from './memory-store.ts';

const START = Date.UTC(2026, 0, 5);
const YEAR_MS = 365 * 86_400_000;
const ATHLETE = 'anna';
/** A value that the simulated daemon never takes, as an older one would refuse what it does not understand. */
const UNFIT = 'unfit';

/** A program that was killed. */
class Killed extends Error {}

interface Device {
  name: string;
  replica: MemoryReplica;
  /** Error of its wall clock, ms. */
  skewMs: number;
  undo: Edit[][];
}

/** Devices, a network, a daemon and their clocks in one process. The same seed gives the same history, step for step. */
export class World {
  readonly devices: Device[];
  readonly store = new MemoryStore();
  /** Clock under which the daemon stored each change, as told by the daemon, not by a device. */
  readonly storedUnder = new Map<string, Change>();
  /** Every change that was ever in an outbox and that nobody let go, with its device. */
  readonly made = new Map<string, { change: Change; device: string }>();
  /** Every value that was ever written, by field. */
  readonly written = new Set<string>();
  readonly trace: string[] = [];
  readonly #uniform: () => number;
  #now = START;
  #faults = true;
  #ids = 0;
  #restores = 0;
  #late: (() => Promise<unknown>)[] = [];
  #backup = this.store.backup();

  constructor(seed: number, devices = 3) {
    this.#uniform = seededChance(seed).uniform;
    this.devices = Array.from({ length: devices }, (_, i) => ({
      name: `d${i}`,
      replica: new MemoryReplica(),
      skewMs: this.#pick([0, 0, 0, 1000, -YEAR_MS, YEAR_MS]),
      undo: [],
    }));
  }

  /** Pairs the devices and lets `steps` things happen. */
  async live(steps: number): Promise<void> {
    for (const { replica, name } of this.devices) {
      await replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: name }));
    }
    for (let step = 0; step < steps; step += 1) {
      this.#now += Math.floor(this.#uniform() ** 4 * 86_400_000);
      await this.#something();
    }
  }

  /** No more faults: everybody syncs until nothing moves. Returns how each device's last sync ended. */
  async quiet(): Promise<SyncEnd[]> {
    this.#faults = false;
    for (const late of this.#late.splice(0)) await late();
    let ends: SyncEnd[] = [];
    for (let round = 0; round < 3; round += 1) {
      ends = [];
      for (const device of this.devices) {
        const end = await this.#sync(device);
        if (end.state === 'done' && device.replica.outbox().some((row) => row.state === 'waiting')) {
          throw new Error('a sync that is done leaves nothing waiting');
        }
        ends.push(end);
      }
    }
    return ends;
  }

  async #something(): Promise<void> {
    const device = this.#pick(this.devices);
    const deed = this.#uniform();
    this.trace.push(`${device.name} ${deed.toFixed(4)}`);
    if (deed < 0.45) await this.#guarded(device, () => this.#edit(device));
    else if (deed < 0.82) await this.#guarded(device, () => this.#sync(device));
    else if (deed < 0.88) await this.#guarded(device, () => this.#decide(device));
    else if (deed < 0.92) device.skewMs = this.#pick([0, 0, -60_000, 60_000, -YEAR_MS, YEAR_MS]);
    else if (deed < 0.95) await this.#late.splice(Math.floor(this.#uniform() * this.#late.length), 1)[0]?.();
    else if (deed < 0.98) this.#backup = this.store.backup();
    else {
      this.#restores += 1;
      this.#backup(`store-${this.#restores + 1}`);
      this.trace.push('restored');
    }
  }

  /** Runs work of a device that may be killed before or after any of its transactions. */
  async #guarded(device: Device, work: () => Promise<unknown>): Promise<void> {
    let left = this.#uniform() < 0.15 ? Math.floor(this.#uniform() * 6) : Number.POSITIVE_INFINITY;
    device.replica.onTransaction = () => {
      left -= 1;
      if (left < 0) throw new Killed();
    };
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Killed)) throw error;
      this.trace.push('killed');
    } finally {
      device.replica.onTransaction = () => {};
    }
    for (const { change } of device.replica.outbox())
      this.made.set(change.id, { change, device: device.name });
  }

  async #edit(device: Device): Promise<void> {
    const undo = this.#uniform() < 0.15 ? device.undo.pop() : undefined;
    const edits =
      undo ??
      Array.from({ length: 1 + Math.floor(this.#uniform() * 3) }, (): Edit => {
        const record = `r${Math.floor(this.#uniform() * 8)}`;
        return { athlete: ATHLETE, kind: 'entry', record, fields: this.#fields() };
      });
    for (const { record, fields } of edits) {
      for (const [field, value] of Object.entries(fields)) {
        this.written.add(`${record}.${field}=${JSON.stringify(value)}`);
      }
    }
    device.undo.push(await edit(device.replica, this.#source(device), edits));
    for (const { record, fields } of edits.slice(-1)) {
      const row = device.replica.rows().find(({ id }) => id === record);
      for (const [field, value] of Object.entries(fields)) {
        if ((row?.fields[field] ?? null) !== value) throw new Error('an edit must win where it was made');
      }
    }
  }

  #fields(): Record<string, Json> {
    this.#ids += 1;
    const fit = this.#uniform() > 0.05;
    const fields: Record<string, Json>[] = [
      { name: fit ? `n${this.#ids}` : `${UNFIT}${this.#ids}` },
      { grams: 1 + (this.#ids % 20_000) },
      { meal: 1 + (this.#ids % 8), date: '2026-01-05' },
      { removed: this.#uniform() < 0.5 },
      { name: `n${this.#ids}`, grams: 1 + (this.#ids % 20_000), meal: 1 + (this.#ids % 8) },
    ];
    return this.#pick(fields);
  }

  /** The person looks at what was rejected: sends it again, puts it right, or lets it go. */
  async #decide(device: Device): Promise<void> {
    const row = device.replica.outbox().find(({ state }) => state === 'rejected');
    if (row === undefined) return;
    const choice = this.#uniform();
    if (choice < 0.3) {
      await resend(device.replica, row.order);
      return;
    }
    this.made.delete(row.change.id);
    if (choice < 0.6) await letGo(device.replica, row.order);
    else {
      this.#ids += 1;
      const fields = { name: `n${this.#ids}` };
      this.written.add(`${row.change.record}.name=${JSON.stringify(fields.name)}`);
      await amend(device.replica, this.#source(device), row.order, fields);
    }
  }

  #sync(device: Device): Promise<SyncEnd> {
    return sync({ ...this.#source(device), replica: device.replica, daemon: this.#network() });
  }

  #source(device: Device) {
    return {
      now: () => this.#now + device.skewMs,
      newId: () => {
        this.#ids += 1;
        return `id-${this.#ids}`;
      },
    };
  }

  /** Requests and answers are lost, doubled, or come late and out of order. */
  #network(): Daemon {
    const lost = { ok: false, why: 'offline', detail: 'No answer.' } as const;
    const carry = async <T>(request: () => Promise<T>) => {
      const luck = this.#faults ? this.#uniform() : 1;
      if (luck < 0.08) return lost;
      if (luck < 0.16) this.#late.push(request);
      if (luck < 0.12) return lost;
      const value = await request();
      if (luck > 0.16 && luck < 0.24) await request();
      return luck > 0.24 && luck < 0.32 ? lost : ({ ok: true, value } as const);
    };
    return {
      push: (changes) => carry(() => this.#push(changes)),
      // Small pages, so that a sync has many places to be stopped at.
      pull: (since) => carry(async () => ({ ...(await this.store.changesSince(since, 5)), ...this.#head() })),
    };
  }

  async #push(changes: readonly Change[]) {
    const fit = changes.filter((change) => !JSON.stringify(change.fields).includes(UNFIT));
    const latest = this.store.log.reduce<Clock | null>((held, { clock }) => laterClock(held, clock), null);
    const outcomes = await this.store.append(fit, clampAhead(this.#now, latest));
    for (const outcome of outcomes) {
      const change = fit.find(({ id }) => id === outcome.id);
      if (change !== undefined && outcome.outcome !== 'rejected') {
        this.storedUnder.set(change.id, { ...change, clock: outcome.clock });
      }
    }
    const rejected = changes.filter((change) => !fit.includes(change));
    const refusals = rejected.map(({ id }) => ({ id, outcome: 'rejected', reason: 'Unfit.' }) as const);
    return { ...this.#head(), outcomes: [...outcomes, ...refusals] };
  }

  #head() {
    return { store: this.store.id, protocol: PROTOCOL, now: this.#now };
  }

  #pick<T>(choices: readonly T[]): T {
    const choice = choices[Math.floor(this.#uniform() * choices.length)];
    if (choice === undefined) throw new Error('nothing to pick from');
    return choice;
  }
}
