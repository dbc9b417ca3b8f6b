/** Lets pieces of work run one after the other, in the order in which they came; one that fails does not hold up the next. */
export function createTurns(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const result = last.then(work);
    last = result.catch(() => undefined);
    return result;
  };
}
