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

export const axialWords = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  showAxial(low) === showAxial(high) ? showAxial(low) : `${showAxial(low)} to ${showAxial(high)}`;

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
              {k > 0 && ', then '}
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
        <PlainLine name="Of what other bends lock in, goes">{shareRange(cut.sourceRelief)}</PlainLine>
        <PlainLine name="Of a length error of its own, goes">{showShare(cut.eta)}</PlainLine>
        <PlainLine name="Left along the tube">{axialWords(cut.left.axialLbf)}</PlainLine>
        <PlainLine name="Left bending">{showRange(cut.left.momentInLbf, 'in-lbf', units)}</PlainLine>
        <PlainLine name={cut.cuts.length > 1 ? 'The second kerf' : 'The kerf'}>
          {showOpenings(cut.opensIn, units)}
        </PlainLine>
        <PlainLine name="Own-weight sag grows by">
          {cut.sagIn === null ? 'not worked' : showLength(cut.sagIn, units, 64)}
        </PlainLine>
        <PlainLine name="Stability left (0: moves freely)">
          {cut.mu < 1e-8 ? '0' : fixed(cut.mu, 4)}
        </PlainLine>
        {cut.brace && (
          <PlainLine name="Temporary brace first">
            {cut.brace.from} to {cut.brace.to}: sag {showLength(cut.brace.sagIn, units, 64)}
          </PlainLine>
        )}
      </div>
      {cut.cuts.length > 1 && (
        <p className="small">
          One at a time: the first is closed or braced and read again before the second is opened
          {cut.why === 'second-cut-needs-gate-opened'
            ? '; they share a cluster, so the second needs its gate opened by name'
            : ''}
          .
        </p>
      )}
      {cut.brace && (
        <p className="small soft">
          Brace of the cut tube's own size, {clusterWords(cut.brace.from).toLowerCase()} to{' '}
          {clusterWords(cut.brace.to).toLowerCase()}, clamped or tacked before the saw.
        </p>
      )}
      <div className="row">
        <button type="button" className="small" aria-pressed={shown} onClick={show}>
          {shown ? 'Shown in the picture' : 'Show in the picture'}
        </button>
      </div>
      <details className="small">
        <summary>Where to saw, and what moves</summary>
        <div className="basis">
          <p>{sawWords(cut, units)}.</p>
          <p>
            The kerf may close on the blade or jump open: stand clear of its line, and measure it after the
            cut.
          </p>
          {cut.moves.length > 0 && <p>Moves most: {movesWords(cut, units)}.</p>}
          <p>Let go at the saw: {showRange(cut.releasedInLbf, 'in-lbf', units)}.</p>
        </div>
      </details>
    </li>
  );
};
