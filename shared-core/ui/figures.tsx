import type { EnergyUnit } from '../src/units/energy.ts';
import { energyFigure, gramsFigure } from './number.ts';

interface FiguresProps {
  proteinG: number;
  carbohydrateG: number;
  fatG: number;
  energyKcal?: number;
  energyUnit: EnergyUnit;
}

/** Protein, carbohydrate, fat and energy as the four columns of the day's ledger; each figure says what it is. */
export function Figures({ proteinG, carbohydrateG, fatG, energyKcal, energyUnit }: FiguresProps) {
  return (
    <span class="figures">
      <Figure short="P" word="protein" text={gramsFigure(proteinG)} unit="g" />
      <Figure short="C" word="carbohydrate" text={gramsFigure(carbohydrateG)} unit="g" />
      <Figure short="F" word="fat" text={gramsFigure(fatG)} unit="g" />
      {energyKcal !== undefined && (
        <Figure short="" word="energy" text={energyFigure(energyKcal, energyUnit)} unit={energyUnit} />
      )}
    </span>
  );
}

function Figure({ short, word, text, unit }: { short: string; word: string; text: string; unit: string }) {
  return (
    <span class="figure-cell">
      <span class="unseen">{word} </span>
      {short && (
        <span class="figure-short" aria-hidden="true">
          {short}{' '}
        </span>
      )}
      {text}
      <span class={short ? 'figure-unit' : 'figure-unit energy'}> {unit}</span>{' '}
    </span>
  );
}
