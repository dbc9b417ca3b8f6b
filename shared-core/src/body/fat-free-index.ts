/**
 * Fat-free mass index in kg/m², as measured and normalised to a height of 1.80 m. Kouri EM, Pope HG, Katz DL, Oliva P.
 * Clin J Sport Med 1995;5:223–228, correction 6.3 as in the abstract (many secondary uses print 6.1).
 */
export function fatFreeMassIndex(
  massKg: number,
  fatPercent: number,
  heightCm: number,
): { raw: number; normalised: number } {
  const heightM = heightCm / 100;
  const raw = (massKg * (1 - fatPercent / 100)) / heightM ** 2;
  return { raw, normalised: raw + 6.3 * (1.8 - heightM) };
}
