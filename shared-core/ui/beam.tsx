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
        <rect class="beam-line" x="0" y="21" width="100%" height="2" />
        <rect class="beam-line" x="100%" y="17" width="2" height="10" transform="translate(-2 0)" />
        <rect class="beam-fill" x="0" y="17.5" height="9" style={{ width: `${place(beam.eatenG)}%` }} />
        {beam.eatenG > beam.spanG && <At percent={100} d="M0 17l7 5l-7 5z" kind="beam-over" />}
        {beam.notches.map((notch) => (
          <Notch key={notch.label} percent={place(notch.atG)} label={notch.label} reached={notch.reached} />
        ))}
        {beam.bracket && <Bracket low={beam.bracket.lowG} high={beam.bracket.highG} place={place} />}
        {beam.post && (
          <>
            <At percent={place(beam.post.atG)} d="M-1 12h2v21h5v2h-12v-2h5z" kind="beam-post" />
            <Label
              percent={place(beam.post.atG)}
              y={47}
              text={`${beam.post.label} ${gramsFigure(beam.post.atG)}`}
            />
          </>
        )}
        <At percent={place(beam.pointer.atG)} d="M0 17l-5-7h10z" kind="beam-pointer" />
        <Label
          percent={place(beam.pointer.atG)}
          y={8}
          text={`${beam.pointer.label} ${gramsFigure(beam.pointer.atG)}`}
          aim
        />
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
        d={reached ? 'M-1 17h2v14h-2z' : 'M-1 13h2v18h-2z'}
        kind={reached ? 'beam-notch reached' : 'beam-notch'}
      />
      <Label percent={percent} y={42} text={label} />
    </>
  );
}

function Bracket({ low, high, place }: { low: number; high: number; place: (grams: number) => number }) {
  return (
    <>
      <rect
        class="beam-bracket"
        x={`${place(low)}%`}
        y="31"
        width={`${place(high) - place(low)}%`}
        height="2"
      />
      <At percent={place(low)} d="M0 27h2v6h-2z" kind="beam-bracket" />
      <At percent={place(high)} d="M-2 27h2v6h-2z" kind="beam-bracket" />
      <Label percent={place(low)} y={46} text={gramsFigure(low)} />
      <Label percent={place(high)} y={46} text={gramsFigure(high)} />
    </>
  );
}

function Label({ percent, y, text, aim }: { percent: number; y: number; text: string; aim?: boolean }) {
  // On the narrowest beam a letter takes two hundredths of it: a label that would stick out is turned inwards.
  const half = text.length;
  const anchor = percent + half > 101 ? 'end' : percent < half ? 'start' : 'middle';
  return (
    <text class={aim ? 'beam-label aim' : 'beam-label'} x={`${percent}%`} y={y} text-anchor={anchor}>
      {text}
    </text>
  );
}
