/** Seeded random numbers, so that a run can be repeated to the digit. */
export interface Random {
  /** Evenly between 0 and 1. */
  even(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
  /** Normal, drawn again until it lies between low and high. */
  within(mean: number, sd: number, low: number, high: number): number;
  chance(probability: number): boolean;
}

/** Mixes numbers into one 32-bit seed (murmur3 finaliser), so that neighbouring seeds give unrelated streams. */
function mixSeeds(...parts: readonly number[]): number {
  let hash = 0x9e3779b9;
  for (const part of parts) {
    hash = Math.imul(hash ^ (part | 0), 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
    hash ^= hash >>> 16;
  }
  return hash >>> 0;
}

/** sfc32 of the PractRand suite (public domain), normals by Box–Muller. */
export function seededRandom(...seeds: readonly number[]): Random {
  let a = mixSeeds(...seeds, 1);
  let b = mixSeeds(...seeds, 2);
  let c = mixSeeds(...seeds, 3);
  let counter = 1;
  const even = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return (sum >>> 0) / 4294967296;
  };
  for (let warm = 0; warm < 12; warm++) even();
  const normal = () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  return {
    even,
    normal,
    within(mean, sd, low, high) {
      for (let tries = 0; tries < 100; tries++) {
        const value = mean + sd * normal();
        if (value >= low && value <= high) return value;
      }
      return Math.min(high, Math.max(low, mean));
    },
    chance: (probability) => even() < probability,
  };
}
