import { at } from './at.ts';

/** Solves S·X = B in place of B for a symmetric positive S, which is overwritten (Cholesky). Both row-major, square. */
export function solveSymmetric(s: Float64Array, b: Float64Array, size: number): void {
  for (let j = 0; j < size; j++) {
    let pivot = at(s, j * size + j);
    for (let k = 0; k < j; k++) pivot -= at(s, j * size + k) ** 2;
    const root = Math.sqrt(Math.max(pivot, 1e-12));
    s[j * size + j] = root;
    for (let i = j + 1; i < size; i++) {
      let sum = at(s, i * size + j);
      for (let k = 0; k < j; k++) sum -= at(s, i * size + k) * at(s, j * size + k);
      s[i * size + j] = sum / root;
    }
  }
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) subtractRow(b, i, k, at(s, i * size + k), size);
    scaleRow(b, i, 1 / at(s, i * size + i), size);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) subtractRow(b, i, k, at(s, k * size + i), size);
    scaleRow(b, i, 1 / at(s, i * size + i), size);
  }
}

function subtractRow(b: Float64Array, row: number, other: number, times: number, size: number): void {
  for (let c = 0; c < size; c++) b[row * size + c] = at(b, row * size + c) - times * at(b, other * size + c);
}

function scaleRow(b: Float64Array, row: number, times: number, size: number): void {
  for (let c = 0; c < size; c++) b[row * size + c] = at(b, row * size + c) * times;
}

/** out = filtered + Gᵀ·D·G. */
export function sandwich(
  g: Float64Array,
  d: Float64Array,
  filtered: Float64Array,
  start: number,
  size: number,
  scratch: Float64Array,
  out: Float64Array,
): void {
  transposedTimes(g, d, size, scratch);
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) {
      let sum = at(filtered, start + i * size + j);
      for (let k = 0; k < size; k++) sum += at(scratch, i * size + k) * at(g, k * size + j);
      out[i * size + j] = sum;
    }
}

/** out = Gᵀ·M. */
export function transposedTimes(g: Float64Array, m: Float64Array, size: number, out: Float64Array): void {
  out.fill(0);
  for (let k = 0; k < size; k++)
    for (let i = 0; i < size; i++) {
      const times = at(g, k * size + i);
      for (let j = 0; j < size; j++) out[i * size + j] = at(out, i * size + j) + times * at(m, k * size + j);
    }
}
