import { asymmetries } from '../../core/truss/symmetry.ts';
import { issueSentence } from '../../present/words/issues.ts';
import { changeModel, useDraftTruss } from './draft.ts';

/** Whether left and right are alike, and one side copied to the other. */
export const Sides = () => {
  const truss = useDraftTruss();
  const unlike = asymmetries(truss);
  return (
    <section className="stack tight" aria-label="Left and right">
      <h3>Left and right</h3>
      <p>
        {unlike.length === 0
          ? 'Left and right are alike.'
          : `${unlike.length} ${unlike.length === 1 ? 'thing differs' : 'things differ'} between left and right.`}
      </p>
      {unlike.length > 0 && (
        <details>
          <summary>What differs</summary>
          <ul className="entries small">
            {unlike.slice(0, 60).map((one) => (
              <li key={JSON.stringify(one.facts)}>{issueSentence(one)}</li>
            ))}
          </ul>
        </details>
      )}
      <div className="row">
        <button
          type="button"
          onClick={() => changeModel([{ kind: 'mirrorSide', from: 'L' }], 'left copied to right')}
        >
          Copy left to right
        </button>
        <button
          type="button"
          onClick={() => changeModel([{ kind: 'mirrorSide', from: 'R' }], 'right copied to left')}
        >
          Copy right to left
        </button>
      </div>
    </section>
  );
};
