import type { Trammel } from '../../core/trammel/result.ts';
import { showFigure } from '../../present/show.ts';
import { swingWords } from '../../present/words/swing.ts';
import { usePrefs } from '../state/prefs.ts';
import { swingText } from '../text/trammelSpread.ts';

/** How each bay read sits against the drawing, in the trade's words. */
export const BaySwings = ({ trammel }: { readonly trammel: Trammel }) => {
  const units = usePrefs((prefs) => prefs.units);
  const swing = trammel.swing ?? [];
  if (swing.length === 0) return null;
  const told = swing.filter((s) => s.unknown.length > 0 || s.shown.length > 0);
  return (
    <section className="stack tight" aria-label={swingText.title}>
      <h2>{swingText.title}</h2>
      {told.length === 0 && <p className="small">{swingText.asDrawn}</p>}
      <div className="figures">
        {told.map((s) => (
          <details key={s.bay} className="figure">
            <summary>
              <span>{swingText.bay(s.bay)}</span>
              <span className={s.unknown.length > 0 ? 'small soft' : 'value'}>{swingWords(s, units)}</span>
            </summary>
            <div className="basis">
              <p>{swingText.against}</p>
              {s.figures && (
                <>
                  <p>{swingText.sag(showFigure(s.figures.sagIn, units))}</p>
                  <p>{swingText.sweep(showFigure(s.figures.sweepIn, units))}</p>
                  <p>{swingText.twist(showFigure(s.figures.twistRad, units))}</p>
                  {s.figures.narrowedIn && (
                    <p>{swingText.narrowed(showFigure(s.figures.narrowedIn, units))}</p>
                  )}
                  <p>{swingText.shortened(showFigure(s.figures.shortenedIn, units))}</p>
                </>
              )}
            </div>
          </details>
        ))}
      </div>
    </section>
  );
};
