import { StoreTrouble } from './trouble.ts';

/** Lets work at a store through: reading always, writing until something in it was found damaged. */
export function createGuard(explain: (error: unknown) => unknown) {
  let trouble: StoreTrouble | null = null;

  /** Throws StoreTrouble where a person can mend what went wrong. */
  async function read<T>(work: () => T | Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      const known = explain(error);
      if (known instanceof StoreTrouble && known.code === 'damaged') trouble ??= known;
      throw known;
    }
  }

  return {
    trouble: () => trouble,
    /** Nothing is written from now on. */
    close(found: StoreTrouble): void {
      trouble ??= found;
    },
    read,
    async write<T>(work: () => T | Promise<T>): Promise<T> {
      if (trouble !== null) throw trouble;
      return await read(work);
    },
  };
}
