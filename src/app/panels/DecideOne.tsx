import { useState } from 'react';
import type { DispositionRow, Missing, Option } from '../../core/disposition/result.ts';
import type { Choice } from '../../core/job/jobSchema.ts';
import { showFigure, showTime } from '../../present/show.ts';
import { choiceWords, damageTags } from '../../present/tags.ts';
import {
  againstWords,
  answerSigns,
  answerWords,
  conditionWords,
  limitOfWords,
  limitVerdictWords,
  missingWay,
  missingWords,
  reasonSentence,
  reasonSource,
  scopeWayOut,
  scopeWords,
  sentence,
} from '../../present/words/disposition.ts';
import { findingPlace, findingSize } from '../../present/words/findings.ts';
import { decide } from '../deeds.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { GlyphMark } from '../parts/TagMark.tsx';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { setView } from '../state/view.ts';
import { OwnData, type OwnTopic } from './OwnData.tsx';

/** One tube or cluster: what was found, what closes the weld, and every way with what the rules say to it. */
export const DecideOne = ({ now, row }: { readonly now: AtOnce; readonly row: DispositionRow }) => (
  <section className="stack" aria-label={`Decide ${row.id}`}>
    <Found now={now} row={row} />
    {row.scope.length > 0 && (
      <div className="notice blocking" role="note">
        <strong>Weld choices closed: {row.scope.map((s) => scopeWords[s]).join('; ')}.</strong>
        <p className="small">{scopeWayOut}</p>
      </div>
    )}
    {row.decided && <Stands now={now} row={row} decided={row.decided} />}
    <section className="stack tight" aria-label="Ways to go on">
      <h3>Ways to go on</h3>
      <p className="small soft">
        What the rules loaded say. Nothing is chosen beforehand: open one to read why, and decide.
      </p>
      <div className="options">
        {row.options.map((option) => (
          <Way key={option.choice} now={now} row={row} option={option} />
        ))}
      </div>
    </section>
    <Limits row={row} />
    <OwnData topics={topicsOf(row)} />
  </section>
);

const Found = ({ now, row }: { readonly now: AtOnce; readonly row: DispositionRow }) => {
  const units = usePrefs((prefs) => prefs.units);
  const findings = now.coverage.findings.filter((f) => row.findings.includes(f.id));
  if (findings.length === 0) return <p className="soft">No finding stands here.</p>;
  return (
    <section className="stack tight" aria-label="Found">
      <h3>Found, judged together</h3>
      <ul className="entries small">
        {findings.map((f) => (
          <li key={f.id}>
            <span className="row">
              <GlyphMark glyph={damageTags[f.damage].glyph} />
              <strong>{damageTags[f.damage].word}</strong>
              {f.of !== row.id && <span className="soft">on {f.of}</span>}
            </span>
            <span>
              {findingSize(f, units)}
              {findingPlace(f, units) === '' ? '' : `; ${findingPlace(f, units)}`}
            </span>
          </li>
        ))}
      </ul>
      {row.room && (
        <div className="figures small">
          {row.room.sides.map(({ cluster, clearIn }) => (
            <FigureLine key={cluster} name={`Sound tube to the weld at ${cluster}`} figure={clearIn} />
          ))}
        </div>
      )}
    </section>
  );
};

const Stands = ({
  now,
  row,
  decided,
}: {
  readonly now: AtOnce;
  readonly row: DispositionRow;
  readonly decided: NonNullable<DispositionRow['decided']>;
}) => {
  const record = now.coverage.decisions.find((d) => d.id === decided.record);
  return (
    <section className={`notice ${decided.against ? 'blocking' : ''}`} aria-label={`Decision on ${row.id}`}>
      <p>
        <strong>{againstWords(decided.choice, decided.answer)}</strong>
      </p>
      <p className="small">
        {record ? `${record.by}, ${showTime(record.at)}. ` : ''}
        {record?.reason
          ? `Reason: ${record.reason}`
          : decided.reasonNeeded
            ? 'No reason is written, and one is needed: decide again with a reason.'
            : 'No reason written.'}
      </p>
    </section>
  );
};

/** Where the missing thing is entered. */
const goEnter = (row: DispositionRow, missing: Missing, now: AtOnce): (() => void) | null => {
  const way = missingWay(missing);
  const of = now.coverage.findings.find((f) => f.id === missing.finding)?.of ?? row.id;
  return way === 'finding' || way === 'look' ? () => setView({ route: 'walkRound', selected: [of] }) : null;
};

const Way = ({
  now,
  row,
  option,
}: {
  readonly now: AtOnce;
  readonly row: DispositionRow;
  readonly option: Option;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const chosen = row.decided?.choice === option.choice;
  return (
    <details className={`option answer-${option.answer}`}>
      <summary>
        <span className="sign" aria-hidden="true">
          {answerSigns[option.answer]}
        </span>
        <span className="option-name">
          {choiceWords[option.choice]}
          {chosen && <span className="small"> · decided</span>}
        </span>
        <span className="small option-answer">{answerWords[option.answer]}</span>
      </summary>
      <div className="option-body stack tight">
        <ul className="why small">
          {option.reasons.map((reason, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one rule may meet several findings
            <li key={`${reason.rule} ${k}`}>
              <span className="sign" aria-hidden="true">
                {answerSigns[reason.says]}
              </span>
              <span>
                {reasonSentence(reason, units)}
                <span className="soft source"> {reasonSource(reason)}</span>
              </span>
            </li>
          ))}
        </ul>
        {option.missing.length > 0 && (
          <div className="small">
            <strong>Still missing</strong>
            <ul className="lacks">
              {option.missing.map((one) => {
                const go = goEnter(row, one, now);
                return (
                  <li key={`${one.name} ${one.finding ?? ''}`}>
                    <span>{sentence(missingWords(one))}</span>
                    {go ? (
                      <button type="button" className="link" onClick={go}>
                        Enter it
                      </button>
                    ) : (
                      <span className="soft">below, as your data</span>
                    )}
                  </li>
                );
              })}
            </ul>
          </div>
        )}
        {option.conditions.length > 0 && (
          <div className="small">
            <strong>Goes with it</strong>
            <ul className="reasons">
              {option.conditions.map((c) => (
                <li key={c}>{conditionWords(c)}</li>
              ))}
            </ul>
          </div>
        )}
        {(option.choice === 'straighten' || option.choice === 'roundOut') && (
          <Cautions step="straightening" />
        )}
        {row.scope.length > 0 && option.answer === 'doesNotApply' && <Cautions step="outsideScope" />}
        <Choose
          ids={[row.id]}
          choice={option.choice}
          reasonNeeded={option.answer !== 'applies'}
          answer={option.answer}
        />
      </div>
    </details>
  );
};

/** The deed itself. Where the rules do not allow it, or cannot say, the form asks for a written reason. */
export const Choose = ({
  ids,
  choice,
  reasonNeeded,
  answer,
}: {
  readonly ids: readonly string[];
  readonly choice: Choice;
  readonly reasonNeeded: boolean;
  readonly answer: Option['answer'];
}) => {
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const who = usePrefs((prefs) => prefs.who);
  const wanting = reasonNeeded && reason.trim() === '';
  return (
    <form
      className="stack tight choose"
      aria-label={`Decide: ${choiceWords[choice]}`}
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (!wanting && decide(ids, choice, reason)) {
          setReason('');
          setAsked(false);
        }
      }}
    >
      <label className="field">
        <span className="caption">
          {reasonNeeded
            ? `Reason (needed: the rules loaded ${answer === 'cannotSay' ? 'cannot say' : 'do not allow it'})`
            : 'Reason'}
        </span>
        <input
          type="text"
          value={reason}
          aria-invalid={asked && wanting}
          onChange={(e) => setReason(e.target.value)}
        />
        {asked && wanting && (
          <span className="error">Write why. It stands in the record beside your name.</span>
        )}
      </label>
      <div className="row">
        <button type="submit" className="main">
          Decide: {choiceWords[choice]}
        </button>
        <span className="small soft">
          as {who.trim() === '' ? '“name not given” (enter it on Start)' : who}
        </span>
      </div>
    </form>
  );
};

const Limits = ({ row }: { readonly row: DispositionRow }) => {
  const units = usePrefs((prefs) => prefs.units);
  if (row.limits.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Sizes against your own limits">
      <h3>Against your own limits</h3>
      <div className="figures">
        {row.limits.map((check) =>
          check.measured ? (
            <FigureLine
              key={`${check.of} ${check.finding}`}
              name={`${sentence(limitOfWords[check.of])}: ${limitVerdictWords[check.verdict]}`}
              figure={check.measured}
              text={`${showFigure(check.measured, units)}${check.limit ? ` of ${showFigure(check.limit, units)}` : ''}`}
            />
          ) : (
            <PlainLine key={`${check.of} ${check.finding}`} name={sentence(limitOfWords[check.of])}>
              not measured
            </PlainLine>
          ),
        )}
      </div>
      <Cautions step="noSource" />
    </section>
  );
};

const topicsOf = ({ id, kind }: DispositionRow): readonly OwnTopic[] => [
  { topic: `straighten-only:${id}`, label: `${id} may be straightened alone`, takes: 'words' },
  { topic: `round-out-only:${id}`, label: `${id} may be rounded out alone`, takes: 'words' },
  ...(['patch', 'splitSleeve', 'splice', 'replace', 'fingerPlate', 'rebuild'] as const).map(
    (choice): OwnTopic => ({
      topic: `allow:${choice}:${id}`,
      label: `${choiceWords[choice]} is allowed on ${id}`,
      takes: 'words',
    }),
  ),
  { topic: `forbid:straighten:${id}`, label: `${id} may not be straightened`, takes: 'words' },
  { topic: `forbid:splice:${id}`, label: `${id} may not be spliced`, takes: 'words' },
  { topic: `scope:${id}`, label: `${id} is heat-treated, brazed, an axle … (in words)`, takes: 'words' },
  ...(kind === 'member'
    ? ([
        { topic: `limit:bow:${id}`, label: `Limit of bow on ${id}`, takes: 'length' },
        { topic: 'limit:bow', label: 'Limit of bow, all tubes, per cent of the chord', takes: 'share' },
        { topic: `limit:ovality:${id}`, label: `Limit of ovality on ${id}, per cent of D`, takes: 'share' },
        { topic: `limit:wallLoss:${id}`, label: `Limit of wall loss on ${id}, per cent`, takes: 'share' },
        {
          topic: `limit:dentDepth:${id}`,
          label: `Limit of dent depth on ${id}, per cent of D`,
          takes: 'share',
        },
        { topic: `patch-overlap:${id}`, label: 'Overlap of a patch (figure 4-36)', takes: 'length' },
      ] as const)
    : []),
];
