import type { ReactNode } from 'react';
import { stock } from '../../core/truss/stock.ts';
import { useDraft, useDraftTruss } from './draft.ts';
import { tubeAsDrawn } from './drawn.ts';

/** The lists that fields offer: sizes of stock, clusters and tubes of the model. Once on the page. */
export const Lists = () => {
  const truss = useDraftTruss();
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  return (
    <>
      <datalist id="stock-sizes">
        {stock.flatMap(({ odIn, wallsIn }) =>
          wallsIn.map((wallIn) => {
            const text = tubeAsDrawn({ odIn, wallIn }, drawnIn);
            return <option key={text} value={text} />;
          }),
        )}
      </datalist>
      <datalist id="bench-clusters">
        {truss.clusters.map(({ id }) => (
          <option key={id} value={id} />
        ))}
      </datalist>
      <datalist id="bench-members">
        {truss.members.map(({ id }) => (
          <option key={id} value={id} />
        ))}
      </datalist>
    </>
  );
};

/** What was entered, a row each, with what can be done to it at its end. */
export const EnteredRows = <Row,>({
  rows,
  nameOf,
  show,
  deeds,
}: {
  readonly rows: readonly Row[];
  /** Names the row in the labels of its buttons. */
  readonly nameOf: (row: Row, at: number) => string;
  readonly show: (row: Row, at: number) => ReactNode;
  /** Words of a button, and what it does; `null` does nothing now. */
  readonly deeds: readonly (readonly [words: string, deed: (row: Row, at: number) => (() => void) | null])[];
}) =>
  rows.length === 0 ? null : (
    <ul className="entries">
      {rows.map((row, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their place
        <li key={at} className="entry-head">
          <span>{show(row, at)}</span>
          <span className="row tight">
            {deeds.map(([words, deedOf]) => {
              const deed = deedOf(row, at);
              return (
                <button
                  key={words}
                  type="button"
                  className="link"
                  disabled={deed === null}
                  aria-label={`${words} ${nameOf(row, at)}`}
                  onClick={deed ?? undefined}
                >
                  {words}
                </button>
              );
            })}
          </span>
        </li>
      ))}
    </ul>
  );
