import { useEffect, useMemo, useState } from 'react';
import type { Exercise } from '../../core/practice/exercise.ts';
import {
  askedLines,
  pushTo,
  readGap,
  scoreTrammel,
  TRAMMEL_STD_IN,
  truePlaces,
} from '../../core/practice/trammelDrill.ts';
import { heldNow } from '../../core/statics/held.ts';
import { isFrame, prepareFrame } from '../../core/statics/prepareFrame.ts';
import { showLength, showWork } from '../../present/show.ts';
import { countWords } from '../../present/words/names.ts';
import { trammelSkillWords } from '../../present/words/practice.ts';
import { saveReading } from '../deeds.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { Waiting } from '../parts/Waiting.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { change, useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { practiceText } from '../text/practice.ts';
import { trammelMarksText as marksText, trammelRoundText as text } from '../text/practiceTrammel.ts';
import { keepHandedIn, keepResult, useProgress } from './progress.ts';
import { Shares } from './Shares.tsx';
import { setSession, useSession } from './session.ts';

/** A virtual trammel on the exercise's truss: readings and pushes go into the job as real ones do. */
export const TrammelRound = ({ exercise }: { readonly exercise: Exercise }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  if (!now || !all?.trammel.plan) return <Waiting />;
  return <Bench exercise={exercise} now={now} />;
};

const Bench = ({ exercise, now }: { readonly exercise: Exercise; readonly now: AtOnce }) => {
  const units = usePrefs((prefs) => prefs.units);
  const trammel = useAnswer((answer) => answer.assessment?.trammel);
  const key = useJob((job) => job.key);
  const handed = useSession((session) => session.trammel);
  const marks = handed?.key === key ? handed : null;
  const model = now.live.model ?? now.job.model;
  const frame = useMemo(
    () => prepareFrame(now.truss, heldNow(now.truss, model, now.live.held)),
    [now.truss, model, now.live.held],
  );
  const places = useMemo(
    () => truePlaces(exercise, now.truss, frame, now.job.records),
    [exercise, now.truss, frame, now.job.records],
  );
  const lines = askedLines(exercise, now.truss, trammel?.plan?.readings ?? []);
  const taken = now.live.readings;
  const open = lines.filter((line) => !line.read);
  const [pair, setPair] = useState('');
  const [typed, setTyped] = useState('');
  const line = lines.find((one) => one.target === pair) ?? open[0] ?? lines[0];
  const [from, to] = [line?.from, line?.to];
  useEffect(() => {
    setSession({ pair: from !== undefined && to !== undefined ? [from, to] : null });
    return () => setSession({ pair: null });
  }, [from, to]);
  const scoreAt = (handedAt: string) =>
    scoreTrammel(
      exercise,
      now.truss,
      frame,
      now.job.records.filter((r) => r.at <= handedAt),
      trammel?.targets ?? [],
      lines,
    );
  const before = useProgress((progress) => (key === null ? undefined : progress.handedIn[key]));
  const lost = before !== undefined && !marks && trammel !== undefined;
  // handed in before the page was opened afresh: the same records give the same marks
  useEffect(() => {
    if (lost) setSession({ trammel: { key, exercise, score: scoreAt(before) } });
  });
  const target = trammel?.targets.find((one) => one.id === line?.target);
  const entry = readEntry(typed, units, false);
  const last =
    line && taken.findLast((r) => r.ends.every((end) => [line.from, line.to].includes(end.cluster)));
  const spreads = trammel?.spread ?? [];
  const advice = spreads.find((one) => one.target === line?.target);
  if (!line || !trammel) return <p className="empty">{text.nothing}</p>;
  const setIn = entry.kind === 'length' ? entry.valueIn : (target?.targetIn.value ?? line.lengthIn);
  const read = (): void => {
    const { missIn } = readGap(exercise, places, line.from, line.to, setIn, taken.length);
    saveReading({
      ends: [
        { cluster: line.from, mark: 'axis' },
        { cluster: line.to, mark: 'axis' },
      ],
      setAndMiss: { setIn, missIn },
      instrument: 'trammel',
      stdIn: TRAMMEL_STD_IN,
      hold: now.live.progress.some((p) => p.spread) ? 'afterSpreading' : 'beforeCutting',
    });
    setPair(open.find((one) => one.target !== line.target)?.target ?? line.target);
    setTyped('');
  };
  const push = (): void => {
    if (entry.kind !== 'length') return;
    const given = pushTo(exercise, now.truss, frame, places, line, entry.valueIn);
    if (!given) return;
    const round = (v: number): number => Math.round(v * 1e5) / 1e5;
    change(
      {
        kind: 'addProgress',
        progress: {
          step: `spread:${line.from}-${line.to}`,
          done: true,
          spread: {
            from: line.from,
            to: line.to,
            beforeIn: round(given.beforeIn),
            pushedIn: round(given.pushedIn),
            leftIn: round(given.leftIn),
            forceLbf: Math.round(given.forceLbf),
          },
        },
      },
      text.spread(line.from, line.to),
    );
    setTyped('');
  };
  const pushed = now.live.progress.findLast(
    (p) => p.spread?.from === line.from && p.spread.to === line.to,
  )?.spread;
  const markIt = (): void => {
    const at = new Date().toISOString();
    const score = scoreAt(at);
    setSession({ trammel: { key, exercise, score } });
    if (key !== null) keepHandedIn(key, at);
    keepResult({
      at,
      who: usePrefs.getState().who,
      kind: 'trammel',
      what: practiceText.what(model.name, exercise.seed),
      level: exercise.level,
      exam: exercise.hintsLocked,
      shares: Object.fromEntries(
        Object.entries(score.shares).map(([skill, share]) => [
          trammelSkillWords[skill as keyof typeof trammelSkillWords],
          share,
        ]),
      ),
    });
  };
  return (
    <section className="stack" aria-label={text.region}>
      <div className="entry-head">
        <h2>{text.title}</h2>
        <span className="small soft">{text.read(lines.length - open.length, lines.length)}</span>
      </div>
      <div className="field">
        <label htmlFor="practice-pair">{text.pair}</label>
        <select id="practice-pair" value={line.target} onChange={(e) => setPair(e.target.value)}>
          {lines.map((one) => (
            <option key={one.target} value={one.target}>
              {text.pairRow(one.from, one.to, one.read)}
            </option>
          ))}
        </select>
      </div>
      <LengthField
        label={text.set}
        hint={text.setHint(showLength(target?.targetIn.value ?? line.lengthIn, units))}
        typed={typed}
        onChange={setTyped}
      />
      <p className="row">
        <button type="button" className="main" onClick={read}>
          {text.readGap}
        </button>
        <button type="button" disabled={entry.kind !== 'length' || !isFrame(frame)} onClick={push}>
          {text.push}
        </button>
      </p>
      <p className="small" role="status">
        {last?.setAndMiss
          ? text.lastRead(
              showLength(last.setAndMiss.setIn, units),
              Math.abs(last.setAndMiss.missIn) < 1e-9
                ? text.onMark
                : text.offMark(
                    showLength(Math.abs(last.setAndMiss.missIn), units, 64),
                    last.setAndMiss.missIn > 0,
                  ),
            )
          : text.notRead}
        {pushed ? text.pushed(showLength(pushed.pushedIn, units), pushed.forceLbf ?? 0) : ''}
      </p>
      {!exercise.hintsLocked && advice && (
        <p className="notice small">
          {text.advice(
            advice.action,
            showWork(Math.abs(advice.amountIn.value), units),
            advice.set ? showLength(advice.set.pushToIn.value, units) : null,
          )}
        </p>
      )}
      <p>
        <button type="button" onClick={markIt}>
          {text.handIn}
        </button>
      </p>
      {marks && (
        <section className="stack tight" aria-label={marksText.region}>
          <Shares
            shares={Object.fromEntries(
              Object.entries(marks.score.shares).map(([skill, share]) => [
                trammelSkillWords[skill as keyof typeof trammelSkillWords],
                share,
              ]),
            )}
          />
          <p className="small">
            {marksText.readings(countWords(marks.score.readings, 'reading'), marks.score.planned)}
            {marks.score.worst
              ? marksText.worst(
                  marks.score.worst.target,
                  showWork(Math.abs(marks.score.worst.offIn), units),
                  marks.score.worst.offIn > 0,
                )
              : ''}
          </p>
          {marks.score.pairs.map((p) => (
            <p key={`${p.from} ${p.to} ${p.wasIn}`} className="small">
              {marksText.pair({
                ...{ from: p.from, to: p.to, helped: p.helped, readAgain: p.readAgain },
                was: showWork(Math.abs(p.wasIn), units),
                is: showWork(Math.abs(p.isIn), units),
              })}
            </p>
          ))}
        </section>
      )}
      <p className="small soft">{text.springs}</p>
    </section>
  );
};
