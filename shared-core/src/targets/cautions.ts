import { GROWN_AGE } from '../call/cautions.ts';
import { FAST_LOSS } from '../call/guards.ts';
import { availabilityLevels, energyAvailability, sessionKcal } from '../maintenance/energy-availability.ts';
import { mifflinStJeorKcal } from '../maintenance/start-estimate.ts';
import type { Caution } from '../records/athlete.ts';
import type { Athlete } from '../records/kinds.ts';
import { formatEnergy } from '../units/energy.ts';
import { formatRate } from '../units/mass.ts';
import { formatEnergyPerMass, unitsOf } from '../units/reader.ts';
import type { Figures } from './figures.ts';
import { leanInForceKg } from './lean-mass.ts';
import { personOn } from './person.ts';

/** Energy of a very-low-energy diet, kcal a day: it needs medical supervision (from memory). */
const veryLowKcal = 800;

/** What the athlete should take to a professional before eating by these targets; one or two sentences each. */
export function cautionsFor(figures: Figures): string[] {
  return [
    ...statedCautions(figures.athlete),
    youth(figures),
    availability(figures),
    lowEnergy(figures),
    fastLoss(figures),
  ].filter((sentence) => sentence !== null);
}

/** What the athlete said at set-up, each with whom to ask. */
export function statedCautions(athlete: StatedBy): string[] {
  return athlete.cautions.map((caution) => stated(caution, athlete));
}

type StatedBy = Pick<Athlete, 'cautions' | 'proteinGPerKg' | 'massUnit'>;

function stated(caution: Caution, athlete: StatedBy): string {
  switch (caution) {
    case 'kidney':
      // KDOQI 2020: 0.55 to 0.60 g/kg in stages 3 to 5 without dialysis, second-hand; a professional must set it.
      return (
        `Kidney disease: a sports protein rate such as ${formatRate(athlete.proteinGPerKg, athlete.massUnit)} is not meant for you. ` +
        'Guidelines for chronic kidney disease ask for far less protein; let your doctor or dietitian set it.'
      );
    case 'pregnancy':
      return 'Pregnancy or breast-feeding: these targets do not know your needs, and a phase of loss is not for now. Ask your doctor, midwife or dietitian.';
    case 'eating-disorder':
      return 'An eating disorder, now or in the past: counting food and body mass can harm. Use this only together with your doctor or therapist.';
    case 'diabetes':
      return 'Diabetes: a move of the carbohydrate mark can change what your medicine should be. Talk to your doctor or dietitian before each one.';
  }
}

function youth({ athlete, date }: Figures): string | null {
  if (personOn(athlete, date).ageYears > GROWN_AGE) return null;
  return 'Under 18 or just 18: these rules come from studies of adults, and someone who grows needs more. Let a doctor or dietitian see the plan, and mind the rules of your federation.';
}

function availability(figures: Figures): string | null {
  const { athlete, numbers, kind } = figures;
  const exercise = kind === 'session' ? sessionKcal(numbers.bodyMassKg) : 0;
  const available = energyAvailability(numbers.energyKcal, exercise, leanInForceKg(figures));
  if (available >= availabilityLevels.healthy) return null;
  const say = (kcalPerKg: number) => formatEnergyPerMass(kcalPerKg, unitsOf(athlete));
  const amount = `${say(available)} of fat-free mass`;
  const signs = athlete.sex === 'female' ? 'cold, ill or weak, or a period stays away' : 'cold, ill or weak';
  const origin = 'The levels come from studies of women and are unknown in men.';
  return available < availabilityLevels.low
    ? `Energy availability of this day is ${amount}, under ${say(availabilityLevels.low)}: low, with a risk for hormones, bones and immunity. See a doctor or sports dietitian before you eat like this. ${origin}`
    : `Energy availability of this day is ${amount}, under the ${say(availabilityLevels.healthy)} that is held to be healthy. Keep such a stretch short, and ask a doctor or dietitian if you feel ${signs}. ${origin}`;
}

function lowEnergy({ athlete, numbers, date }: Figures): string | null {
  const say = (kcal: number) => formatEnergy(kcal, athlete.energyUnit);
  if (numbers.energyKcal <= veryLowKcal) {
    return `The day has ${say(numbers.energyKcal)}: that little is eaten only under a doctor's care.`;
  }
  const resting = mifflinStJeorKcal(personOn(athlete, date), numbers.bodyMassKg);
  if (numbers.energyKcal >= resting) return null;
  return `The day has ${say(numbers.energyKcal)}, less than the body uses at rest by equation. Ask a doctor or dietitian first.`;
}

function fastLoss({ aim }: Figures): string | null {
  if (aim.pacePercentPerWeek >= FAST_LOSS) return null;
  return 'The aim is to lose more than 1 % of body mass a week, faster than the 0.5 to 1 % advised for athletes (Helms et al. 2014). Ask a doctor or sports dietitian, or choose a slower pace.';
}
