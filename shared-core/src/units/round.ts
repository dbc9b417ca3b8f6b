/** The multiple of `step` nearest to `value`; halves go away from zero, so rounding is symmetric about zero. */
export function roundTo(value: number, step: number): number {
  const magnitude = Math.abs(value);
  // A step such as 0.1 has no exact binary form, its inverse 10 has: divide by the inverse to keep 0.3 at 0.3.
  const rounded =
    step < 1 ? Math.round(magnitude / step) / Math.round(1 / step) : Math.round(magnitude / step) * step;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}
