import { bothSidesHurt } from '../deeds.ts';
import type { AtOnce } from '../state/answer.ts';
import { selectAll } from '../state/view.ts';

/** Findings on both of a pair of opposite-hand twins: was the same side meant? Asked once a bay. */
export const Twins = ({ now }: { readonly now: AtOnce }) => {
  const { twins } = now.coverage;
  if (twins.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Same side?">
      {twins.map(({ bay, left, right }) => (
        <div key={`${bay} ${left}`} className="notice stack tight" role="alert">
          <p>
            <strong>Same side?</strong> In bay {bay} damage stands on {left} (left) and on its twin {right}{' '}
            (right). Left and right are the pilot's.
          </p>
          <div className="row">
            <button type="button" onClick={() => bothSidesHurt(bay)}>
              Both sides are hurt
            </button>
            <button type="button" onClick={() => selectAll([left])}>
              Look at {left}
            </button>
            <button type="button" onClick={() => selectAll([right])}>
              Look at {right}
            </button>
          </div>
        </div>
      ))}
    </section>
  );
};
