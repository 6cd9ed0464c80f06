import type { ReactNode } from 'react';
import type { Figure } from '../../core/base/figure.ts';
import { showFigure } from '../../present/show.ts';
import { assumedWords } from '../../present/words/assumptions.ts';
import { basisLine } from '../../present/words/basis.ts';
import { usePrefs } from '../state/prefs.ts';

/** A number to act on; what it rests on and what it assumed are one tap away. */
export const FigureLine = ({
  name,
  figure,
  text,
}: {
  readonly name: string;
  readonly figure: Figure;
  /** Shown in place of the plain figure, e.g. a difference in words. */
  readonly text?: string;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <details className="figure">
      <summary>
        <span>{name}</span>
        <span className="value">{text ?? showFigure(figure, units)}</span>
      </summary>
      <div className="basis">
        <p>{basisLine(figure.basis)}</p>
        {figure.assumed.map((words) => (
          <p key={words}>Assumed: {assumedWords(words)}</p>
        ))}
      </div>
    </details>
  );
};

/** A fact that needs no basis: a count, a name. */
export const PlainLine = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div className="figure figure-plain">
    <span>{name}</span>
    <span className="value">{children}</span>
  </div>
);
