import type { DayTargets, Reason } from '@platewright/core/targets/types.ts';
import { energyFigure, gramsFigure } from '@platewright/core/ui/number.ts';
import type { Units } from '@platewright/core/units/reader.ts';
import type { ComponentChildren } from 'preact';

/** What a day asks for: each number with its reasons, and where each reason comes from. */
export function TargetsTable({ targets, units }: { targets: DayTargets; units: Units }) {
  const { protein, carbohydrate, fat } = targets;
  const reasons = (about: Reason['about']) => targets.reasons.filter((reason) => reason.about === about);
  return (
    <dl class="targets">
      <Target
        name="Protein quota"
        figure={gramsFigure(protein.quotaG)}
        unit="g"
        reasons={reasons('protein')}
      />
      <Target
        name="Carbohydrate mark"
        figure={gramsFigure(carbohydrate.markG)}
        unit="g"
        beside={`band ${gramsFigure(carbohydrate.bandLowG)} to ${gramsFigure(carbohydrate.bandHighG)} g`}
        reasons={reasons('carbohydrate')}
      />
      <Target
        name="Fat"
        figure={gramsFigure(fat.targetG)}
        unit="g"
        beside={`floor ${gramsFigure(fat.floorG)} g`}
        reasons={reasons('fat')}
      />
      <Target
        name="Energy"
        figure={energyFigure(targets.energyKcal, units.energy)}
        unit={units.energy}
        reasons={reasons('energy')}
      />
    </dl>
  );
}

interface TargetProps {
  name: string;
  figure: string;
  unit: string;
  beside?: ComponentChildren;
  reasons: readonly Reason[];
}

function Target({ name, figure, unit, beside, reasons }: TargetProps) {
  return (
    <div class="target">
      <dt>{name}</dt>
      <dd class="target-figure">
        <span class="figure">{figure}</span> {unit}
        {beside && <span class="aim small"> {beside}</span>}
      </dd>
      {reasons.map((reason) => (
        <dd key={reason.text} class="target-reason">
          {reason.text} <span class="soft">[{reason.source}]</span>
        </dd>
      ))}
    </div>
  );
}
