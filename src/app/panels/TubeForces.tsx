import type { Assessment } from '../../core/assessment.ts';
import { showAxial, showStress } from '../../present/show.ts';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { useAnswer } from '../state/answer.ts';
import { tubeForcesText } from '../text/tubeSums.ts';

/** What one tube carries in each load case, and what measured bends lock into it. */
export const TubeForces = ({ all, id }: { readonly all: Assessment; readonly id: string }) => {
  const model = useAnswer((answer) => answer.atOnce && (answer.atOnce.live.model ?? answer.atOnce.job.model));
  const { statics } = all;
  const locked = all.lockedIn.members.find((member) => member.id === id);
  const nameOf = (caseId: string): string =>
    model?.loadCases.find((one) => one.id === caseId)?.name ?? caseId;
  if (statics.kind !== 'stands') return null;
  return (
    <details>
      <summary>{tubeForcesText.title(id)}</summary>
      <div className="figures">
        {statics.cases.map((solved) => {
          const force = solved.members.find((member) => member.id === id);
          return force ? (
            <PlainLine key={solved.id} name={nameOf(solved.id)}>
              {tubeForcesText.row(showAxial(force.axialLbf), showStress(force.stressPsi))}
            </PlainLine>
          ) : null;
        })}
        {locked && (
          <>
            <FigureLine name={tubeForcesText.axial} figure={locked.axialLbf} />
            <FigureLine name={tubeForcesText.moment} figure={locked.endMomentInLbf} />
            <FigureLine name={tubeForcesText.stress} figure={locked.stressPsi} />
          </>
        )}
      </div>
      <p className="small soft">{tubeForcesText.basis(statics.heldAs)}</p>
    </details>
  );
};
