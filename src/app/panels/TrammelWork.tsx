import { holds } from '../../core/job/jobSchema.ts';
import type { BaySwing, Trammel } from '../../core/trammel/result.ts';
import { showAxial, showFigure, showLength, showWork } from '../../present/show.ts';
import { clusterWords } from '../../present/words/names.ts';
import { holdWords, verdictWords } from '../../present/words/record.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine } from '../parts/FigureLine.tsx';
import { usePrefs } from '../state/prefs.ts';
import { selectAll, setView, useView } from '../state/view.ts';

const actionWords = { spread: 'Spread', draw: 'Draw in' } as const;

const swingWords = {
  sag: 'aft ring down',
  sweep: 'aft ring to the right',
  twist: 'right side of the aft ring up',
  narrowed: 'narrower',
  shortened: 'shorter',
} as const satisfies Record<BaySwing['shown'][number], string>;

const swingFields = {
  sag: 'sagIn',
  sweep: 'sweepIn',
  twist: 'twistRad',
  narrowed: 'narrowedIn',
  shortened: 'shortenedIn',
} as const satisfies Record<BaySwing['shown'][number], string>;

/** What the readings ask for: distances to spread or draw, and how each bay sits against the drawing. */
export const Work = ({ trammel }: { readonly trammel: Trammel }) => {
  const units = usePrefs((prefs) => prefs.units);
  const spread = (trammel.spread ?? []).filter(({ verdict }) => verdict === 'outside');
  const swing = (trammel.swing ?? []).filter(({ shown }) => shown.length > 0);
  return (
    <>
      {spread.length > 0 && (
        <section className="stack tight" aria-label="To spread or draw">
          <h2>To spread or draw</h2>
          <Cautions step="spreading" />
          <ul className="entries">
            {spread.slice(0, 8).map((one) => (
              <li key={one.target}>
                <div className="entry-head">
                  <button type="button" className="link" onClick={() => selectAll([one.from, one.to])}>
                    {one.target}
                  </button>
                  <strong>
                    {actionWords[one.action]} {showWork(Math.abs(one.amountIn.value), units)}
                  </strong>
                </div>
                <FigureLine name={`Stands ${one.stands}, adjusted`} figure={one.foundIn} />
                <span className="small soft">
                  {verdictWords[one.verdict]}
                  {one.forceLbf
                    ? `; about ${showAxial(Math.abs(one.forceLbf.value)).split(' ').slice(0, 2).join(' ')} to hold it there, elastic`
                    : ''}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {swing.length > 0 && (
        <section className="stack tight" aria-label="How the bays sit">
          <h2>How the bays sit against the drawing</h2>
          {swing.map(({ bay, figures, shown }) => (
            <div key={bay} className="figures">
              <h3>Bay {bay}</h3>
              {shown.map((one) => {
                const figure = figures?.[swingFields[one]];
                return figure ? (
                  <FigureLine
                    key={one}
                    name={swingWords[one]}
                    figure={figure}
                    text={showFigure(figure, units)}
                  />
                ) : null;
              })}
            </div>
          ))}
        </section>
      )}
    </>
  );
};

/** Distances still to be read so that the shape is fixed and a misreading shows. */
export const Plan = ({ trammel }: { readonly trammel: Trammel }) => {
  const units = usePrefs((prefs) => prefs.units);
  const left = trammel.plan?.readings.filter(({ read }) => !read) ?? [];
  if (left.length === 0) return null;
  return (
    <details>
      <summary>Still to measure: {left.length} distances fix the shape and let a misreading show</summary>
      <ol className="entries small">
        {left.map((one) => (
          <li key={one.target}>
            <div className="entry-head">
              <button type="button" className="link" onClick={() => selectAll([one.from, one.to])}>
                {one.target}
              </button>
              <span>{showLength(one.lengthIn, units)}</span>
            </div>
            <span className="soft">
              {clusterWords(one.from)} to {clusterWords(one.to)};{' '}
              {one.purpose === 'fixes' ? 'fixes the shape' : 'a spare that checks the others'}
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
};

/** The shape the readings of one hold give, over the shape as drawn; how much it is enlarged is printed in the picture. */
export const FoundShape = ({ trammel }: { readonly trammel: Trammel }) => {
  const found = useView((view) => view.found);
  const measured = holds.filter((hold) => trammel.byHold[hold] !== undefined);
  if (measured.length === 0) return null;
  return (
    <div className="fields">
      <label className="field">
        <span className="caption">Shape in the picture</span>
        <select
          value={found.hold ?? ''}
          onChange={(e) =>
            setView({ found: { ...found, hold: holds.find((hold) => hold === e.target.value) ?? null } })
          }
        >
          <option value="">as drawn</option>
          {measured.map((hold) => (
            <option key={hold} value={hold}>
              measured {holdWords[hold]}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span className="caption">Moves drawn</span>
        <select
          value={found.factor}
          disabled={found.hold === null}
          onChange={(e) => setView({ found: { ...found, factor: Number(e.target.value) as 1 | 10 | 50 } })}
        >
          <option value={1}>true</option>
          <option value={10}>10 times</option>
          <option value={50}>50 times</option>
        </select>
      </label>
    </div>
  );
};
