import type { Change } from '@platewright/core/changes/change.ts';
import type { SecondCopy } from '../../extension/replica/second-copy.ts';

/** A second copy in memory. */
export class MemoryCopy implements SecondCopy {
  #changes = new Map<string, Change>();
  /** Called at each await; may throw, as a program that is killed there. */
  onAwait: () => void = () => {};

  async put(changes: readonly Change[]): Promise<void> {
    if (changes.length === 0) return;
    this.onAwait();
    for (const change of changes) this.#changes.set(change.id, change);
    this.onAwait();
  }

  async drop(ids: readonly string[]): Promise<void> {
    if (ids.length === 0) return;
    this.onAwait();
    for (const id of ids) this.#changes.delete(id);
    this.onAwait();
  }

  async ids(): Promise<string[]> {
    this.onAwait();
    return [...this.#changes.keys()];
  }

  async read(): Promise<Change[]> {
    this.onAwait();
    return [...this.#changes.values()];
  }

  /** A copy of the profile folder. It can be put in the place of any. */
  saved(): (copy: MemoryCopy) => void {
    const changes = [...this.#changes];
    return (copy) => {
      copy.#changes = new Map(changes);
    };
  }
}
