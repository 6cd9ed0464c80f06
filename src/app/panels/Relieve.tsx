import type { CutCandidate, ReliefTarget } from '../../core/relief/result.ts';
import { showRange } from '../../present/show.ts';
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
      {all.relief.kind === 'notRanked' && (
        <p className="notice">Not ranked: say below how the truss is held now.</p>
      )}
      {all.relief.kind === 'movesFreely' && (
        <p className="notice">
          The truss as it is held can move without straining a tube. Say below how it is held, before any cut.
        </p>
      )}
      <HeldForm open={all.relief.kind !== 'ranked'} />
      {target ? <Target target={target} /> : <Choose targets={all.relief.targets} />}
      <Issues issues={all.relief.issues} />
    </div>
  );
};

const Choose = ({ targets }: { readonly targets: readonly ReliefTarget[] }) => {
  const now = useAnswer((answer) => answer.atOnce);
  if (targets.length === 0)
    return (
      <p className="empty">Select a tube, or record a finding: the cuts that would relieve it come here.</p>
    );
  return (
    <section className="stack tight" aria-label="Tubes with findings">
      <h2>Which tube is to be relieved?</h2>
      <ul className="entries">
        {targets.map(({ member, candidates }) => {
          const known = now?.members.get(member);
          return (
            <li key={member}>
              <div className="entry-head">
                <button type="button" className="link" onClick={() => select(member)}>
                  {member}
                </button>
                <span className="small">{candidates.length} candidates</span>
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
    <section className="stack" aria-label={`Cuts that would relieve ${target.member}`}>
      <h2>To relieve {target.member}</h2>
      <div className="figures">
        <PlainLine name="Locked in now, along the tube">{axialWords(target.now.axialLbf)}</PlainLine>
        <PlainLine name="Locked in now, bending">
          {showRange(target.now.momentInLbf, 'in-lbf', units)}
        </PlainLine>
      </div>
      {target.measureFirst.length > 0 && (
        <p className="notice">
          Measure first: {listWords(target.measureFirst)}. Damage is recorded there without a size, so what it
          locks in is missing here.
        </p>
      )}
      {target.notes.map((note) => (
        <p key={note} className="notice small">
          {targetNoteWords[note]}
        </p>
      ))}
      <section className="stack tight" aria-label="Without a saw">
        <h3>First, without a saw</h3>
        {target.withoutSaw.length === 0 ? (
          <p className="soft">Nothing here can be let go without cutting.</p>
        ) : (
          <ul className="entries">
            {[...releaseLines(target), ...supportLines([target])].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </section>
      <Cautions step="cutting" />
      <section className="stack tight" aria-label="Cut candidates, best first">
        <h3>Cuts, best first</h3>
        <OnlyThese ids={[target.member, ...target.candidates.slice(0, 6).flatMap(({ cuts }) => cuts)]} />
        {target.candidates.length === 0 ? (
          <p className="soft">No cut is offered.</p>
        ) : (
          <CutList target={target} cuts={target.candidates} />
        )}
      </section>
      {target.soundTubes.length > 0 && (
        <details>
          <summary>Sound tubes ({target.soundTubes.length}): each cut makes a repair of its own</summary>
          <CutList target={target} cuts={target.soundTubes} />
          {target.soundNotListed > 0 && (
            <p className="small soft">{target.soundNotListed} sound tubes more are not listed.</p>
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
          <summary>{folded.size} more that help nothing</summary>
          {list([...folded])}
        </details>
      )}
    </>
  );
};
