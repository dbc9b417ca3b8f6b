import type * as z from 'zod/mini';
import type { foodSchema } from '../../records/food.ts';

/** A food every larder starts with: the fields of a food record, and an id that two devices would both choose. */
export type StarterFood = Omit<z.infer<typeof foodSchema>, 'hidden' | 'removed'> & { id: string };
