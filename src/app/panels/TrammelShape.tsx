import { useState } from 'react';
import { holds } from '../../core/job/jobSchema.ts';
import type { Trammel } from '../../core/trammel/result.ts';
import { headText } from '../../present/table.ts';
import { ellipsoidsTable } from '../../present/tables/ellipsoids.ts';
import { shapeTable } from '../../present/tables/trammel.ts';
import { holdWords } from '../../present/words/record.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, setView, useView } from '../state/view.ts';
import { shapeText } from '../text/trammelShape.ts';

const factors = [1, 5, 20, 50] as const;

/** The shape that the readings of one hold give over the shape as drawn, and how surely each cluster is placed. */
export const TrammelShape = ({ trammel }: { readonly trammel: Trammel }) => {
  const found = useView((view) => view.found);
  const [typed, setTyped] = useState('');
  const measured = holds.filter((hold) => trammel.byHold[hold] !== undefined);
  if (measured.length === 0) return null;
  const setFactor = (factor: number): void => setView({ found: { ...found, factor } });
  return (
    <section className="stack tight" aria-label={shapeText.title}>
      <h2>{shapeText.title}</h2>
      <div className="fields">
        <label className="field wide">
          <span className="caption">{shapeText.inPicture}</span>
          <select
            value={found.hold ?? ''}
            onChange={(e) =>
              setView({ found: { ...found, hold: holds.find((hold) => hold === e.target.value) ?? null } })
            }
          >
            <option value="">{shapeText.asDrawn}</option>
            {measured.map((hold) => (
              <option key={hold} value={hold}>
                {shapeText.asMeasured(holdWords[hold])}
              </option>
            ))}
          </select>
        </label>
        {found.hold !== null && (
          <div className="field wide">
            <span className="caption">{shapeText.factor(found.factor)}</span>
            <div className="row">
              <div className="segments">
                {factors.map((factor) => (
                  <button
                    key={factor}
                    type="button"
                    aria-pressed={found.factor === factor}
                    onClick={() => setFactor(factor)}
                  >
                    {shapeText.times(factor)}
                  </button>
                ))}
              </div>
              <input
                className="factor"
                aria-label={shapeText.otherFactor}
                inputMode="decimal"
                placeholder={shapeText.otherHint}
                value={typed}
                onChange={(e) => {
                  setTyped(e.target.value);
                  const factor = Number(e.target.value);
                  if (factor > 0 && factor <= 500) setFactor(factor);
                }}
              />
            </div>
          </div>
        )}
      </div>
      <Placed />
    </section>
  );
};

/** Moves and 95 % ellipsoids of the latest hold, as the report prints them. */
const Placed = () => {
  const { assessment, forJob } = useAnswer();
  const units = usePrefs((prefs) => prefs.units);
  if (!assessment || !forJob) return null;
  const showing = { job: forJob, assessment, units };
  const latest = assessment.trammel.latest;
  const words = latest && holdWords[latest];
  const tables = [
    { table: shapeTable(showing), only: ['cluster', 'x', 'y', 'z', 'moved'] },
    { table: ellipsoidsTable(showing), only: ['cluster', 'first', 'second', 'third', 'way'] },
  ];
  return (
    <>
      {tables.map(({ table, only }) => {
        const columns = table.columns
          .map((head, at) => ({ head, at }))
          .filter(({ head }) => only.includes(head.id));
        const when = table.columns.findIndex(({ id }) => id === 'hold');
        return (
          <details key={table.name}>
            <summary>{table.title}</summary>
            <div className="stack tight">
              <p className="small soft">{table.note}</p>
              <div className="table-wide">
                <table className="pairs">
                  <thead>
                    <tr>
                      {columns.map(({ head }) => (
                        <th key={head.id} scope="col">
                          {headText(head)}
                        </th>
                      ))}
                    </tr>
                  </thead>
                  <tbody>
                    {table.rows
                      .filter((row) => row.cells[when]!.text === words)
                      .map((row) => (
                        <tr key={row.id}>
                          {columns.map(({ head, at }) => (
                            <td key={head.id}>
                              {head.id === 'cluster' ? (
                                <button type="button" className="link" onClick={() => select(row.id!)}>
                                  {row.cells[at]!.text}
                                </button>
                              ) : (
                                row.cells[at]!.text
                              )}
                            </td>
                          ))}
                        </tr>
                      ))}
                  </tbody>
                </table>
              </div>
            </div>
          </details>
        );
      })}
    </>
  );
};
