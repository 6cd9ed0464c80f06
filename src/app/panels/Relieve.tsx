import type { CutCandidate, ReliefTarget } from '../../core/relief/result.ts';
import { SAG_LIMIT_IN } from '../../core/relief/sag.ts';
import { showLength, showRange } from '../../present/show.ts';
import { releaseLines, supportLines } from '../../present/tables/relief.ts';
import { listWords, memberWords } from '../../present/words/names.ts';
import { targetNoteWords } from '../../present/words/relief.ts';
import { Cautions } from '../parts/Caution.tsx';
import { PlainLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { OnlyThese } from '../parts/OnlyThese.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { ShowInPicture } from '../picture/ShowInPicture.tsx';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, useView } from '../state/view.ts';
import { relieveText } from '../text/relieve.ts';
import { axialWords, CutRow } from './CutRow.tsx';
import { HeldForm } from './HeldForm.tsx';

/** Which cuts would let the selected tube go, best first; what needs no saw stands before them. */
export const RelievePanel = () => {
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!all) return <Waiting />;
  const target = [...selected]
    .reverse()
    .map((id) => all.relief.targets.find(({ member }) => member === id))
    .find((one) => one !== undefined);
  return (
    <div className="stack">
      <ShowInPicture />
      {all.relief.kind === 'notRanked' && <p className="notice">{relieveText.notRanked}</p>}
      {all.relief.kind === 'movesFreely' && <p className="notice">{relieveText.movesFreely}</p>}
      <HeldForm open={all.relief.kind !== 'ranked'} />
      {target ? <Target target={target} /> : <Choose targets={all.relief.targets} />}
      <Issues issues={all.relief.issues} />
    </div>
  );
};

const Choose = ({ targets }: { readonly targets: readonly ReliefTarget[] }) => {
  const now = useAnswer((answer) => answer.atOnce);
  if (targets.length === 0) return <p className="empty">{relieveText.nothing}</p>;
  return (
    <section className="stack tight" aria-label={relieveText.targets}>
      <h2>{relieveText.which}</h2>
      <ul className="entries">
        {targets.map(({ member, candidates }) => {
          const known = now?.members.get(member);
          return (
            <li key={member}>
              <div className="entry-head">
                <button type="button" className="link" onClick={() => select(member)}>
                  {member}
                </button>
                <span className="small">{relieveText.candidates(candidates.length)}</span>
              </div>
              <span className="small soft">{known ? memberWords(known) : ''}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
};

const Target = ({ target }: { readonly target: ReliefTarget }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <section className="stack" aria-label={relieveText.targetNamed(target.member)}>
      <h2>{relieveText.target(target.member)}</h2>
      <div className="figures">
        <PlainLine name={relieveText.alongNow}>{axialWords(target.now.axialLbf)}</PlainLine>
        <PlainLine name={relieveText.bendingNow}>
          {showRange(target.now.momentInLbf, 'in-lbf', units)}
        </PlainLine>
        <details className="figure">
          <summary>
            <span>{relieveText.restsOn}</span>
            <span className="value" />
          </summary>
          <div className="basis">
            {relieveText.rests(showLength(SAG_LIMIT_IN, units, 32)).map((words) => (
              <p key={words}>{words}</p>
            ))}
          </div>
        </details>
      </div>
      {target.measureFirst.length > 0 && (
        <p className="notice">{relieveText.measureFirst(listWords(target.measureFirst))}</p>
      )}
      {target.notes.map((note) => (
        <p key={note} className="notice small">
          {targetNoteWords[note]}
        </p>
      ))}
      <section className="stack tight" aria-label={relieveText.withoutSawNamed}>
        <h3>{relieveText.withoutSaw}</h3>
        {target.withoutSaw.length === 0 ? (
          <p className="soft">{relieveText.nothingWithoutSaw}</p>
        ) : (
          <ul className="entries">
            {[...releaseLines(target), ...supportLines([target])].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </section>
      <Cautions step="cutting" />
      <section className="stack tight" aria-label={relieveText.cutsNamed}>
        <h3>{relieveText.cuts}</h3>
        <OnlyThese ids={[target.member, ...target.candidates.slice(0, 6).flatMap(({ cuts }) => cuts)]} />
        {target.candidates.length === 0 ? (
          <p className="soft">{relieveText.noCut}</p>
        ) : (
          <CutList target={target} cuts={target.candidates} />
        )}
      </section>
      {target.soundTubes.length > 0 && (
        <details>
          <summary>{relieveText.sound(target.soundTubes.length)}</summary>
          <CutList target={target} cuts={target.soundTubes} />
          {target.soundNotListed > 0 && (
            <p className="small soft">{relieveText.soundNotListed(target.soundNotListed)}</p>
          )}
        </details>
      )}
    </section>
  );
};

/** How many that help nothing are listed before the rest is folded. */
const OTHERS_SHOWN = 3;

const CutList = ({
  target,
  cuts,
}: {
  readonly target: ReliefTarget;
  readonly cuts: readonly CutCandidate[];
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const rows = cuts.map((cut, i) => ({ cut, place: i + 1 }));
  const others = rows.filter(({ cut }) => cut.verdict === 'noHelp');
  const folded = new Set(others.slice(OTHERS_SHOWN));
  const list = (some: typeof rows) => (
    <ol className="entries">
      {some.map(({ cut, place }) => (
        <CutRow key={cut.cuts.join(' ')} target={target.member} cut={cut} place={place} units={units} />
      ))}
    </ol>
  );
  return (
    <>
      {list(rows.filter((row) => !folded.has(row)))}
      {folded.size > 0 && (
        <details>
          <summary>{relieveText.noHelp(folded.size)}</summary>
          {list([...folded])}
        </details>
      )}
    </>
  );
};
