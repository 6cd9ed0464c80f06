import type { CutCandidate, ReliefTarget } from '../../core/relief/result.ts';
import { showAxial, showLength, showOpening, showRange, showShare, type Units } from '../../present/show.ts';
import { movesWords, releaseLines, sawWords, whyLine } from '../../present/tables/relief.ts';
import { listWords, memberWords } from '../../present/words/names.ts';
import { cutVerdictWords, targetNoteWords, tierWords } from '../../present/words/relief.ts';
import { Cautions } from '../parts/Caution.tsx';
import { PlainLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { OnlyThese } from '../parts/OnlyThese.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, useView } from '../state/view.ts';

const axialWords = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  showAxial(low) === showAxial(high) ? showAxial(low) : `${showAxial(low)} to ${showAxial(high)}`;

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
      {all.relief.kind === 'notRanked' && (
        <p className="notice">Not ranked: say how the truss is held now, under Start.</p>
      )}
      {all.relief.kind === 'movesFreely' && (
        <p className="notice">
          The truss as it is held can move without straining a tube. Say how it is held, under Start, before
          any cut.
        </p>
      )}
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
            {releaseLines(target).map((line) => (
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
          <ol className="entries">
            {target.candidates.map((cut, i) => (
              <Cut key={cut.cuts.join(' ')} cut={cut} place={i + 1} units={units} />
            ))}
          </ol>
        )}
      </section>
      {target.soundTubes.length > 0 && (
        <details>
          <summary>Sound tubes ({target.soundTubes.length}): each cut makes a repair of its own</summary>
          <ol className="entries">
            {target.soundTubes.map((cut, i) => (
              <Cut key={cut.cuts.join(' ')} cut={cut} place={i + 1} units={units} />
            ))}
          </ol>
          {target.soundNotListed > 0 && (
            <p className="small soft">{target.soundNotListed} sound tubes more are not listed.</p>
          )}
        </details>
      )}
    </section>
  );
};

const Cut = ({
  cut,
  place,
  units,
}: {
  readonly cut: CutCandidate;
  readonly place: number;
  readonly units: Units;
}) => (
  <li>
    <div className="entry-head">
      <button type="button" className="link" onClick={() => select(cut.cuts[0] ?? '')}>
        {place}. {cut.cuts.join(', then ')}
      </button>
      <strong className="small">{cutVerdictWords[cut.verdict]}</strong>
    </div>
    <p className="small">
      {tierWords[cut.tier]}: {whyLine(cut, units)}.
    </p>
    <div className="figures small">
      <PlainLine name="Of what other bends lock in, goes">{shareWords(cut.sourceRelief)}</PlainLine>
      <PlainLine name="Left along the tube">{axialWords(cut.left.axialLbf)}</PlainLine>
      <PlainLine name="Left bending">{showRange(cut.left.momentInLbf, 'in-lbf', units)}</PlainLine>
      <PlainLine name="The kerf">{kerfWords(cut, units)}</PlainLine>
      <PlainLine name="Sag under its own weight grows by">
        {cut.sagIn === null ? 'not worked' : showLength(cut.sagIn, units, 64)}
      </PlainLine>
    </div>
    <details className="small">
      <summary>Where to saw, and what moves</summary>
      <div className="basis">
        <p>{sawWords(cut, units)}.</p>
        {cut.moves.length > 0 && <p>Moves most: {movesWords(cut, units)}.</p>}
        <p>Of a length error in the tube itself, {showShare(cut.eta)} goes.</p>
      </div>
    </details>
  </li>
);

const shareWords = (range: CutCandidate['sourceRelief']): string => {
  if (range === null) return 'no bend measured';
  const [low, high] = [showShare(range.low), showShare(range.high)];
  return low === high ? low : `${low} to ${high}`;
};

const kerfWords = ({ opensIn: { low, high } }: CutCandidate, units: Units): string => {
  const [a, b] = [showOpening(low, units), showOpening(high, units)];
  return a === b ? a : `${a} to ${b}`;
};
