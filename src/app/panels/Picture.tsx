import { lazy, Suspense, useMemo } from 'react';
import { ErrorEdge } from '../parts/ErrorEdge.tsx';
import type { Laid } from '../picture/laid.ts';
import { OverlayStrip } from '../picture/OverlayStrip.tsx';
import { pinsOf } from '../picture/pins.ts';
import { useLater } from '../picture/useLater.ts';
import { usePlanState } from '../picture/usePlanState.ts';
import { useSpliceMarks } from '../picture/useSpliceMarks.ts';
import { useStill } from '../picture/useStill.ts';
import { useSwing } from '../picture/useSwing.ts';
import { useDrawn } from '../practice/useDrawn.ts';
import type { Hit, SceneCut, SceneShape } from '../scene/sceneProps.ts';
import { useAnswer } from '../state/answer.ts';
import { ghostedIds } from '../state/apart.ts';
import { useEntry } from '../state/entry.ts';
import { useOverlay } from '../state/overlay.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll, setView, useView } from '../state/view.ts';
import { pictureText as text } from '../text/frame.ts';

const Scene = lazy(async () => ({ default: (await import('../scene/Scene.tsx')).Scene }));

const picked = (hit: Hit | null): void => {
  if (!hit) {
    if (!useView.getState().several) selectAll([]);
  } else select(hit.id, hit.additive || useView.getState().several, hit.alongIn ?? null);
};

/** The overlay's shape; a movement at its place in the swing, or both its ends when it stands still. */
const swung = (laid: Laid | null, swing: number, moving: boolean): SceneShape | undefined => {
  const shape = laid?.shape;
  if (!shape || !laid.swings) return shape;
  return moving ? { ...shape, factor: shape.factor * swing } : { ...shape, bothWays: true };
};

/** Nothing is handed over for nothing: the scene tells the two apart. */
const cutsOf = (cutMarks: readonly SceneCut[] | null | undefined) => (cutMarks ? { cutMarks } : {});

const showTable = (): void => setView({ middle: 'table' });

/** The truss in the middle: what is selected, faded, named and measured is drawn; what is touched is selected. */
export const Picture = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const trammel = useAnswer((answer) => answer.assessment?.trammel);
  const { selected, apart, hidden, labels, camera, route, found, several } = useView();
  const { light, units } = usePrefs();
  const motionless = useStill();
  const lit = useEntry((entry) => entry.lit);
  const picks = useMemo(
    () => new Set(route === 'trammel' && selected.length === 0 ? lit : selected),
    [route, selected, lit],
  );
  const planned = usePlanState(route === 'plan');
  const faded = useMemo(
    () => (now ? ghostedIds(now.truss, now.marks, apart, hidden) : new Set<string>()),
    [now, apart, hidden],
  );
  const ghosted = useMemo(() => (planned ? new Set([...faded, ...planned.open]) : faded), [faded, planned]);
  const pins = useMemo(
    () => (now && (route === 'walkRound' || route === 'record') ? pinsOf(now) : []),
    [now, route],
  );
  const measuring = route === 'trammel';
  const linesOf = useLater(measuring, async () => (await import('./trammelLines.ts')).trammelLines);
  const shapeOf = useLater(measuring, async () => (await import('./trammelLines.ts')).foundShape);
  const lines = useMemo(
    () => (now && trammel && measuring && linesOf ? linesOf(now, trammel, selected, lit, units) : []),
    [now, trammel, measuring, linesOf, selected, lit, units],
  );
  const shape = useMemo(
    () => (trammel && measuring && shapeOf ? shapeOf(trammel, found.hold, found.factor) : undefined),
    [trammel, measuring, shapeOf, found],
  );
  const all = useAnswer((answer) => answer.assessment);
  const overlay = useOverlay();
  const overlaid = route === 'relieve' || (route === 'loadPath' && overlay.show !== 'cut');
  const overlayFor = useLater(overlaid, async () => (await import('../picture/overlayFor.ts')).overlayFor);
  const laid = useMemo(
    () =>
      now && all && overlaid && overlayFor
        ? overlayFor({ all, model: now.live.model ?? now.job.model, overlay, light, units })
        : null,
    [now, all, overlaid, overlayFor, overlay, light, units],
  );
  const spliced = useSpliceMarks(route === 'splice');
  const swing = useSwing(laid?.swings === true && overlay.playing && !motionless);
  const bent = useMemo(
    () => swung(laid, swing, overlay.playing && !motionless),
    [laid, swing, overlay.playing, motionless],
  );
  const drawn = useDrawn();
  if (!now) return <p className="empty">{text.noTruss}</p>;
  return (
    <ErrorEdge words={text.cannot}>
      <div className="picture-frame">
        <div className="picture-scene">
          <Suspense fallback={<p className="empty">{text.coming}</p>}>
            <Scene
              truss={now.truss}
              marks={now.marks}
              selected={picks}
              ghosted={ghosted}
              labels={labels}
              lines={planned?.lines ?? lines}
              {...(bent ? { shape: bent } : shape ? { shape } : {})}
              {...(laid?.colours ? { colours: laid.colours } : {})}
              {...(laid?.numbers ? { numbers: laid.numbers } : planned ? { numbers: planned.numbers } : {})}
              {...(laid?.arrows ? { arrows: laid.arrows } : {})}
              {...cutsOf(laid?.cutMarks ?? planned?.cutMarks ?? spliced)}
              scaleUnit={units === 'mm' ? 'mm' : 'in'}
              adding={several}
              onUnavailable={showTable}
              light={light}
              view={camera}
              reducedMotion={motionless}
              pins={pins}
              onPick={picked}
              {...drawn}
            />
          </Suspense>
        </div>
        {(laid ?? planned) && <OverlayStrip strip={(laid ?? planned)!.strip} />}
      </div>
      {faded.size > 0 && (
        <p className="faded small">
          {text.faded(faded.size)}{' '}
          {apart && (
            <button
              type="button"
              className="link"
              onClick={() =>
                setView({ apart: { ...apart, how: apart.how === 'isolate' ? 'ghost' : 'isolate' } })
              }
            >
              {apart.how === 'isolate' ? text.fadeThese : text.fadeRest}
            </button>
          )}
          <button type="button" className="link" onClick={() => setView({ apart: null, hidden: [] })}>
            {text.showAll}
          </button>
        </p>
      )}
    </ErrorEdge>
  );
};
