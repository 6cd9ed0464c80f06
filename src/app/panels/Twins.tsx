import { bothSidesHurt } from '../deeds.ts';
import type { AtOnce } from '../state/answer.ts';
import { selectAll } from '../state/view.ts';
import { twinsText as text } from '../text/truss.ts';

/** Findings on both of a pair of opposite-hand twins: was the same side meant? Asked once a bay. */
export const Twins = ({ now }: { readonly now: AtOnce }) => {
  const { twins } = now.coverage;
  if (twins.length === 0) return null;
  return (
    <section className="stack tight" aria-label={text.title}>
      {twins.map(({ bay, left, right }) => (
        <div key={`${bay} ${left}`} className="notice stack tight" role="alert">
          <p>
            <strong>{text.title}</strong> {text.asks(bay, left, right)}
          </p>
          <div className="row">
            <button type="button" onClick={() => bothSidesHurt(bay)}>
              {text.both}
            </button>
            <button type="button" onClick={() => selectAll([left])}>
              {text.look(left)}
            </button>
            <button type="button" onClick={() => selectAll([right])}>
              {text.look(right)}
            </button>
          </div>
        </div>
      ))}
    </section>
  );
};
