import type { Assessment } from '../../core/assessment.ts';
import { fixed, showAxial, showShare } from '../../present/show.ts';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { useAnswer } from '../state/answer.ts';
import { tubeSumsText } from '../text/tubeSums.ts';

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
          <summary>{tubeSumsText.clamped(id)}</summary>
          <div className="figures">
            <PlainLine name={tubeSumsText.intoForce}>
              {fixed(100 * share.rN, share.rN < 0.01 ? 2 : 1)} %
            </PlainLine>
            <PlainLine name={tubeSumsText.stability}>
              {share.mu < 1e-8 ? tubeSumsText.movesFreely : fixed(share.mu, 4)}
            </PlainLine>
          </div>
          <p className="small soft">{tubeSumsText.clampedBasis}</p>
        </details>
      )}
      {left && (
        <details>
          <summary>{tubeSumsText.leftOver(id)}</summary>
          <div className="figures">
            <FigureLine name={tubeSumsText.bow} figure={left.depthIn} />
            <FigureLine name={tubeSumsText.straight} figure={left.straightLbf} />
            <FigureLine name={tubeSumsText.firstYield} figure={left.firstYieldLbf} />
            <FigureLine name={tubeSumsText.collapse} figure={left.collapseLbf} />
            <FigureLine
              name={tubeSumsText.ratio}
              figure={left.ratio}
              {...(left.ratio.low === undefined ? { text: showShare(left.ratio.value) } : {})}
            />
            {left.cases.map((one) => (
              <FigureLine
                key={one.id}
                name={tubeSumsText.inCase(nameOf(one.id), showAxial(one.axialLbf.value))}
                figure={one.ofBent}
                text={tubeSumsText.shares(showShare(one.ofBent.value), showShare(one.ofStraight.value))}
              />
            ))}
          </div>
          <p className="small soft">{tubeSumsText.leftBasis}</p>
        </details>
      )}
    </>
  );
};
