import { existsSync } from 'node:fs';
import { baselines } from './baselines.ts';
import type { Answer, Controller, Estimate } from './run-types.ts';

const PRODUCT = new URL('../../../shared-core/src/call/weekly-call.ts', import.meta.url);

/** The baselines, and the product's own weekly call when the tree has it. */
export async function controllers(): Promise<Readonly<Record<string, Controller>>> {
  if (!existsSync(PRODUCT)) return baselines;
  const module: unknown = await import(PRODUCT.href);
  if (!isObject(module) || typeof module.weeklyCall !== 'function') return baselines;
  const call = module.weeklyCall;
  return { ...baselines, 'weekly call': (input) => answerOf(call(input)) };
}

function answerOf(call: unknown): Answer {
  if (!isObject(call) || typeof call.verdict !== 'string' || typeof call.carbohydrateG !== 'number')
    throw new Error('the weekly call must answer with a verdict and a mark');
  const pace = isObject(call.pace) ? estimateOf(call.pace.meanPercentPerWeek, call.pace.interval90) : null;
  const expected = isObject(call.pace) ? nested(call.pace.expectedAtMark) : null;
  const maintenanceKcal = nested(call.maintenanceKcal);
  return {
    verdict: call.verdict,
    carbohydrateG: call.carbohydrateG,
    ...(pace ? { pace } : {}),
    ...(expected ? { expectedPace: expected } : {}),
    ...(maintenanceKcal ? { maintenanceKcal } : {}),
  };
}

function nested(value: unknown): Estimate | null {
  return isObject(value) ? estimateOf(value.mean, value.interval90) : null;
}

function estimateOf(mean: unknown, interval: unknown): Estimate | null {
  if (typeof mean !== 'number' || !isObject(interval)) return null;
  const { low, high } = interval;
  return typeof low === 'number' && typeof high === 'number' ? { mean, low, high } : null;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
