import type { BeamView } from '../src/views/types.ts';
import { gramsFigure } from './number.ts';

/**
 * A gauge of one macronutrient, drawn as the beam of a balance: ink up to what is eaten, a notch for each meal, a
 * bracket for a band, a post for a floor and a pointer to what is aimed for. A screen reader hears `beam.words`.
 */
export function Beam({ beam }: { beam: BeamView }) {
  const place = (grams: number) => percent(grams, beam.spanG);
  return (
    <div class="beam" role="img" aria-label={beam.words}>
      <span class="beam-name">{beam.name}</span>
      <span class="beam-eaten">
        <b>{gramsFigure(beam.eatenG)}</b>
        <span class="soft"> of {gramsFigure(beam.pointer.atG)} g</span>
      </span>
      <svg class="beam-drawing" aria-hidden="true" focusable="false">
        {/* Under a line of text, whose height goes with the font. */}
        <svg y="1.1em" overflow="visible" aria-hidden="true">
          <Label
            percent={place(beam.pointer.atG)}
            text={`${beam.pointer.label} ${gramsFigure(beam.pointer.atG)}`}
            aim
          />
          <rect class="beam-line" x="0" y="13" width="100%" height="2" />
          <rect class="beam-line" x="100%" y="9" width="2" height="10" transform="translate(-2 0)" />
          <rect class="beam-fill" x="0" y="9.5" height="9" style={{ width: `${place(beam.eatenG)}%` }} />
          {beam.eatenG > beam.spanG && <At percent={100} d="M0 9l7 5l-7 5z" kind="beam-over" />}
          {beam.notches.map((notch) => (
            <Notch key={notch.label} percent={place(notch.atG)} label={notch.label} reached={notch.reached} />
          ))}
          {beam.bracket && <Bracket low={beam.bracket.lowG} high={beam.bracket.highG} place={place} />}
          {beam.post && (
            <>
              <At percent={place(beam.post.atG)} d="M-1 4h2v19h5v2h-12v-2h5z" kind="beam-post" />
              <Label
                percent={place(beam.post.atG)}
                under={25}
                text={`${beam.post.label} ${gramsFigure(beam.post.atG)}`}
              />
            </>
          )}
          <At percent={place(beam.pointer.atG)} d="M0 9l-5-7h10z" kind="beam-pointer" />
        </svg>
      </svg>
    </div>
  );
}

function percent(grams: number, span: number): number {
  return span > 0 ? Math.min(100, Math.max(0, (100 * grams) / span)) : 0;
}

/** A path whose origin stands at a share of the beam's length. */
function At({ percent, d, kind }: { percent: number; d: string; kind: string }) {
  return (
    <svg class={kind} x={`${percent}%`} overflow="visible" aria-hidden="true">
      <path d={d} />
    </svg>
  );
}

function Notch({ percent, label, reached }: { percent: number; label: string; reached: boolean }) {
  return (
    <>
      <At
        percent={percent}
        d={reached ? 'M-1 9h2v14h-2z' : 'M-1 5h2v18h-2z'}
        kind={reached ? 'beam-notch reached' : 'beam-notch'}
      />
      <Label percent={percent} under={23} text={label} />
    </>
  );
}

function Bracket({ low, high, place }: { low: number; high: number; place: (grams: number) => number }) {
  return (
    <>
      <rect
        class="beam-bracket"
        x={`${place(low)}%`}
        y="23"
        width={`${place(high) - place(low)}%`}
        height="2"
      />
      <At percent={place(low)} d="M0 19h2v6h-2z" kind="beam-bracket" />
      <At percent={place(high)} d="M-2 19h2v6h-2z" kind="beam-bracket" />
      <Label percent={place(low)} under={25} text={gramsFigure(low)} />
      <Label percent={place(high)} under={25} text={gramsFigure(high)} />
    </>
  );
}

interface LabelProps {
  percent: number;
  text: string;
  /** End of what it stands under, px from the beam's top; above the beam without it. */
  under?: number;
  aim?: boolean;
}

function Label({ percent, text, under, aim }: LabelProps) {
  // On the narrowest beam a letter takes two hundredths of it: a label that would stick out is turned inwards.
  const half = text.length;
  const anchor = percent + half > 101 ? 'end' : percent < half ? 'start' : 'middle';
  return (
    <text
      class={aim ? 'beam-label aim' : 'beam-label'}
      x={`${percent}%`}
      y={under === undefined ? 0 : under + 2}
      dy={under === undefined ? '-0.2em' : '0.75em'}
      text-anchor={anchor}
    >
      {text}
    </text>
  );
}
