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
  if (before) return <p role="status">Handed in; the marks are worked out again …</p>;
  const left = Math.max(0, looksAllowed(exercise.truth) - looks.length);
  const { blow } = exercise.truth;
  return (
    <section className="stack" aria-label="Hidden damage">
      <div className="entry-head">
        <h2>Hidden damage</h2>
        <span className="small soft">
          level {exercise.level} · seed {exercise.seed}
          {exercise.hintsLocked ? ' · exam' : ''}
        </span>
      </div>
      {blow && (
        <p className="small">
          Struck at {clusterWords(blow.cluster).toLowerCase()} ({blow.cluster}). Start there and go where the
          load went; "Load path" lists where.
        </p>
      )}
      <p className="looks-left">
        <strong>{left}</strong> <span className="soft">of {looksAllowed(exercise.truth)} looks left</span>
      </p>
      <LookForm now={now} looks={looks} left={left} exercise={exercise} />
      <p className="row">
        <button type="button" className="main" disabled={marking} onClick={() => void handIn()}>
          {marking ? 'Being marked …' : 'Hand in'}
        </button>
        <span className="small soft">{now.coverage.findings.length} written down</span>
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
  if (id === undefined)
    return <p className="notice">Touch a tube or a cluster in the picture: that is what you look at.</p>;
  const member = now.members.get(id);
  const mine = looks.filter((look) => look.of === id);
  return (
    <section className="stack tight" aria-label={`Look at ${id}`}>
      <h3>
        {member ? memberWords(member) : clusterWords(id)} · {id}
      </h3>
      <div className="field">
        <label htmlFor="practice-method">Look</label>
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
        Take the finish off here first
      </label>
      <p>
        <button
          type="button"
          disabled={left === 0}
          onClick={() => lookAt({ of: id, method, finishRemoved: bare })}
        >
          Look at {id}
        </button>
      </p>
      {mine.length > 0 && (
        <ul className="entries" aria-label={`What looking at ${id} showed`} aria-live="polite">
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
      <span className="small soft">
        {lookWords[look.method]}
        {look.finishRemoved ? ', finish off' : ''}
      </span>
      {look.spent && <span>No looks were left.</span>}
      {!look.spent && look.seen.length === 0 && <span>Nothing shows.</span>}
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
                {written(seen.finding.damage) ? 'Written down' : 'Write it down'}
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
                {written('crack') ? 'Written down' : 'Write it down'}
              </button>
            </span>
          )}
        </div>
      ))}
    </li>
  );
};
