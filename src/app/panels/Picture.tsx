import { lazy, Suspense, useMemo, useSyncExternalStore } from 'react';
import { ErrorEdge } from '../parts/ErrorEdge.tsx';
import type { Hit } from '../scene/sceneProps.ts';
import { useAnswer } from '../state/answer.ts';
import { ghostedIds } from '../state/apart.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll, setView, useView } from '../state/view.ts';
import { foundShape, trammelLines } from './trammelLines.ts';

const Scene = lazy(async () => ({ default: (await import('../scene/Scene.tsx')).Scene }));

const still = matchMedia('(prefers-reduced-motion: reduce)');
const useStill = (): boolean =>
  useSyncExternalStore(
    (changed) => {
      still.addEventListener('change', changed);
      return () => still.removeEventListener('change', changed);
    },
    () => still.matches,
  );

const picked = (hit: Hit | null): void => {
  if (!hit) {
    if (!useView.getState().several) selectAll([]);
  } else select(hit.id, hit.additive || useView.getState().several, hit.alongIn ?? null);
};

const showTable = (): void => setView({ middle: 'table' });

/** The truss in the middle: what is selected, faded, named and measured is drawn; what is touched is selected. */
export const Picture = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const trammel = useAnswer((answer) => answer.assessment?.trammel);
  const { selected, apart, hidden, labels, camera, route, found, several } = useView();
  const { light, units } = usePrefs();
  const motionless = useStill();
  const picks = useMemo(() => new Set(selected), [selected]);
  const ghosted = useMemo(
    () => (now ? ghostedIds(now.truss, now.marks, apart, hidden) : new Set<string>()),
    [now, apart, hidden],
  );
  const lines = useMemo(
    () => (now && trammel && route === 'trammel' ? trammelLines(now, trammel, selected, units) : []),
    [now, trammel, route, selected, units],
  );
  const shape = useMemo(
    () => (trammel && route === 'trammel' ? foundShape(trammel, found.hold, found.factor) : undefined),
    [trammel, route, found],
  );
  if (!now) return <p className="empty">No truss is open.</p>;
  return (
    <ErrorEdge words="The picture cannot be drawn here. The table does everything the picture does.">
      <Suspense fallback={<p className="empty">The picture is being set up …</p>}>
        <Scene
          truss={now.truss}
          marks={now.marks}
          selected={picks}
          ghosted={ghosted}
          labels={labels}
          lines={lines}
          {...(shape ? { shape } : {})}
          scaleUnit={units === 'mm' ? 'mm' : 'in'}
          adding={several}
          onUnavailable={showTable}
          light={light}
          view={camera}
          reducedMotion={motionless}
          onPick={picked}
        />
      </Suspense>
      {ghosted.size > 0 && (
        <p className="faded small">
          {ghosted.size} faded{' '}
          {apart && (
            <button
              type="button"
              className="link"
              onClick={() =>
                setView({ apart: { ...apart, how: apart.how === 'isolate' ? 'ghost' : 'isolate' } })
              }
            >
              {apart.how === 'isolate' ? 'Fade these instead' : 'Fade the rest instead'}
            </button>
          )}
          <button type="button" className="link" onClick={() => setView({ apart: null, hidden: [] })}>
            Show all
          </button>
        </p>
      )}
    </ErrorEdge>
  );
};
