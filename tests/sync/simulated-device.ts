import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Edit } from '../../extension/replica/edit.ts';
import { baseOf, type RecordRow } from '../../extension/replica/rows.ts';
import type { Access } from './home.ts';
import { MemoryReplica } from './memory-replica.ts';

/** A program that was killed. */
export class Killed extends Error {}

/** A browser: its profile, its clock, its key to the daemon, and the person before it. */
export class SimulatedDevice {
  readonly replica = new MemoryReplica();
  /** Error of its wall clock, ms. */
  skewMs = 0;
  undo: Edit[][] = [];
  /** Ids of rejected changes that nobody has decided on. */
  undecided = new Set<string>();
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
  }

  /** An await, at which it may be killed. */
  step(): void {
    this.left -= 1;
    if (this.left < 0) throw new Killed();
  }

  async adopt(): Promise<void> {
    await this.replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: this.name }));
  }

  /** Keeps a copy of the profile folder. */
  saveProfile(): void {
    const { name, access } = this;
    const restore = this.replica.saved();
    this.#profile = () => {
      restore(this.replica);
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
