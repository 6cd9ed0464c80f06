import type { Assessment } from '../../core/assessment.ts';
import { fixed, showAxial, showShare } from '../../present/show.ts';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { useAnswer } from '../state/answer.ts';

/** How clamped a tube is, and what a bent one has left: information with its assumptions, never a verdict. */
export const TubeSums = ({ all, id }: { readonly all: Assessment; readonly id: string }) => {
  const model = useAnswer((answer) => answer.atOnce && (answer.atOnce.live.model ?? answer.atOnce.job.model));
  const { statics, lockedIn } = all;
  const share = statics.kind === 'stands' ? statics.redundancy.find((m) => m.id === id) : undefined;
  const left = lockedIn.leftOver.find((row) => row.id === id);
  const nameOf = (caseId: string): string =>
    model?.loadCases.find((one) => one.id === caseId)?.name ?? caseId;
  return (
    <>
      {share && (
        <details>
          <summary>How clamped {id} is</summary>
          <div className="figures">
            <PlainLine name="Of a length error, turns into force">
              {fixed(100 * share.rN, share.rN < 0.01 ? 2 : 1)} %
            </PlainLine>
            <PlainLine name="Stability left when it is cut">
              {share.mu < 1e-8 ? 'none: moves freely' : fixed(share.mu, 4)}
            </PlainLine>
          </div>
          <p className="small soft">
            Redundancy share, from 0 (nothing else holds its length) to 100 % (completely clamped); the rest
            turns into shape. Of the truss as drawn, as it is held now.
          </p>
        </details>
      )}
      {left && (
        <details>
          <summary>Left-over strength of {id} as it stands</summary>
          <div className="figures">
            <FigureLine name="Bow over the whole tube" figure={left.depthIn} />
            <FigureLine name="Straight, compression" figure={left.straightLbf} />
            <FigureLine name="Bent, first yield" figure={left.firstYieldLbf} />
            <FigureLine name="Bent, collapse estimate" figure={left.collapseLbf} />
            <FigureLine
              name="Bent over straight"
              figure={left.ratio}
              {...(left.ratio.low === undefined ? { text: showShare(left.ratio.value) } : {})}
            />
            {left.cases.map((one) => (
              <FigureLine
                key={one.id}
                name={`${nameOf(one.id)}: ${showAxial(one.axialLbf.value)}`}
                figure={one.ofBent}
                text={`${showShare(one.ofBent.value)} of bent, ${showShare(one.ofStraight.value)} of straight`}
              />
            ))}
          </div>
          <p className="small soft">
            Arithmetic with its assumptions, one tap away at each figure. It says nothing of what is
            permitted.
          </p>
        </details>
      )}
    </>
  );
};
