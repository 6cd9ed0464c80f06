import { useState } from 'react';
import type { StraightenRow } from '../../core/straighten/result.ts';
import type { Member } from '../../core/truss/result.ts';
import { axisDrawing } from '../../present/draw/axis.ts';
import { showFigure, showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { choiceWords } from '../../present/tags.ts';
import { memberWords } from '../../present/words/names.ts';
import {
  checkVerdictWords,
  checkWords,
  noFitWords,
  pushSaysWords,
  saysLine,
  shapeWords,
  stepCautions,
  stopWords,
  straightenCautions,
} from '../../present/words/straighten.ts';
import { removeRecord } from '../deeds.ts';
import { Cautions } from '../parts/Caution.tsx';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { acceptStraightened } from '../shopDeeds.ts';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll, setView, useView } from '../state/view.ts';
import { OwnData, type OwnTopic } from './OwnData.tsx';
import { SetUpCard } from './SetUpCard.tsx';
import { InspectedForm, PushForm, RoundnessForm, StraightEdgeForm } from './StraightenForms.tsx';

/** Straightening of one tube: where its axis lies, where to push and how far, the log, and what must still be checked. */
export const StraightenPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!all || !now) return <Waiting />;
  const rows = all.straighten.members;
  const row = [...selected]
    .reverse()
    .map((id) => rows.find(({ member }) => member === id))
    .find((one) => one !== undefined);
  const member = row && now.members.get(row.member);
  return (
    <div className="stack">
      {row && member ? (
        <One key={row.member} now={now} row={row} member={member} />
      ) : (
        <Choose now={now} rows={rows} />
      )}
      <Issues issues={all.straighten.issues} />
    </div>
  );
};

const isChosen = (now: AtOnce, id: string): boolean => {
  const choice = now.marks.get(id)?.choice;
  return choice === 'straighten' || choice === 'roundOut';
};

const Choose = ({ now, rows }: { readonly now: AtOnce; readonly rows: readonly StraightenRow[] }) => {
  const units = usePrefs((prefs) => prefs.units);
  const of = (chosen: boolean): readonly StraightenRow[] =>
    rows.filter((r) => isChosen(now, r.member) === chosen);
  const selected = useView((view) => view.selected);
  const list = (title: string, these: readonly StraightenRow[]) =>
    these.length > 0 && (
      <section className="stack tight" aria-label={title}>
        <h2>{title}</h2>
        <ul className="entries">
          {these.map((r) => {
            const member = now.members.get(r.member);
            return (
              <li key={r.member}>
                <button type="button" className="entry-button" onClick={() => select(r.member)}>
                  <strong>{r.member}</strong>
                  <span className="small soft">{member ? memberWords(member) : ''}</span>
                  <span className="small entry-line">
                    {r.fit ? `${showLength(r.fit.bowIn.value, units, 64)} bow; ` : ''}
                    {saysLine(r, units)}
                  </span>
                </button>
              </li>
            );
          })}
        </ul>
      </section>
    );
  return (
    <>
      {selected.length > 0 && rows.length > 0 && (
        <p className="soft">What is selected has no bow, kink or oval recorded. These have:</p>
      )}
      {rows.length === 0 && (
        <p className="empty">
          No tube is bent or oval. Record a bow on the walk-round, and its press comes here.
        </p>
      )}
      {list('Decided to be straightened or rounded out', of(true))}
      {list('Bent or oval, decided otherwise or not yet', of(false))}
    </>
  );
};

const One = ({
  now,
  row,
  member,
}: {
  readonly now: AtOnce;
  readonly row: StraightenRow;
  readonly member: Member;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const choice = now.marks.get(row.member)?.choice;
  const ends = [member.from, member.to] as const;
  return (
    <section className="stack" aria-label={`Straighten ${row.member}`}>
      <div className={`notice ${row.says === 'stop' ? 'blocking' : ''}`}>
        <p className="says">{capital(saysLine(row, units))}.</p>
        {row.stops.length > 0 && <p>Because {row.stops.map(({ why }) => stopWords[why]).join(', and ')}.</p>}
        <p className="small">
          {choice ? `Decided: ${choiceWords[choice]}. ` : 'Not decided. '}
          The general rules pair straightening with a split sleeve; straightening alone needs the maker’s or
          other recognised data.{' '}
          <button type="button" className="link" onClick={() => setView({ route: 'decide' })}>
            To the decision
          </button>
        </p>
        {row.accepted && <p className="small">Accepted as it stands by {row.accepted.by}.</p>}
      </div>
      {row.cautions.map((code) => (
        <p key={code} className="notice caution small" role="note">
          <strong>CAUTION</strong> {straightenCautions[code] ?? code}
        </p>
      ))}
      <Axis row={row} member={member} />
      {row.stops.length === 0 && (
        <>
          <section className="stack tight" aria-label="Before pressing">
            <h3>Before pressing</h3>
            <Cautions step="straightening" />
            <p className="notice warning small" role="note">
              <strong>WARNING</strong> {stepCautions.press}
            </p>
            <p className="notice caution small" role="note">
              <strong>CAUTION</strong> {stepCautions.look}
            </p>
            <Cautions step="heating" />
          </section>
          <SetUps row={row} member={member} ends={ends} />
        </>
      )}
      <Log row={row} from={member.from} />
      <Round row={row} from={member.from} />
      <Checks row={row} />
      <button type="button" className="link back" onClick={() => selectAll([])}>
        ‹ All bent tubes
      </button>
      <OwnData topics={topicsOf(row.member)} />
    </section>
  );
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const Axis = ({ row, member }: { readonly row: StraightenRow; readonly member: Member }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { fit } = row;
  return (
    <section className="stack tight" aria-label="Where the axis lies">
      <h3>Where the axis lies</h3>
      {fit ? (
        <>
          <div className="axis-drawing">
            <Drawing
              drawing={axisDrawing(fit, member.lengthIn, [member.from, member.to], units)}
              title={`Axis of ${row.member}: greatest bend ${showLength(fit.bowIn.value, units, 64)} at ${showLength(fit.atIn.value, units)} from ${member.from}`}
            />
          </div>
          <div className="figures">
            <FigureLine name="Greatest bend" figure={fit.bowIn} />
            <FigureLine name={`Push here first, from ${member.from}`} figure={fit.atIn} />
            <PlainLine name="Crown points to">{clockText(fit.clock)}</PlainLine>
            <PlainLine name="Shape">{shapeWords[fit.shape]}</PlainLine>
            <PlainLine name="Over">{showLength(fit.chordIn, units)}</PlainLine>
            <FigureLine name="Turns through" figure={fit.turnRad} />
            <PlainLine name="Read">{fit.allRound ? 'all round' : 'not all round yet'}</PlainLine>
          </div>
        </>
      ) : (
        <p className="soft">{noFitWords[row.noFit ?? 'no-readings']}</p>
      )}
      <StraightEdgeForm member={row.member} from={member.from} />
    </section>
  );
};

const SetUps = ({
  row,
  member,
  ends,
}: {
  readonly row: StraightenRow;
  readonly member: Member;
  readonly ends: readonly [string, string];
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const { fit, next, setups } = row;
  if (!fit || (setups.length === 0 && !next)) return null;
  return (
    <section className="stack tight" aria-label="Set-ups">
      {next && (
        <>
          <h3>Next push, from what the last ones left</h3>
          <SetUpCard fit={fit} setup={next} lengthIn={member.lengthIn} ends={ends} name="Next push" />
        </>
      )}
      {setups.length > 0 && (
        <>
          <h3>{next ? 'As planned at first' : `Set-ups, in order (${setups.length})`}</h3>
          <FigureLine name="Yield strength taken" figure={row.yieldPsi} />
          {setups.map((setup) => (
            <details key={setup.no} className="set-up" open={setup.no === 1 && !next}>
              <summary>
                <strong>{setup.no}.</strong> ram at {showLength(setup.atIn, units)}, press{' '}
                {showFigure(setup.press.pressIn, units)}
              </summary>
              <SetUpCard
                fit={fit}
                setup={setup}
                lengthIn={member.lengthIn}
                ends={ends}
                name={`Set-up ${setup.no}`}
              />
            </details>
          ))}
        </>
      )}
    </section>
  );
};

const Log = ({ row, from }: { readonly row: StraightenRow; readonly from: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <section className="stack tight" aria-label="Pushes">
      <h3>
        Pushes ({row.pushes.length}
        {row.reversals > 0 ? `, ${row.reversals} pushed back` : ''})
      </h3>
      {row.pushes.length === 0 ? (
        <p className="soft small">None logged. The first push tells how this tube springs back.</p>
      ) : (
        <ol className="entries">
          {row.pushes.map((push, k) => (
            <li key={push.record}>
              <div className="entry-head">
                <strong>
                  {k + 1}. pressed {showLength(push.pressedIn, units, 64)}, stayed{' '}
                  {showLength(push.leftIn, units, 64)}
                </strong>
                <button
                  type="button"
                  className="link"
                  onClick={() => removeRecord(push.record, `Push ${k + 1} on ${row.member} removed`)}
                >
                  Remove
                </button>
              </div>
              <span className="small">
                At {showLength(push.atIn, units)}, blocks {showLength(push.spanIn, units)} apart
                {push.forceLbf === undefined ? '' : `, ${Math.round(push.forceLbf)} lbf`}
                {push.reversal ? '; pushed back against the one before' : ''}; {pushSaysWords[push.says]}
              </span>
              {push.yieldPsi && <FigureLine name="Yield strength by it" figure={push.yieldPsi} />}
            </li>
          ))}
        </ol>
      )}
      <PushForm member={row.member} from={from} />
    </section>
  );
};

const Round = ({ row, from }: { readonly row: StraightenRow; readonly from: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <section className="stack tight" aria-label="Roundness">
      <h3>Roundness</h3>
      {row.roundness.map((r) => (
        <div key={r.record} className="figures">
          <PlainLine
            name={r.atIn === null ? 'Largest, smallest' : `Largest, smallest at ${showLength(r.atIn, units)}`}
          >
            {showLength(r.largestIn, units, 64)}, {showLength(r.smallestIn, units, 64)}
          </PlainLine>
          <FigureLine name={`Ovality: ${checkVerdictWords[r.verdict]}`} figure={r.ovality} />
          <FigureLine name="Bore of the blocks" figure={r.boreIn} />
          <FigureLine name="Squeeze past round" figure={r.overSqueezeIn} />
        </div>
      ))}
      {row.roundness.length === 0 && (
        <p className="soft small">
          No diameter read since the last push. Read it at the bend and where it was pressed.
        </p>
      )}
      <RoundnessForm member={row.member} from={from} />
    </section>
  );
};

const signs: Readonly<Record<string, string>> = {
  inside: '●',
  clear: '●',
  outside: '×',
  crack: '×',
  notDone: '○',
};

const Checks = ({ row }: { readonly row: StraightenRow }) => {
  const [reason, setReason] = useState('');
  const begun = row.says !== 'notStarted' && row.says !== 'stop';
  const wanting = row.says !== 'straight' && reason.trim() === '';
  const ready = row.says === 'straight' || row.says === 'straightenedNoLimit';
  return (
    <section className="stack tight" aria-label="Checks after the last push">
      <h3>Checks after the last push</h3>
      <ul className="checks small">
        {row.checks.map((check) => (
          <li key={check.of}>
            <span className="sign" aria-hidden="true">
              {signs[check.verdict] ?? '?'}
            </span>
            <span>{checkWords[check.of]}</span>
            <strong>{checkVerdictWords[check.verdict]}</strong>
          </li>
        ))}
      </ul>
      <InspectedForm member={row.member} />
      {begun && ready && !row.accepted && (
        <form
          className="stack tight choose"
          aria-label={`Accept ${row.member} as it stands`}
          onSubmit={(event) => {
            event.preventDefault();
            if (!wanting && acceptStraightened(row.member, reason)) setReason('');
          }}
        >
          <label className="field">
            <span className="caption">
              {row.says === 'straight' ? 'Note' : 'Why it may stand with no limit loaded'}
            </span>
            <input type="text" value={reason} onChange={(e) => setReason(e.target.value)} />
          </label>
          <button type="submit" className="main" disabled={wanting}>
            Accept it as it stands, by name
          </button>
        </form>
      )}
    </section>
  );
};

const topicsOf = (id: string): readonly OwnTopic[] => [
  { topic: `straighten-only:${id}`, label: `${id} may be straightened alone`, takes: 'words' },
  { topic: `limit:bow:${id}`, label: `Limit of bow on ${id}`, takes: 'length' },
  { topic: `limit:ovality:${id}`, label: `Limit of ovality on ${id}, per cent of D`, takes: 'share' },
  { topic: `yield:${id}`, label: `Yield strength of ${id}`, takes: 'psi' },
  { topic: `blocks:${id}`, label: `Block spacing for ${id}`, takes: 'length' },
  { topic: 'blocks', label: 'Block spacing, all tubes', takes: 'length' },
];
