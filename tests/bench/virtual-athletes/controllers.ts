import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import type { Estimate as CoreEstimate } from '@platewright/core/trend/estimate.ts';
import { baselines } from './baselines.ts';
import type { Controller, Estimate } from './run-types.ts';

const product: Controller = (input) => {
  const { verdict, carbohydrateG, pace, maintenanceKcal } = weeklyCall(input);
  return {
    verdict,
    carbohydrateG,
    ...(pace ? { pace: { mean: pace.meanPercentPerWeek, ...pace.interval90 } } : {}),
    ...(pace ? { expectedPace: flat(pace.expectedAtMark) } : {}),
    ...(maintenanceKcal ? { maintenanceKcal: flat(maintenanceKcal) } : {}),
  };
};

function flat({ mean, interval90 }: CoreEstimate): Estimate {
  return { mean, ...interval90 };
}

/** The baselines and the product's own weekly call. */
export const controllers: Readonly<Record<string, Controller>> = { ...baselines, 'weekly call': product };
