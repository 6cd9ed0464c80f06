import { type FormEvent, useState } from 'react';
import type { StraightenRow } from '../../core/straighten/result.ts';
import type { Member } from '../../core/truss/result.ts';
import { axisDrawing } from '../../present/draw/axis.ts';
import { showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { noFitWords, shapeWords } from '../../present/words/straighten.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { logStraightEdge } from '../shopDeeds.ts';
import { usePrefs } from '../state/prefs.ts';
import { axisText } from '../text/straighten.ts';
import { ClockSelect } from './ClockSelect.tsx';

/** Where the axis of one tube lies by the readings, and the form for another laying of the straight edge. */
export const StraightenAxis = ({ row, member }: { readonly row: StraightenRow; readonly member: Member }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { fit } = row;
  return (
    <section className="stack tight" aria-label={axisText.title}>
      <h3>{axisText.title}</h3>
      {fit ? (
        <>
          <div className="axis-drawing">
            <Drawing
              drawing={axisDrawing(fit, member.lengthIn, [member.from, member.to], units)}
              title={axisText.drawing(
                row.member,
                showLength(fit.bowIn.value, units, 64),
                showLength(fit.atIn.value, units),
                member.from,
              )}
            />
          </div>
          <div className="figures">
            <FigureLine name={axisText.greatest} figure={fit.bowIn} />
            <FigureLine name={axisText.pushHere(member.from)} figure={fit.atIn} />
            <PlainLine name={axisText.crown}>{clockText(fit.clock)}</PlainLine>
            <PlainLine name={axisText.shape}>{shapeWords[fit.shape]}</PlainLine>
            <PlainLine name={axisText.over}>{showLength(fit.chordIn, units)}</PlainLine>
            <FigureLine name={axisText.turns} figure={fit.turnRad} />
            <PlainLine name={axisText.read}>
              {fit.allRound ? axisText.allRound : axisText.notAllRound}
            </PlainLine>
          </div>
        </>
      ) : (
        <p className="soft">{noFitWords[row.noFit ?? 'no-readings']}</p>
      )}
      <StraightEdgeForm member={row.member} from={member.from} />
    </section>
  );
};

const LEAST_ROWS = 5;

/** One laying of the straight edge: the side it lies on, and the gap at each station. */
const StraightEdgeForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
  const lengths = useLengths<`${'x' | 'gap'}${number}`>();
  const [rows, setRows] = useState(LEAST_ROWS);
  const [clock, setClock] = useState('');
  const [said, setSaid] = useState('');
  const read = Array.from({ length: rows }, (_, k) => ({
    x: lengths.value(`x${k}`),
    gap: lengths.value(`gap${k}`, true),
  }));
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const whole = read.flatMap(({ x, gap }) => (x !== undefined && gap !== undefined ? [{ x, gap }] : []));
    const half = read.some(({ x, gap }) => (x === undefined) !== (gap === undefined));
    if (clock === '') {
      setSaid(axisText.sideWanted);
      return;
    }
    if (half) {
      setSaid(axisText.half);
      return;
    }
    if (whole.length < 4) {
      setSaid(axisText.tooFew);
      return;
    }
    const sent = logStraightEdge(member, {
      stationsIn: whole.map(({ x }) => x),
      offsetsIn: whole.map(({ gap }) => gap),
      clock: Number(clock),
    });
    if (!sent) return;
    lengths.clear();
    setClock('');
    setSaid('');
  };
  return (
    <details>
      <summary>{axisText.enter}</summary>
      <form className="stack tight" onSubmit={send} aria-label={axisText.form(member)}>
        <p className="small soft">{axisText.lead(from)}</p>
        <ClockSelect label={axisText.edgeAt} value={clock} onChange={setClock} />
        <ul className="reading-rows">
          {read.map((_, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their number
            <li key={k}>
              <span className="row-no small">{k + 1}</span>
              <LengthField label={axisText.place(from)} {...lengths.field(`x${k}`)} />
              <LengthField label={axisText.gap} signed {...lengths.field(`gap${k}`)} />
            </li>
          ))}
        </ul>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <div className="row">
          <button type="button" onClick={() => setRows(rows + 1)}>
            {axisText.more}
          </button>
          <button type="submit" className="main">
            {axisText.record}
          </button>
        </div>
      </form>
    </details>
  );
};
