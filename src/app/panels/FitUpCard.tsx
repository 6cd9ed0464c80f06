import { useState } from 'react';
import type { RecordOf } from '../../core/job/jobSchema.ts';
import type { Design, FitUp, SpliceRow } from '../../core/splice/result.ts';
import { showFigure, showTime } from '../../present/show.ts';
import { endsOf } from '../../present/tables/splices.ts';
import { fitUpStep } from '../../present/words/fitUp.ts';
import { fitUpWords, partWords } from '../../present/words/splice.ts';
import { removeRecord } from '../deeds.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { closeFitUp, tickFitUp } from '../shopDeeds.ts';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { fitUpText } from '../text/splice.ts';

type Progress = RecordOf<'progress'>;

/** What is looked at before the first tack, ticked one by one; the last by a second person. */
export const FitUpCard = ({
  now,
  row,
  design,
}: {
  readonly now: AtOnce;
  readonly row: SpliceRow;
  readonly design: Design;
}) => {
  const rows = design.plan?.fitUp ?? [];
  const ticks = rows.map((one) => {
    const step = fitUpStep(row.member, design.method, one);
    return now.live.progress.findLast((p) => p.step === step && p.done);
  });
  const open = rows.filter((one, k) => one.step !== 'secondPerson' && !ticks[k]).length;
  const closed = now.live.progress.findLast((p) => p.step === `fitUp:${row.member}` && p.done);
  return (
    <section className="stack tight" aria-label={fitUpText.title}>
      <h3>{fitUpText.title}</h3>
      <p className="small soft">
        {fitUpText.lead} {open === 0 ? fitUpText.allTicked : fitUpText.toTick(open)}
      </p>
      <ul className="tick-list">
        {rows.map((one, k) =>
          one.step === 'secondPerson' ? null : (
            <Row
              key={`${one.step} ${one.part ?? ''}`}
              row={row}
              design={design}
              fitUp={one}
              tick={ticks[k]}
            />
          ),
        )}
      </ul>
      <Closing row={row} open={open} closed={closed} doers={ticks.flatMap((t) => (t ? [t.by] : []))} />
    </section>
  );
};

const Row = ({
  row,
  design,
  fitUp,
  tick,
}: {
  readonly row: SpliceRow;
  readonly design: Design;
  readonly fitUp: FitUp;
  readonly tick: Progress | undefined;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const [seen, setSeen] = useState('');
  const proof = fitUp.step === 'proof';
  const wanting = proof && seen.trim() === '';
  const name =
    fitUp.part === undefined
      ? fitUpWords[fitUp.step]
      : fitUpText.row(partWords(fitUp.part, endsOf(row)), fitUpWords[fitUp.step]);
  return (
    <li>
      <label className="check">
        <input
          type="checkbox"
          checked={tick !== undefined}
          disabled={tick === undefined && wanting}
          onChange={() =>
            tick
              ? removeRecord(tick.id, fitUpText.tickOff(row.member))
              : tickFitUp(fitUpStep(row.member, design.method, fitUp), row.member, seen)
          }
        />
        <span>
          {name}
          {fitUp.value ? <strong> {showFigure(fitUp.value, units)}</strong> : null}
        </span>
      </label>
      {tick ? (
        <span className="small soft">
          {tick.by}, {showTime(tick.at)}
          {tick.reason ? `; ${tick.reason}` : ''}
        </span>
      ) : (
        proof && (
          <label className="field">
            <span className="caption">{fitUpText.proof}</span>
            <input type="text" value={seen} onChange={(e) => setSeen(e.target.value)} />
          </label>
        )
      )}
    </li>
  );
};

const Closing = ({
  row,
  open,
  closed,
  doers,
}: {
  readonly row: SpliceRow;
  readonly open: number;
  readonly closed: Progress | undefined;
  readonly doers: readonly string[];
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const who = usePrefs((prefs) => prefs.who);
  const lengths = useLengths<'gap' | 'overlap'>();
  const [marks, setMarks] = useState(false);
  const [second, setSecond] = useState('');
  const name = second.trim().toLowerCase();
  const isDoer = name !== '' && [who, ...doers].some((doer) => doer.trim().toLowerCase() === name);
  const [gapIn, overlapIn] = [lengths.value('gap'), lengths.value('overlap')];
  const ready =
    open === 0 && marks && name !== '' && !isDoer && gapIn !== undefined && overlapIn !== undefined;
  return (
    <form
      className="stack tight choose"
      aria-label={fitUpText.close(row.member)}
      onSubmit={(event) => {
        event.preventDefault();
        if (!ready) return;
        if (closeFitUp(row.member, { gapIn, overlapIn, marksCentred: marks, secondPerson: second.trim() })) {
          lengths.clear();
          setMarks(false);
          setSecond('');
        }
      }}
    >
      <h4>{fitUpWords.secondPerson}</h4>
      {closed?.fitUp && (
        <p className="small">
          {fitUpText.seenBy(
            closed.fitUp.secondPerson,
            showTime(closed.at),
            closed.fitUp.gapIn === undefined
              ? null
              : showFigure(
                  {
                    value: closed.fitUp.gapIn,
                    unit: 'in',
                    basis: { kind: 'measured', ref: closed.id },
                    assumed: [],
                  },
                  units,
                ),
          )}
        </p>
      )}
      <div className="fields">
        <LengthField label={fitUpText.gap} {...lengths.field('gap')} />
        <LengthField label={fitUpText.overlap} {...lengths.field('overlap')} />
        <label className="field">
          <span className="caption">{fitUpText.second}</span>
          <input
            type="text"
            value={second}
            aria-invalid={isDoer}
            onChange={(e) => setSecond(e.target.value)}
          />
          {isDoer && <span className="error">{fitUpText.notDoer}</span>}
        </label>
      </div>
      <label className="check">
        <input type="checkbox" checked={marks} onChange={(e) => setMarks(e.target.checked)} />
        {fitUpText.marks}
      </label>
      <button type="submit" className="main" disabled={!ready}>
        {open > 0 ? fitUpText.closedUntil(open) : fitUpText.record}
      </button>
    </form>
  );
};
