import { asymmetries } from '../../core/truss/symmetry.ts';
import { issueSentence } from '../../present/words/issues.ts';
import { sidesText as text } from '../text/modelBench.ts';
import { changeModel, useDraftTruss } from './draft.ts';

/** Whether left and right are alike, and one side copied to the other. */
export const Sides = () => {
  const truss = useDraftTruss();
  const unlike = asymmetries(truss);
  return (
    <section className="stack tight" aria-label={text.title}>
      <h3>{text.title}</h3>
      <p>{unlike.length === 0 ? text.alike : text.differ(unlike.length)}</p>
      {unlike.length > 0 && (
        <details>
          <summary>{text.what}</summary>
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
          onClick={() => changeModel([{ kind: 'mirrorSide', from: 'L' }], text.wasToRight)}
        >
          {text.toRight}
        </button>
        <button
          type="button"
          onClick={() => changeModel([{ kind: 'mirrorSide', from: 'R' }], text.wasToLeft)}
        >
          {text.toLeft}
        </button>
      </div>
    </section>
  );
};
