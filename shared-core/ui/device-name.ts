const browsers = [
  ['Firefox', /Firefox\//],
  ['Edge', /Edg\//],
  ['Chrome', /Chrom(e|ium)\//],
  ['Safari', /Safari\//],
] as const;

const systems = [
  ['Android', /Android/],
  ['iPhone', /iPhone/],
  ['iPad', /iPad/],
  ['Windows', /Windows/],
  ['Mac', /Mac OS X/],
  ['Linux', /Linux/],
] as const;

/** A first name for this device, `Firefox on Android`; the athlete can type a better one. */
export function deviceName(userAgent: string): string {
  const find = (known: readonly (readonly [string, RegExp])[]) =>
    known.find(([, pattern]) => pattern.test(userAgent))?.[0];
  const [browser, system] = [find(browsers), find(systems)];
  return [browser ?? 'Browser', system && `on ${system}`].filter(Boolean).join(' ');
}
