import type { CutCandidate } from '../../core/relief/result.ts';
import {
  fixed,
  showAxial,
  showLength,
  showOpenings,
  showRange,
  showShare,
  type Units,
} from '../../present/show.ts';
import { movesWords, sawWords, shareRange, whyLine } from '../../present/tables/relief.ts';
import { clusterWords } from '../../present/words/names.ts';
import { cutVerdictWords, tierWords } from '../../present/words/relief.ts';
import { PlainLine } from '../parts/FigureLine.tsx';
import { workAgain } from '../state/answer.ts';
import { setOverlay, useOverlay } from '../state/overlay.ts';
import { select } from '../state/view.ts';
import { cutText } from '../text/relieve.ts';

export const axialWords = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  showAxial(low) === showAxial(high) ? showAxial(low) : cutText.fromTo(showAxial(low), showAxial(high));

/** One cut, or two after each other: what it lets go, what it leaves, what moves, what it asks for first. */
export const CutRow = ({
  target,
  cut,
  place,
  units,
}: {
  readonly target: string;
  readonly cut: CutCandidate;
  readonly place: number;
  readonly units: Units;
}) => {
  const shown = useOverlay(
    ({ show, cut: of }) =>
      show === 'cut' && of?.target === target && of.cuts.join(' ') === cut.cuts.join(' '),
  );
  const show = (): void => {
    if (shown) {
      setOverlay({ show: 'nothing', cut: null });
      return;
    }
    setOverlay({ show: 'cut', cut: { target, cuts: cut.cuts } });
    // every cluster's move is worked only for the tube in hand
    if (cut.shape === undefined && cut.verdict !== 'refused') workAgain();
  };
  return (
    <li>
      <div className="entry-head">
        <strong>
          {place}.{' '}
          {cut.cuts.map((id, k) => (
            <span key={id}>
              {k > 0 && cutText.inTurn}
              <button type="button" className="link" onClick={() => select(id)}>
                {id}
              </button>
            </span>
          ))}
        </strong>
        <strong className="small">{cutVerdictWords[cut.verdict]}</strong>
      </div>
      <p className="small">
        {tierWords[cut.tier]}: {whyLine(cut, units)}.
      </p>
      <div className="figures small">
        <PlainLine name={cutText.sourceRelief}>{shareRange(cut.sourceRelief)}</PlainLine>
        <PlainLine name={cutText.ownRelief}>{showShare(cut.eta)}</PlainLine>
        <PlainLine name={cutText.leftAlong}>{axialWords(cut.left.axialLbf)}</PlainLine>
        <PlainLine name={cutText.leftBending}>{showRange(cut.left.momentInLbf, 'in-lbf', units)}</PlainLine>
        <PlainLine name={cut.cuts.length > 1 ? cutText.secondKerf : cutText.kerf}>
          {showOpenings(cut.opensIn, units)}
        </PlainLine>
        <PlainLine name={cutText.sag}>
          {cut.sagIn === null ? cutText.sagNotWorked : showLength(cut.sagIn, units, 64)}
        </PlainLine>
        <PlainLine name={cutText.stability}>{cut.mu < 1e-8 ? '0' : fixed(cut.mu, 4)}</PlainLine>
        {cut.brace && (
          <PlainLine name={cutText.brace}>
            {cutText.braceSag(cut.brace.from, cut.brace.to, showLength(cut.brace.sagIn, units, 64))}
          </PlainLine>
        )}
      </div>
      {cut.cuts.length > 1 && (
        <p className="small">{cutText.oneAtATime(cut.why === 'second-cut-needs-gate-opened')}</p>
      )}
      {cut.brace && (
        <p className="small soft">
          {cutText.braceOf(clusterWords(cut.brace.from), clusterWords(cut.brace.to))}
        </p>
      )}
      <div className="row">
        <button type="button" className="small" aria-pressed={shown} onClick={show}>
          {shown ? cutText.shown : cutText.show}
        </button>
      </div>
      <details className="small">
        <summary>{cutText.where}</summary>
        <div className="basis">
          <p>{sawWords(cut, units)}.</p>
          <p>{cutText.standClear}</p>
          {cut.moves.length > 0 && <p>{cutText.movesMost(movesWords(cut, units))}</p>}
          <p>{cutText.released(showRange(cut.releasedInLbf, 'in-lbf', units))}</p>
        </div>
      </details>
    </li>
  );
};
