/** Of the items that begin on or before a date the one that began last, of one date that of the greatest id; null for none. */
export function latestOn<T extends { id: string }>(
  items: readonly T[],
  begins: (item: T) => string,
  date: string,
): T | null {
  return items.reduce<T | null>((latest, item) => {
    if (begins(item) > date) return latest;
    return latest === null || begins(item) + item.id > begins(latest) + latest.id ? item : latest;
  }, null);
}
