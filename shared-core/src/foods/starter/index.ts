import { bread } from './bread.ts';
import { condiments } from './condiments.ts';
import { dairy } from './dairy.ts';
import { eggs } from './eggs.ts';
import { fats } from './fats.ts';
import { fish } from './fish.ts';
import { fruit } from './fruit.ts';
import { grains } from './grains.ts';
import { legumes } from './legumes.ts';
import { meat } from './meat.ts';
import { nuts } from './nuts.ts';
import { potatoes } from './potatoes.ts';
import { poultry } from './poultry.ts';
import { sugars } from './sugars.ts';
import type { StarterFood } from './types.ts';
import { vegetables } from './vegetables.ts';

/** The foods every larder starts with. */
export const starterFoods: readonly StarterFood[] = [
  ...eggs,
  ...poultry,
  ...meat,
  ...fish,
  ...dairy,
  ...grains,
  ...bread,
  ...potatoes,
  ...legumes,
  ...fruit,
  ...vegetables,
  ...nuts,
  ...fats,
  ...sugars,
  ...condiments,
];
