import { seededChance } from '../../fixtures/season/chance.ts';

/** Everything that is left to chance in a history, from one seed. */
export class Dice {
  readonly uniform: () => number;

  constructor(seed: number) {
    this.uniform = seededChance(seed).uniform;
  }

  /** A whole number from 0 to below `count`. */
  below(count: number): number {
    return Math.floor(this.uniform() * count);
  }

  happens(probability: number): boolean {
    return this.uniform() < probability;
  }

  pick<T>(choices: readonly T[]): T {
    const choice = choices[this.below(choices.length)];
    if (choice === undefined) throw new Error('nothing to pick from');
    return choice;
  }
}
