import type { Change, Json } from '@platewright/core/changes/change.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { mayWrite, OWNER } from '@platewright/core/protocol/rights.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { type Edit, edit } from '../../extension/replica/edit.ts';
import { amend, letGo, resend } from '../../extension/replica/outbox.ts';
import { readAhead } from '../../extension/replica/read-ahead.ts';
import { type SyncEnd, sync } from '../../extension/replica/sync.ts';
import { checkRows } from './check-rows.ts';
import { Dice } from './dice.ts';
import type { Home } from './home.ts';
import { byKey, fail, Ledger } from './ledger.ts';
import { throughNetwork, UNFIT, VAST } from './network.ts';
import { Killed, SimulatedDevice } from './simulated-device.ts';

const START = Date.UTC(2026, 0, 5);
const DAY_MS = 86_400_000;
const YEAR_MS = 365 * DAY_MS;
const ATHLETES = ['anna', 'anna', 'anna', 'bob'];
const RECORDS = 5;
const MOST_DEVICES = 5;
const OTHERS: readonly Rights[] = [
  { athlete: 'bob', access: 'write' },
  { athlete: null, access: 'read' },
  { athlete: 'anna', access: 'read' },
];

/** The true time, which nobody in the world knows. ms since 1970. */
export class WorldClock {
  now = START;
}

/** Devices, a network, a daemon and their clocks in one process. The same seed gives the same history, step for step. */
export class World {
  readonly ledger = new Ledger();
  readonly devices: SimulatedDevice[] = [];
  readonly home: Home;
  /** What happened, a line each. */
  readonly trace: string[] = [];
  readonly #dice: Dice;
  readonly #clock: WorldClock;
  #faults = true;
  #ids = 0;
  #names = 0;
  #busy = 0;
  #late: (() => Promise<unknown>)[] = [];
  #backup: Awaited<ReturnType<Home['backup']>> | null = null;

  constructor(seed: number, clock: WorldClock, home: Home) {
    this.#dice = new Dice(seed);
    this.#clock = clock;
    this.home = home;
  }

  /** Pairs three devices and lets `steps` things happen. */
  async live(steps: number): Promise<void> {
    for (let i = 0; i < 3; i += 1) {
      const rights = i === 2 && this.#dice.happens(0.3) ? this.#dice.pick(OTHERS) : OWNER;
      const device = new SimulatedDevice(this.#newName(), await this.home.pair(rights));
      await device.adopt();
      this.devices.push(device);
    }
    for (const device of this.devices) device.skewMs = this.#dice.pick([0, 0, 0, 1000, -YEAR_MS, YEAR_MS]);
    for (let step = 0; step < steps; step += 1) {
      this.#pass();
      await this.#something();
    }
  }

  /** No more faults: everybody syncs until nothing moves. */
  async quiet(): Promise<void> {
    this.#faults = false;
    for (const late of this.#late.splice(0)) await late();
    for (let round = 0; round < 3; round += 1) {
      for (const device of this.devices) {
        let end = await this.#sync(device);
        if (end.state === 'unpaired') {
          await this.#pairAnew(device, device.access.rights);
          end = await this.#sync(device);
        }
        if (end.state !== 'done') fail(`${device.name} does not come to an end`, end);
        await device.mirror();
        this.#lookAt(device);
      }
    }
  }

  async #something(): Promise<void> {
    const device = this.#dice.pick(this.devices);
    const deed = this.#dice.uniform();
    this.trace.push(`${device.name} ${deed}`);
    if (deed < 0.38) await this.#guarded(device, () => this.#edit(device));
    else if (deed < 0.72) await this.#guarded(device, () => this.#sync(device));
    else if (deed < 0.77) await this.#guarded(device, () => this.#decide(device));
    else if (deed < 0.81) device.skewMs = this.#dice.pick([0, 0, -60_000, 60_000, -YEAR_MS, YEAR_MS]);
    else if (deed < 0.84) await this.#late.splice(this.#dice.below(this.#late.length), 1)[0]?.();
    else if (deed < 0.87) this.#backup = await this.home.backup();
    else if (deed < 0.9) await this.#restoreStore();
    else if (deed < 0.925) await this.#fold();
    else if (deed < 0.935) device.saveProfile();
    else if (deed < 0.95) await this.#setBack(async () => void device.restoreProfile());
    else if (deed < 0.96) await this.#throwAway(device);
    else if (deed < 0.97) await this.#clone(device);
    else if (deed < 0.985) await device.access.revoke();
    else await this.#pairAnew(device, this.#dice.pick([device.access.rights, OWNER, ...OTHERS]));
  }

  /** What goes on while a request of `device` travels. */
  async #meanwhile(device: SimulatedDevice): Promise<void> {
    device.step();
    if (!this.#faults || this.#busy > 1 || !this.#dice.happens(0.08)) return;
    const deed = this.#dice.uniform();
    this.trace.push(`meanwhile ${deed}`);
    if (deed < 0.45) await this.#edit(device);
    else if (deed < 0.55) await this.#decide(device);
    else if (deed < 0.65) await this.#fold();
    else if (deed < 0.75) await this.#restoreStore();
    else if (deed < 0.8) await device.access.revoke();
    else if (deed < 0.85) this.#backup = await this.home.backup();
    else {
      const other = this.#dice.pick(this.devices);
      if (other !== device && this.#busy === 1) await this.#guarded(other, () => this.#sync(other));
    }
  }

  /** Runs work of a device that may be killed at any await. */
  async #guarded(device: SimulatedDevice, work: () => Promise<unknown>): Promise<void> {
    device.left = this.#dice.happens(0.2) ? this.#dice.below(60) : Number.POSITIVE_INFINITY;
    this.#busy += 1;
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Killed)) throw error;
      this.trace.push('killed');
    } finally {
      device.left = Number.POSITIVE_INFINITY;
      this.#busy -= 1;
    }
    this.#lookAt(device);
  }

  /** The person looks: what was rejected is there until somebody decides, or the daemon has it after all. */
  #lookAt(device: SimulatedDevice): void {
    const ids = new Set(device.replica.outbox().map(({ change }) => change.id));
    for (const id of device.undecided) {
      if (!ids.has(id) && !this.ledger.stored.has(id)) fail('a rejected change is gone', id);
    }
    device.noteRejected();
  }

  async #edit(device: SimulatedDevice): Promise<void> {
    const undo = this.#dice.happens(0.15) ? device.undo.pop() : undefined;
    const edits = undo ?? Array.from({ length: 1 + this.#dice.below(3) }, () => this.#newEdit());
    await this.#keep(device, edits);
  }

  async #keep(device: SimulatedDevice, edits: readonly Edit[]): Promise<void> {
    if (!edits.every(({ athlete }) => mayWrite(device.replica.head().rights, athlete))) return;
    await this.#telling(device, async () => {
      device.undo.push(await edit(device.kept, this.#source(device, true), edits));
    });
    const last = edits.at(-1);
    const row = last === undefined ? undefined : device.row(last.athlete, last.record);
    for (const [field, value] of Object.entries(last?.fields ?? {})) {
      if ((row?.fields[field] ?? null) !== value) fail('an edit must win where it was made', [last, row]);
    }
  }

  #newEdit(): Edit {
    this.#ids += 1;
    const record = `r${this.#dice.below(RECORDS)}`;
    return { athlete: this.#dice.pick(ATHLETES), kind: 'entry', record, fields: this.#fields(this.#ids) };
  }

  #fields(n: number): Record<string, Json> {
    const luck = this.#dice.uniform();
    const fields: Record<string, Json>[] = [
      { name: luck < 0.06 ? `${UNFIT}${n}` : luck < 0.1 ? `${VAST}${n}` : `n${n}` },
      { grams: 1 + (n % 20_000) },
      { meal: 1 + (n % 8), date: '2026-01-05' },
      { removed: luck < 0.5 },
      { name: `n${n}`, grams: 1 + (n % 20_000), meal: 1 + (n % 8) },
    ];
    return this.#dice.pick(fields);
  }

  /** The person looks at what was rejected: sends it again, puts it right, or lets it go. */
  async #decide(device: SimulatedDevice): Promise<void> {
    const { replica, kept } = device;
    const row = replica.outbox().find(({ state }) => state === 'rejected');
    if (row === undefined) return;
    const { order, change } = row;
    const choice = this.#dice.uniform();
    device.undecided.delete(change.id);
    if (choice < 0.3) {
      await resend(kept, order);
      const isSent = replica.outbox().some((left) => left.order === order && left.state === 'waiting');
      if (!isSent) fail('a change that was resent does not wait', row);
      return;
    }
    const isThere = () => replica.outbox().some((left) => left.order === order);
    try {
      await this.#telling(device, async () => {
        if (choice < 0.6 || !mayWrite(replica.head().rights, change.athlete)) await letGo(kept, order);
        else {
          this.#ids += 1;
          await amend(kept, this.#source(device, true), order, { name: `n${this.#ids}` });
        }
      });
      if (isThere()) fail('what was decided on is still there', row);
    } finally {
      // Killed after it was kept, it is decided all the same.
      if (!isThere()) this.ledger.made.delete(change.id);
    }
  }

  /** Runs what a person did. Of what comes into the outbox and is not answered any more nobody was told. */
  async #telling(device: SimulatedDevice, work: () => Promise<void>): Promise<void> {
    const before = new Set(device.changes().map(({ id }) => id));
    try {
      await work();
    } catch (error) {
      for (const { id } of device.changes()) if (!before.has(id)) device.untold.add(id);
      throw error;
    } finally {
      this.ledger.noteMade(device);
    }
  }

  /** The browser throws a replica away. What a person was told is saved must be there again. */
  async #throwAway(device: SimulatedDevice): Promise<void> {
    const told = device.changes().filter(({ id }) => this.ledger.edits.has(id) && !device.untold.has(id));
    await this.#setBack(async () => {
      device.throwAway();
      await this.#guarded(device, () => device.fillAgain());
      await device.fillAgain();
    });
    const ids = new Set(device.changes().map(({ id }) => id));
    const lost = told.filter(({ id }) => !ids.has(id));
    if (lost.length > 0) fail('what was saved went with the replica', lost);
    checkRows(device);
    device.noteRejected();
  }

  async #fold(): Promise<void> {
    await this.home.fold(this.#dice.below((await this.home.lastSeq()) + 2));
  }

  async #restoreStore(): Promise<void> {
    const named = this.#dice.pick(['anew', 'the same'] as const);
    this.trace.push(`restored ${named}`);
    await this.#setBack(async () => await this.#backup?.(named));
  }

  /** Copies a profile, and both go on in the same moment: they stamp alike. */
  async #clone(device: SimulatedDevice): Promise<void> {
    if (this.devices.length === MOST_DEVICES) return;
    const copy = device.clone();
    this.devices.push(copy);
    const { athlete, kind, record } = this.#newEdit();
    for (const one of [device, copy]) {
      this.#ids += 1;
      await this.#keep(one, [{ athlete, kind, record, fields: { grams: 1 + this.#ids } }]);
    }
  }

  async #pairAnew(device: SimulatedDevice, rights: Rights): Promise<void> {
    await this.#setBack(async () => {
      device.access = await this.home.pair(rights);
      device.name = this.#newName();
      await device.adopt();
    });
  }

  /** Does what may take away the last copy of something, and says so in the ledger. */
  async #setBack(work: () => Promise<unknown>): Promise<void> {
    this.ledger.checkMade();
    await work();
    this.ledger.forgetLost(byKey(await this.home.records()), this.devices);
  }

  async #sync(device: SimulatedDevice): Promise<SyncEnd> {
    const around = {
      meanwhile: () => this.#meanwhile(device),
      late: (request: () => Promise<unknown>) => void this.#late.push(request),
      told: (changes: readonly Change[], outcomes: readonly Outcome[]) =>
        this.ledger.told(changes, outcomes, this.#clock.now),
    };
    const source = this.#source(device, false);
    const ahead = readAhead(device.access.daemon, source.now);
    const daemon = throughNetwork(ahead, around, () => (this.#faults ? this.#dice : null));
    const end = await sync({ ...source, replica: device.kept, daemon });
    this.trace.push(end.state);
    if (end.state === 'done' && device.replica.outbox().some(({ state }) => state === 'waiting')) {
      fail('a sync that is done leaves nothing waiting', device.replica.outbox());
    }
    return end;
  }

  #source(device: SimulatedDevice, isPerson: boolean) {
    return {
      now: () => this.#clock.now + device.skewMs,
      newId: () => {
        this.#ids += 1;
        const id = `id-${this.#ids}`;
        if (isPerson) this.ledger.edits.add(id);
        return id;
      },
    };
  }

  #pass(): void {
    this.#clock.now += Math.floor(this.#dice.uniform() ** 4 * DAY_MS);
  }

  #newName(): string {
    this.#names += 1;
    return `d${this.#names}`;
  }
}
