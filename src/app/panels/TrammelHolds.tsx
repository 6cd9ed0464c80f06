import { useState } from 'react';
import type { FitUp, HoldPoint, Trammel } from '../../core/trammel/result.ts';
import { showDifference, showLength } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { holdWords, verdictWords } from '../../present/words/record.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { setEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { fitUpText, holdsText, holdText } from '../text/trammelHolds.ts';
import { markHold, recordFitUp } from '../trammelDeeds.ts';

const stateWords = ({ done, gate, asks }: HoldPoint): string => {
  if (done) return holdsText.done(Boolean(done.reason));
  const taken = asks.filter((a) => a.taken > 0).length;
  if (gate.outside.length > 0) return holdsText.outside(gate.outside.length);
  return holdsText.taken(taken, asks.length);
};

/** The hold points in the order of the work: what each asks for, and whether it can be marked done. */
export const TrammelHolds = ({ trammel }: { readonly trammel: Trammel }) => {
  if (!trammel.holds) return null;
  return (
    <section className="stack tight" aria-label={holdsText.title}>
      <h2>{holdsText.title}</h2>
      {trammel.holds.map((point) => (
        <details key={point.hold}>
          <summary>
            <span>
              <strong>{holdWords[point.hold]}</strong> · {stateWords(point)}
            </span>
          </summary>
          <Point point={point} />
        </details>
      ))}
    </section>
  );
};

const Point = ({ point }: { readonly point: HoldPoint }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [reason, setReason] = useState('');
  const { gate, done, asks, fitUps, hold } = point;
  const short = point.covers === 'whatCanMove';
  const shown = short ? asks : asks.filter((a) => a.verdict === 'outside' || a.verdict === 'cannotTell');
  const by = holdText.closedBy;
  const closed = [
    ...(gate.outside.length > 0 ? [by.outside(listWords(gate.outside))] : []),
    ...(gate.notRead.length > 0
      ? [gate.notRead.length > 8 ? by.manyNotRead(gate.notRead.length) : by.notRead(listWords(gate.notRead))]
      : []),
    ...(gate.fitUp.length > 0 ? [by.noFitUp(listWords(gate.fitUp))] : []),
  ];
  return (
    <div className="stack">
      <p className="small">
        {short ? holdText.whatCanMove : holdText.wholeTruss(asks.length)}{' '}
        <button
          type="button"
          className="link"
          onClick={() => setEntry({ hold, line: gate.notRead[0] ?? null, text: '' })}
        >
          {holdText.read}
        </button>
      </p>
      <ul className="entries small">
        {shown.map((a) => (
          <li key={a.target}>
            <div className="entry-head">
              <button
                type="button"
                className="link"
                onClick={() => setEntry({ hold, line: a.target, text: '' })}
              >
                {a.target}
              </button>
              <span>{showLength(a.aimIn.value, units, 64)}</span>
            </div>
            <span>
              {a.taken === 0
                ? holdText.notRead
                : showDifference(a.differenceIn!.value, units, a.verdict === 'outside')}
              {a.verdict ? `; ${verdictWords[a.verdict]}` : ''}
              <span className="soft"> · {holdsText.why[a.why]}</span>
            </span>
          </li>
        ))}
      </ul>
      {gate.repeat.length > 0 && <p className="small">{holdText.repeat(listWords(gate.repeat))}</p>}
      {fitUps.map((fitUp) => (
        <FitUpForm key={fitUp.member} fitUp={fitUp} />
      ))}
      {done ? (
        <div className="row small">
          <span>{holdText.wasDone(done.by, done.reason)}</span>
          <button type="button" onClick={() => markHold(hold, false, '')}>
            {holdText.openAgain}
          </button>
        </div>
      ) : (
        <>
          {closed.length > 0 && (
            <label className="field">
              <span className="caption">{holdText.closed(closed)}</span>
              <input value={reason} onChange={(e) => setReason(e.target.value)} />
            </label>
          )}
          <button
            type="button"
            className="main"
            disabled={!gate.opens && reason.trim() === ''}
            onClick={() => {
              if (markHold(hold, true, gate.opens ? '' : reason)) setReason('');
            }}
          >
            {holdText.markDone}
          </button>
        </>
      )}
    </div>
  );
};

/** The joint as it fits before it is tacked: it cannot be seen afterwards. */
const FitUpForm = ({ fitUp }: { readonly fitUp: FitUp }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [texts, setTexts] = useState({ gap: '', overlap: '', second: '' });
  const [marks, setMarks] = useState(false);
  const send = (): void => {
    const [gap, overlap] = [readEntry(texts.gap, units, false), readEntry(texts.overlap, units, false)];
    recordFitUp(fitUp.member, {
      ...(gap.kind === 'length' ? { gapIn: gap.valueIn } : {}),
      ...(overlap.kind === 'length' ? { overlapIn: overlap.valueIn } : {}),
      marksCentred: marks,
      ...(texts.second.trim() === '' ? {} : { secondPerson: texts.second.trim() }),
    });
  };
  return (
    <details>
      <summary>
        <span>
          {fitUp.lacks.length === 0
            ? fitUpText.recorded(fitUp.member)
            : fitUpText.lacks(fitUp.member, listWords(fitUp.lacks.map((l) => fitUpText.lack[l])))}
        </span>
      </summary>
      <div className="fields">
        <LengthField
          label={fitUpText.gap}
          typed={texts.gap}
          onChange={(gap) => setTexts({ ...texts, gap })}
        />
        <LengthField
          label={fitUpText.overlap}
          typed={texts.overlap}
          onChange={(overlap) => setTexts({ ...texts, overlap })}
        />
        <label className="check wide">
          <input type="checkbox" checked={marks} onChange={(e) => setMarks(e.target.checked)} />{' '}
          {fitUpText.marks}
        </label>
        <label className="field wide">
          <span className="caption">{fitUpText.second}</span>
          <input value={texts.second} onChange={(e) => setTexts({ ...texts, second: e.target.value })} />
        </label>
        <button type="button" onClick={send}>
          {fitUpText.record}
        </button>
      </div>
    </details>
  );
};
