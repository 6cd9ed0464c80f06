import { useState } from 'react';
import type { Spread, Trammel } from '../../core/trammel/result.ts';
import { showFigure, showLength, showWork, whole } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { holdWords, verdictWords } from '../../present/words/record.ts';
import { swingWords } from '../../present/words/swing.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { setEntry, useEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll } from '../state/view.ts';
import { recordSpread } from '../trammelDeeds.ts';

const SHOWN = 3;

/** What to spread or draw in, in the order of the work, as a hold or as a set. */
export const TrammelSpread = ({ trammel }: { readonly trammel: Trammel }) => {
  const job = useEntry((entry) => entry.job);
  const [all, setAll] = useState(false);
  const list = trammel.spread ?? [];
  if (trammel.latest === undefined) return null;
  return (
    <section className="stack tight" aria-label="To spread or draw">
      <h2>To spread or draw in</h2>
      <p className="small soft">From the shape read {holdWords[trammel.latest]}.</p>
      {list.length === 0 ? (
        <p className="small">The readings show nothing outside a limit or beyond their own uncertainty.</p>
      ) : (
        <>
          <Cautions step="spreading" />
          <fieldset className="halves" aria-label="Which job">
            <button type="button" aria-pressed={job === 'hold'} onClick={() => setEntry({ job: 'hold' })}>
              Hold until tacked
            </button>
            <button type="button" aria-pressed={job === 'set'} onClick={() => setEntry({ job: 'set' })}>
              Set and let go
            </button>
          </fieldset>
          <p className="small">
            {job === 'hold'
              ? 'The spreader stays in until the tubes are tacked: set to the target, no further.'
              : 'Pushed or pulled past the target, let go, and read again: a little at a time.'}
          </p>
          <ol className="entries">
            {(all ? list : list.slice(0, SHOWN)).map((one) => (
              <SpreadEntry key={one.target} one={one} job={job} />
            ))}
          </ol>
          {list.length > SHOWN && (
            <button type="button" className="link" onClick={() => setAll(!all)}>
              {all ? 'Show the first only' : `Show all ${list.length}`}
            </button>
          )}
        </>
      )}
    </section>
  );
};

const SpreadEntry = ({ one, job }: { readonly one: Spread; readonly job: 'hold' | 'set' }) => {
  const units = usePrefs((prefs) => prefs.units);
  const force = one.forceLbf && Math.abs(one.forceLbf.value);
  const yields = one.set?.yields;
  const tooMuch = force !== undefined && yields !== undefined && force > yields.forceLbf.value;
  const amount = showWork(Math.abs(one.amountIn.value), units);
  return (
    <li>
      <div className="entry-head">
        <button type="button" className="link" onClick={() => selectAll([one.from, one.to])}>
          {one.order === undefined ? '' : `${one.order}. `}
          {one.target}
        </button>
        <strong>
          <span aria-hidden="true">{one.action === 'spread' ? '← → ' : '→ ← '}</span>
          {one.action === 'spread' ? 'Spread' : 'Draw in'} {amount}
        </strong>
      </div>
      <span className="small soft">
        Stands {amount} {one.stands}; {verdictWords[one.verdict]}.
      </span>
      {one.settledBy && (
        <span className="small">
          {one.settledBy} brings it within its uncertainty: do that first, then read this again.
        </span>
      )}
      <div className="figures">
        <FigureLine name="Found, adjusted" figure={one.foundIn} />
        {job === 'hold' ? (
          <>
            <PlainLine name="Set the spreader to">
              {showLength(one.foundIn.value + one.amountIn.value, units, 64)}
            </PlainLine>
            {one.forceLbf && (
              <FigureLine
                name="Force, estimate"
                figure={one.forceLbf}
                text={`about ${whole(Math.abs(one.forceLbf.value))} lbf`}
              />
            )}
            {one.hold && (
              <FigureLine
                name="Comes back when it is out"
                figure={one.hold.comesBackIn}
                text={
                  one.hold.tacks.length === 0
                    ? `all of it: no tube is open`
                    : showLength(one.hold.comesBackIn.value, units, 64)
                }
              />
            )}
            {one.hold?.tacks.map(({ member, axialLbf }) => (
              <FigureLine
                key={member}
                name={`Then on the tacks of ${member}`}
                figure={axialLbf}
                text={`${whole(Math.abs(axialLbf.value))} lbf ${axialLbf.value < 0 ? 'compression' : 'tension'}`}
              />
            ))}
          </>
        ) : (
          <>
            {one.set ? (
              <>
                <FigureLine
                  name={one.action === 'spread' ? 'Push to' : 'Pull to'}
                  figure={one.set.pushToIn}
                  text={showLength(one.set.pushToIn.value, units, 64)}
                />
                <FigureLine
                  name="Springs back"
                  figure={one.set.springIn}
                  text={showLength(one.set.springIn.value, units, 64)}
                />
              </>
            ) : (
              <PlainLine name="Push to">not known: say how the truss is held</PlainLine>
            )}
            {yields && (
              <FigureLine
                name={`First to yield: ${yields.member}`}
                figure={yields.forceLbf}
                text={`about ${whole(yields.forceLbf.value)} lbf`}
              />
            )}
          </>
        )}
      </div>
      {tooMuch && (
        <p className="notice small">
          {yields!.member} would yield first, at about {whole(yields!.forceLbf.value)} lbf. Relieve or open
          the tube that holds it before a push this hard.
        </p>
      )}
      {one.changes && one.changes.length > 0 && (
        <span className="small">
          Also changes{' '}
          {listWords(
            one.changes
              .slice(0, 4)
              .map(
                ({ target, changeIn }) =>
                  `${target} ${showWork(Math.abs(changeIn), units)} ${changeIn < 0 ? 'shorter' : 'longer'}`,
              ),
          )}
          .
        </span>
      )}
      {job === 'set' && <Pushed one={one} />}
    </li>
  );
};

/** One push as it went: how far, and what stayed. The next over-travel follows it. */
const Pushed = ({ one }: { readonly one: Spread }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [texts, setTexts] = useState({ pushed: '', left: '' });
  const [wanted, setWanted] = useState(false);
  const asked = wanted ? 'Enter a length' : undefined;
  const send = (): void => {
    const [pushed, left] = [readEntry(texts.pushed, units, false), readEntry(texts.left, units, false)];
    if (pushed.kind !== 'length' || left.kind !== 'length') {
      setWanted(true);
      return;
    }
    const saved = recordSpread({
      from: one.from,
      to: one.to,
      beforeIn: one.foundIn.value,
      pushedIn: pushed.valueIn,
      leftIn: left.valueIn,
    });
    if (saved) setTexts({ pushed: '', left: '' });
    setWanted(false);
  };
  return (
    <details>
      <summary>Record a push here</summary>
      <div className="fields">
        <LengthField
          label="Held at"
          typed={texts.pushed}
          wanted={asked}
          onChange={(pushed) => setTexts({ ...texts, pushed })}
        />
        <LengthField
          label="After letting go"
          typed={texts.left}
          wanted={asked}
          onChange={(left) => setTexts({ ...texts, left })}
        />
        <button type="button" onClick={send}>
          Record the push
        </button>
      </div>
    </details>
  );
};

/** How each bay read sits against the drawing, in the trade's words. */
export const BaySwings = ({ trammel }: { readonly trammel: Trammel }) => {
  const units = usePrefs((prefs) => prefs.units);
  const swing = trammel.swing ?? [];
  if (swing.length === 0) return null;
  const told = swing.filter((s) => s.unknown.length > 0 || s.shown.length > 0);
  return (
    <section className="stack tight" aria-label="How the bays sit">
      <h2>How the bays sit</h2>
      {told.length === 0 && <p className="small">As drawn, as far as the readings show.</p>}
      <div className="figures">
        {told.map((s) => (
          <details key={s.bay} className="figure">
            <summary>
              <span>Bay {s.bay}</span>
              <span className={s.unknown.length > 0 ? 'small soft' : 'value'}>{swingWords(s, units)}</span>
            </summary>
            <div className="basis">
              <p>Aft ring against forward ring; ± one standard deviation.</p>
              {s.figures && (
                <>
                  <p>Aft end low: {showFigure(s.figures.sagIn, units)}</p>
                  <p>Aft end to the right: {showFigure(s.figures.sweepIn, units)}</p>
                  <p>Right side up: {showFigure(s.figures.twistRad, units)}</p>
                  {s.figures.narrowedIn && <p>Narrower: {showFigure(s.figures.narrowedIn, units)}</p>}
                  <p>Shorter: {showFigure(s.figures.shortenedIn, units)}</p>
                </>
              )}
            </div>
          </details>
        ))}
      </div>
    </section>
  );
};
