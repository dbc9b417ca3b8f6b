import { hash } from 'node:crypto';
import type { Change, Json } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import type { StarterFood } from '@platewright/core/foods/starter/types.ts';

const DEVICE = 'starter';
/** Before every edit, so that any edit wins. */
const CLOCK = formatClock(0, 0, DEVICE);

/** The starter larder of an athlete as changes. Their ids follow from their content, so a second sowing changes nothing. */
export function starterLarder(athlete: string): Change[] {
  return starterFoods.map((food) => toChange(athlete, food));
}

function toChange(athlete: string, { id, ...food }: StarterFood): Change {
  const fields: Record<string, Json> = JSON.parse(JSON.stringify(food));
  const digest = hash('sha256', JSON.stringify([athlete, id, fields]), 'hex');
  return {
    id: `starter-${digest.slice(0, 40)}`,
    athlete,
    device: DEVICE,
    clock: CLOCK,
    kind: 'food',
    record: id,
    fields,
  };
}
