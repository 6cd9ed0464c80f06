import { useEffect, useMemo, useState } from 'react';
import { lookMethods } from '../../core/job/jobSchema.ts';
import type { Exercise } from '../../core/practice/exercise.ts';
import { type LookTaken, looksAllowed, looksTaken } from '../../core/practice/hiddenDamage.ts';
import type { Method } from '../../core/practice/look.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { lookWords, ruleWords, seenWords } from '../../present/words/practice.ts';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { useView } from '../state/view.ts';
import { hiddenText as text } from '../text/practiceHidden.ts';
import { handIn, lookAt, markAgain, writeDown } from './hiddenRun.ts';
import { useProgress } from './progress.ts';
import { RoundMarks } from './RoundMarks.tsx';
import { useSession } from './session.ts';

/** Finding hidden damage: choose a thing, a way of looking and whether the finish comes off; write down what shows. */
export const HiddenRound = ({
  exercise,
  jobKey,
}: {
  readonly exercise: Exercise;
  readonly jobKey: string;
}) => {
  const now = useAnswer((answer) => answer.atOnce);
  const { handedIn, marking } = useSession();
  const looks = useMemo(() => (now ? looksTaken(exercise, now.truss, now.job.records) : []), [exercise, now]);
  const before = useProgress((progress) => jobKey in progress.handedIn);
  const marked = handedIn?.key === jobKey ? handedIn : null;
  useEffect(() => {
    if (before && !marked) void markAgain();
  }, [before, marked]);
  if (!now) return null;
  if (marked) return <RoundMarks handedIn={marked} now={now} />;
  if (before) return <p role="status">{text.marking}</p>;
  const left = Math.max(0, looksAllowed(exercise.truth) - looks.length);
  const { blow } = exercise.truth;
  return (
    <section className="stack" aria-label={text.region}>
      <div className="entry-head">
        <h2>{text.title}</h2>
        <span className="small soft">{text.madeBy(exercise.level, exercise.seed, exercise.hintsLocked)}</span>
      </div>
      {blow && <p className="small">{text.struck(clusterWords(blow.cluster), blow.cluster)}</p>}
      <p className="looks-left">
        <strong>{left}</strong> <span className="soft">{text.looksLeft(looksAllowed(exercise.truth))}</span>
      </p>
      <LookForm now={now} looks={looks} left={left} exercise={exercise} />
      <p className="row">
        <button type="button" className="main" disabled={marking} onClick={() => void handIn()}>
          {marking ? text.beingMarked : text.handIn}
        </button>
        <span className="small soft">{text.written(now.coverage.findings.length)}</span>
      </p>
    </section>
  );
};

const LookForm = ({
  now,
  looks,
  left,
  exercise,
}: {
  readonly now: AtOnce;
  readonly looks: readonly LookTaken[];
  readonly left: number;
  readonly exercise: Exercise;
}) => {
  const selected = useView((view) => view.selected);
  const [method, setMethod] = useState<Method>('eye');
  const [bare, setBare] = useState(false);
  const id = selected.findLast((one) => now.marks.has(one));
  if (id === undefined) return <p className="notice">{text.touch}</p>;
  const member = now.members.get(id);
  const mine = looks.filter((look) => look.of === id);
  return (
    <section className="stack tight" aria-label={text.lookAt(id)}>
      <h3>
        {member ? memberWords(member) : clusterWords(id)} · {id}
      </h3>
      <div className="field">
        <label htmlFor="practice-method">{text.look}</label>
        <select id="practice-method" value={method} onChange={(e) => setMethod(e.target.value as Method)}>
          {lookMethods.map((one) => (
            <option key={one} value={one}>
              {lookWords[one]}
            </option>
          ))}
        </select>
      </div>
      <label className="check">
        <input type="checkbox" checked={bare} onChange={(e) => setBare(e.target.checked)} />
        {text.finishOff}
      </label>
      <p>
        <button
          type="button"
          disabled={left === 0}
          onClick={() => lookAt({ of: id, method, finishRemoved: bare })}
        >
          {text.lookAt(id)}
        </button>
      </p>
      {mine.length > 0 && (
        <ul className="entries" aria-label={text.showed(id)} aria-live="polite">
          {mine.map((look) => (
            <Shown key={look.record} look={look} now={now} hints={!exercise.hintsLocked} />
          ))}
        </ul>
      )}
    </section>
  );
};

const Shown = ({
  look,
  now,
  hints,
}: {
  readonly look: LookTaken;
  readonly now: AtOnce;
  readonly hints: boolean;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const written = (damage: string): boolean =>
    now.coverage.findings.some((f) => f.of === look.of && f.damage === damage);
  return (
    <li>
      <span className="small soft">{text.looked(lookWords[look.method], look.finishRemoved)}</span>
      {look.spent && <span>{text.spent}</span>}
      {!look.spent && look.seen.length === 0 && <span>{text.nothing}</span>}
      {look.seen.map((seen) => (
        <div key={seen.kind === 'damage' ? seen.finding.id : 'band'} className="stack tight">
          <span>{seenWords(seen, units)}</span>
          {hints && <span className="small soft">{ruleWords(seen.by)}</span>}
          {seen.kind === 'damage' && (
            <span>
              <button
                type="button"
                disabled={written(seen.finding.damage)}
                onClick={() => writeDown(seen.finding)}
              >
                {written(seen.finding.damage) ? text.isWritten : text.write}
              </button>
            </span>
          )}
          {seen.kind === 'band' && (
            <span>
              <button
                type="button"
                disabled={written('crack')}
                onClick={() =>
                  writeDown({ kind: 'finding', damage: 'crack', of: look.of } as Parameters<
                    typeof writeDown
                  >[0])
                }
              >
                {written('crack') ? text.isWritten : text.write}
              </button>
            </span>
          )}
        </div>
      ))}
    </li>
  );
};
