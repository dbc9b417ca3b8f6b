/** A number out of a preallocated array; keeps index checks of the type system out of the arithmetic. */
export function at(values: Float64Array, index: number): number {
  return values[index] ?? 0;
}
