import { useState } from 'react';
import type { AskedReading, FitUp, HoldPoint, Trammel } from '../../core/trammel/result.ts';
import { showDifference, showLength } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { holdWords, verdictWords } from '../../present/words/record.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { setEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { markHold, recordFitUp } from '../trammelDeeds.ts';

const whyWords = {
  plan: 'of the plan',
  canMove: 'can have moved',
  wasSpread: 'was spread',
} as const satisfies Record<AskedReading['why'], string>;

const lackWords = {
  gap: 'gap',
  overlap: 'overlap',
  marks: 'sleeve marks centred',
  secondPerson: 'second person',
  secondPersonIsDoer: 'a second person who is not the doer',
} as const satisfies Record<FitUp['lacks'][number], string>;

const stateWords = ({ done, gate, asks }: HoldPoint): string => {
  if (done) return done.reason ? 'done, with a reason' : 'done';
  const taken = asks.filter((a) => a.taken > 0).length;
  if (gate.outside.length > 0) return `${gate.outside.length} outside`;
  return `${taken} of ${asks.length} read`;
};

/** The hold points in the order of the work: what each asks for, and whether it can be marked done. */
export const TrammelHolds = ({ trammel }: { readonly trammel: Trammel }) => {
  if (!trammel.holds) return null;
  return (
    <section className="stack tight" aria-label="Hold points">
      <h2>Hold points</h2>
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
  const closed = [
    ...(gate.outside.length > 0 ? [`outside: ${listWords(gate.outside)}`] : []),
    ...(gate.notRead.length > 0
      ? [gate.notRead.length > 8 ? `${gate.notRead.length} not read` : `not read: ${listWords(gate.notRead)}`]
      : []),
    ...(gate.fitUp.length > 0 ? [`no fit-up of ${listWords(gate.fitUp)}`] : []),
  ];
  return (
    <div className="stack">
      <p className="small">
        {short
          ? 'Asks only for what can have moved.'
          : `The whole truss: ${asks.length} readings, by the measuring plan.`}{' '}
        <button
          type="button"
          className="link"
          onClick={() => setEntry({ hold, line: gate.notRead[0] ?? null, text: '' })}
        >
          Read for this hold
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
                ? 'not read'
                : showDifference(a.differenceIn!.value, units, a.verdict === 'outside')}
              {a.verdict ? `; ${verdictWords[a.verdict]}` : ''}
              <span className="soft"> · {whyWords[a.why]}</span>
            </span>
          </li>
        ))}
      </ul>
      {gate.repeat.length > 0 && (
        <p className="small">
          Cannot tell: repeat {listWords(gate.repeat)} once, or use a better instrument.
        </p>
      )}
      {fitUps.map((fitUp) => (
        <FitUpForm key={fitUp.member} fitUp={fitUp} />
      ))}
      {done ? (
        <div className="row small">
          <span>
            Done, {done.by}
            {done.reason ? `: ${done.reason}` : ''}
          </span>
          <button type="button" onClick={() => markHold(hold, false, '')}>
            Open it again
          </button>
        </div>
      ) : (
        <>
          {closed.length > 0 && (
            <label className="field">
              <span className="caption">
                Cannot be marked done yet: {closed.join('; ')}. Or write why it counts as done:
              </span>
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
            Mark this hold done
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
          Fit-up of {fitUp.member}:{' '}
          {fitUp.lacks.length === 0 ? 'recorded' : `lacks ${listWords(fitUp.lacks.map((l) => lackWords[l]))}`}
        </span>
      </summary>
      <div className="fields">
        <LengthField label="Largest gap" typed={texts.gap} onChange={(gap) => setTexts({ ...texts, gap })} />
        <LengthField
          label="Overlap"
          typed={texts.overlap}
          onChange={(overlap) => setTexts({ ...texts, overlap })}
        />
        <label className="check wide">
          <input type="checkbox" checked={marks} onChange={(e) => setMarks(e.target.checked)} /> Sleeve marks
          centred in the rosette holes
        </label>
        <label className="field wide">
          <span className="caption">Seen by a second person, not the doer</span>
          <input value={texts.second} onChange={(e) => setTexts({ ...texts, second: e.target.value })} />
        </label>
        <button type="button" onClick={send}>
          Record the fit-up
        </button>
      </div>
    </details>
  );
};
