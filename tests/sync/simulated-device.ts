import type { Change } from '@platewright/core/changes/change.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Edit } from '../../extension/replica/edit.ts';
import { baseOf, type RecordRow } from '../../extension/replica/rows.ts';
import { keptTwice, mirror, refill } from '../../extension/replica/second-copy.ts';
import type { Access } from './home.ts';
import { MemoryCopy } from './memory-copy.ts';
import { MemoryReplica } from './memory-replica.ts';

/** A program that was killed. */
export class Killed extends Error {}

/** A browser: its profile, its clock, its key to the daemon, and the person before it. */
export class SimulatedDevice {
  readonly replica = new MemoryReplica();
  readonly copy = new MemoryCopy();
  /** The replica as the program writes it. */
  readonly kept = keptTwice(this.replica, this.copy, (killed) => {
    throw killed;
  });
  /** Error of its wall clock, ms. */
  skewMs = 0;
  undo: Edit[][] = [];
  /** Ids of rejected changes that nobody has decided on. */
  undecided = new Set<string>();
  /** Ids of changes that came into the outbox and of which the person was never told. */
  untold = new Set<string>();
  /** Awaits that are left until it is killed. */
  left = Number.POSITIVE_INFINITY;
  /** Name under which it stamps; copies of a profile share it. */
  name: string;
  access: Access;
  #profile: (() => void) | null = null;

  constructor(name: string, access: Access) {
    this.name = name;
    this.access = access;
    this.replica.onAwait = () => this.step();
    this.copy.onAwait = () => this.step();
  }

  /** An await, at which it may be killed. */
  step(): void {
    this.left -= 1;
    if (this.left < 0) throw new Killed();
  }

  async adopt(): Promise<void> {
    await this.kept.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: this.name }));
  }

  /** The browser can't read the replica any more, deletes it, and the program fills it again when it is next started. */
  throwAway(): void {
    this.replica.clear();
    this.undecided.clear();
  }

  async fillAgain(): Promise<void> {
    const { store, rights } = this.access;
    await refill(this.kept, this.copy, { device: this.name, store, rights });
  }

  async mirror(): Promise<void> {
    await mirror(this.copy, async () => this.changes());
  }

  changes(): Change[] {
    return this.replica.outbox().map(({ change }) => change);
  }

  /** Keeps a copy of the profile folder. */
  saveProfile(): void {
    const { name, access } = this;
    const restore = this.replica.saved();
    const restoreCopy = this.copy.saved();
    this.#profile = () => {
      restore(this.replica);
      restoreCopy(this.copy);
      this.name = name;
      this.access = access;
    };
  }

  /** Puts the copy in the place of the profile. False when there is none. */
  restoreProfile(): boolean {
    this.#profile?.();
    this.undo = [];
    this.noteRejected();
    return this.#profile !== null;
  }

  /** Another browser that goes on from a copy of this profile. */
  clone(): SimulatedDevice {
    const copy = new SimulatedDevice(this.name, this.access);
    this.replica.saved()(copy.replica);
    this.copy.saved()(copy.copy);
    copy.untold = new Set(this.untold);
    copy.skewMs = this.skewMs;
    copy.noteRejected();
    return copy;
  }

  noteRejected(): void {
    this.undecided = new Set(
      this.replica.outbox().flatMap(({ state, change }) => (state === 'rejected' ? change.id : [])),
    );
  }

  sees(athlete: string): boolean {
    return this.access.rights.athlete === null || this.access.rights.athlete === athlete;
  }

  writes(athlete: string): boolean {
    return this.access.rights.access === 'write' && this.sees(athlete);
  }

  row(athlete: string, id: string): RecordRow | undefined {
    return this.replica.row(athlete, id);
  }

  /** What it takes the daemon to hold of a record. */
  held(athlete: string, id: string): StoredRecord | null {
    return baseOf(this.replica.row(athlete, id));
  }
}
