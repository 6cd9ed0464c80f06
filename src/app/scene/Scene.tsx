import { lazy, Suspense, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { pictureText } from '../text/frame.ts';
import { underNote } from './badges.ts';
import { Camera, type Stand } from './Camera.tsx';
import { Clusters } from './Clusters.tsx';
import { type Drawn, drawn as drawnOf, middleOf, pointsOf } from './drawn.ts';
import { drawnStates } from './drawnStates.ts';
import { floorOf } from './floor.ts';
import { keyTurn, listen } from './gestures.ts';
import { Halo } from './Halo.tsx';
import { inks } from './inks.ts';
import { Lettering } from './Lettering.tsx';
import { makeMaterials, setInks } from './materials.ts';
import { asHit, candidates, type LastTap, sightAt, slackPx, tapped, touchable } from './pick.ts';
import { AsDrawn, LayoutTable, OtherWay } from './Sheet.tsx';
import { Stage } from './Stage.tsx';
import { says } from './says.ts';
import type { SceneProps, ViewAsk } from './sceneProps.ts';
import { Tags } from './Tags.tsx';
import { Tubes } from './Tubes.tsx';
import {
  basis,
  fitTo,
  namedViews,
  project,
  type ScreenPoint,
  type Size,
  type Turntable,
} from './turntable.ts';

/** Wide lines come with the first load that is drawn. */
const Arrows = lazy(async () => ({ default: (await import('./Arrows.tsx')).Arrows }));

const margin = { x: 56, top: 44, bottom: 76 };
/** One short tube fitted alone still shows what it is welded to. Inches. */
const LEAST_FITTED = 24;

const start: Turntable = { target: [0, 0, 0], ...namedViews.threeQuarter, scale: 4 };

const topFor = (shape: SceneProps['shape']): number => (shape ? underNote : margin.top);

/** Where an ask for a view leads. */
export const answer = (
  from: Turntable,
  ask: Pick<ViewAsk, 'view' | 'fit'>,
  size: Size,
  d: Drawn,
  selected: ReadonlySet<string>,
  top = margin.top,
): Turntable => {
  const turned = ask.view === 'keep' ? from : { ...from, ...namedViews[ask.view] };
  if (ask.fit === 'none') return turned;
  const chosen = ask.fit === 'selection' ? pointsOf(d, selected) : [];
  return fitTo(turned, size, chosen.length > 0 ? chosen : pointsOf(d), { ...margin, top }, LEAST_FITTED);
};

/** The truss as a sheet that turns. It shows what it is given and says what was touched. */
export const Scene = (props: SceneProps) => {
  const { truss, shape, light, view, selected, reducedMotion } = props;
  const box = useRef<HTMLDivElement>(null);
  const overlay = useRef<HTMLCanvasElement>(null);
  const stand = useRef<Stand>({
    now: start,
    move: null,
    size: { width: 1, height: 1 },
    frames: 0,
    calls: () => 0,
  });
  const redraw = useRef(() => {});
  const hovered = useRef<string | null>(null);
  const lastTap = useRef<LastTap | null>(null);
  /** What it was fitted to: a new size of the window fits again until a hand has moved the picture. */
  const asFitted = useRef<ViewAsk['fit']>('all');
  const [missing, setMissing] = useState(false);

  const d = useMemo(() => drawnOf(truss, shape), [truss, shape]);
  const floor = useMemo(() => floorOf(truss), [truss]);
  const memberStates = useMemo(() => drawnStates(d.memberIds, props.marks), [d, props.marks]);
  const materials = useMemo(makeMaterials, []);
  const all = useMemo(() => Object.values(materials), [materials]);
  const things = useMemo(() => touchable(d), [d]);
  const now = useRef({ props, d, things });
  now.current = { props, d, things };

  useLayoutEffect(() => {
    setInks(materials, inks[light]);
    redraw.current();
  }, [materials, light]);

  const go = useCallback((to: Turntable, atOnce: boolean) => {
    const s = stand.current;
    s.move = atOnce ? null : { from: s.now, to, began: null };
    if (atOnce) s.now = to;
    redraw.current();
  }, []);

  const asked = useRef<number | null>(null);
  const of = useMemo(() => truss.clusters.map(({ id }) => id).join(' '), [truss]);
  const shown = useRef(of);
  useLayoutEffect(() => {
    const first = asked.current === null;
    const other = shown.current !== of;
    shown.current = of;
    if (asked.current === view.turn && !other) return;
    asked.current = view.turn;
    asFitted.current = other ? 'all' : view.fit;
    const ask = other ? ({ view: 'keep', fit: 'all' } as const) : view;
    go(
      answer(stand.current.now, ask, stand.current.size, d, selected, topFor(shape)),
      first || other || reducedMotion,
    );
  }, [view, of, d, selected, shape, reducedMotion, go]);

  const resized = useCallback(
    (size: Size) => {
      const s = stand.current;
      s.size = size;
      const { d: all, props: p } = now.current;
      const ask = { view: 'keep', fit: asFitted.current } as const;
      if (asFitted.current !== 'none')
        go(answer(s.move?.to ?? s.now, ask, size, all, p.selected, topFor(p.shape)), true);
      redraw.current();
    },
    [go],
  );

  const turn = useCallback((change: (v: Turntable) => Turntable) => {
    const s = stand.current;
    asFitted.current = 'none';
    s.move = null;
    s.now = change(s.now);
    redraw.current();
  }, []);

  const under = useCallback((at: ScreenPoint, slack: number, most?: number) => {
    const { now: v, size } = stand.current;
    const { props: p, d: shown, things: parts } = now.current;
    return candidates(parts, p.ghosted, sightAt(v, size, at, shown), 1 / v.scale, slack, most);
  }, []);

  useEffect(() => {
    return listen(box.current!, {
      size: () => stand.current.size,
      turn,
      key: (event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return false;
        const change = keyTurn(event.key, stand.current.size);
        if (change !== null) turn(change);
        return change !== null;
      },
      tap: (at, kind, additive) => {
        const { chosen, tap } = tapped(under(at, slackPx[kind]), at, lastTap.current);
        lastTap.current = tap;
        now.current.props.onPick(chosen && asHit(chosen, additive || (now.current.props.adding ?? false)));
      },
      hover: (at) => {
        const id = at === null ? null : (under(at, slackPx.mouse / 2, 1)[0]?.id ?? null);
        box.current!.style.cursor = id === null ? 'grab' : 'pointer';
        if (id === hovered.current) return;
        hovered.current = id;
        redraw.current();
      },
    });
  }, [turn, under]);

  useEffect(() => {
    window.__tubewright = {
      project: (id) => {
        const place = middleOf(now.current.d, id);
        const rect = box.current?.getBoundingClientRect();
        if (place === null || rect === undefined) return null;
        const { now: v, size } = stand.current;
        const p = project(basis(v), v, size, place);
        return { x: p.x + rect.left, y: p.y + rect.top };
      },
      pick: (at) => {
        const rect = box.current!.getBoundingClientRect();
        return under({ x: at.x - rect.left, y: at.y - rect.top }, slackPx.mouse)[0]?.id ?? null;
      },
      frames: () => ({ drawn: stand.current.frames, calls: stand.current.calls() }),
    };
    return () => {
      delete window.__tubewright;
    };
  }, [under]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: nothing else is said
  const words = useMemo(() => says(props), [truss, props.marks, selected, shape]);
  const ready = useCallback((ask: () => void) => {
    redraw.current = ask;
  }, []);

  return (
    <div
      ref={box}
      role="img"
      aria-label={words}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture takes the arrow keys when it has the focus
      tabIndex={0}
      style={{
        position: 'relative',
        width: '100%',
        height: '100%',
        minHeight: 0,
        touchAction: 'none',
        userSelect: 'none',
        outlineOffset: -3,
        background: inks[light].paper,
        color: inks[light].ink,
      }}
    >
      {missing ? (
        <p style={{ position: 'absolute', inset: '1rem', margin: 0 }}>{pictureText.noWebGl}</p>
      ) : (
        <Stage
          onSize={resized}
          onUnavailable={() => {
            setMissing(true);
            props.onUnavailable?.();
          }}
        >
          <Camera stand={stand} drawn={d} materials={all} onReady={ready} />
          <LayoutTable floor={floor} inks={inks[light]} />
          {shape && <AsDrawn truss={truss} inks={inks[light]} />}
          {shape?.bothWays && <OtherWay truss={truss} shape={shape} inks={inks[light]} />}
          {props.arrows && props.arrows.length > 0 && (
            <Suspense fallback={null}>
              <Arrows drawn={d} arrows={props.arrows} inks={inks[light]} />
            </Suspense>
          )}
          <Halo drawn={d} selected={selected} tube={materials.haloTube} ball={materials.haloBall} />
          <Tubes drawn={d} material={materials.tube} memberStates={memberStates} {...dress(props)} />
          <Tags drawn={d} material={materials.band} memberStates={memberStates} {...dress(props)} />
          <Clusters drawn={d} material={materials.ball} {...dress(props)} />
          <Lettering stand={stand} canvas={overlay} hovered={hovered} drawn={d} floor={floor} shown={props} />
        </Stage>
      )}
      <canvas
        ref={overlay}
        style={{ position: 'absolute', inset: 0, width: '100%', height: '100%', pointerEvents: 'none' }}
      />
    </div>
  );
};

const dress = ({ marks, ghosted, colours, light }: SceneProps) => ({
  marks,
  ghosted,
  light,
  ...(colours === undefined ? {} : { colours }),
});
