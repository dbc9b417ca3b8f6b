import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const folder = resolve(import.meta.dirname, '../../../shared/data/usda-sr28');

/** Whether the tables of USDA SR28 lie beside the repository. They are read for checks only and never copied into it. */
export const usdaPresent = existsSync(folder);

export const usdaAbsentSentence =
  'not compared: the USDA SR28 tables are absent (../shared/data/usda-sr28 beside the repository)';

/** Rows of `foods.csv` by NDB number, each a map from column to text; an empty text is not reported. */
export function readUsdaFoods(): Map<string, Record<string, string>> {
  return new Map(readCsv('foods.csv').map((row) => [row.ndb ?? '', row]));
}

/** Household measures by NDB number: how many, and the grams they weigh together. */
export function readUsdaPortions(): Map<string, { amount: number; grams: number }[]> {
  const portions = new Map<string, { amount: number; grams: number }[]>();
  for (const row of readCsv('portions.csv')) {
    const portion = { amount: Number(row.amount), grams: Number(row.grams) };
    portions.set(row.ndb ?? '', [...(portions.get(row.ndb ?? '') ?? []), portion]);
  }
  return portions;
}

function readCsv(name: string): Record<string, string>[] {
  const [head = [], ...rows] = readFileSync(resolve(folder, name), 'utf8').trim().split('\n').map(cells);
  return rows.map((row) => Object.fromEntries(head.map((column, i) => [column, row[i] ?? ''])));
}

function cells(line: string): string[] {
  return [...line.trimEnd().matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    (match) => match[1]?.replaceAll('""', '"') ?? match[2] ?? '',
  );
}
