import { lazy, Suspense } from 'react';
import { stripText } from '../text/strip.ts';
import type { Strip } from './laid.ts';

const PlanBar = lazy(async () => ({ default: (await import('./PlanBar.tsx')).PlanBar }));

/** What the colours over the picture mean: a strip of classes with a number at each border, and what it rests on. */
export const OverlayStrip = ({ strip }: { readonly strip: Strip }) =>
  strip.stages ? (
    <Suspense>
      <PlanBar stages={strip.stages} />
    </Suspense>
  ) : (
    <section className="overlay-strip" aria-label={stripText.region}>
      <strong className="small">{strip.title}</strong>
      {strip.classes && (
        <div className="overlay-scale small">
          {strip.low !== undefined && <span>{strip.low}</span>}
          <ol aria-label={stripText.classes(strip.unit)}>
            {strip.classes.colours.map((colour, k) => (
              <li key={colour}>
                <span className="overlay-swatch" style={{ background: colour }} />
                {k < strip.classes!.borders.length && (
                  <span className="overlay-border">{strip.write?.(strip.classes!.borders[k]!)}</span>
                )}
              </li>
            ))}
          </ol>
          {strip.high !== undefined && <span>{strip.high}</span>}
          <span className="soft">{strip.unit}</span>
        </div>
      )}
      {strip.notes.length > 0 && <span className="small soft overlay-notes">{strip.notes.join(' ')}</span>}
    </section>
  );
