import { lazy, Suspense, useMemo, useState } from 'react';
import type { Mark } from '../../core/walkRound/result.ts';
import { ErrorEdge } from '../parts/ErrorEdge.tsx';
import { useStill } from '../picture/useStill.ts';
import type { Light, SceneProps, ViewAsk, ViewName } from '../scene/sceneProps.ts';
import { usePrefs } from '../state/prefs.ts';
import { benchPictureText as text } from '../text/modelBench.ts';
import { pickOnBench, useDraft, useShownTruss } from './draft.ts';

const Scene = lazy(async () => ({ default: (await import('../scene/Scene.tsx')).Scene }));

const viewWords = text.views satisfies Partial<Record<ViewName, string>>;

/** A tube with no state: neither found, nor looked at, nor decided. */
const plain = { day: '#5d6a72', night: '#a9b6bd', outdoor: '#33393d' } as const satisfies Record<
  Light,
  string
>;

/** The picture dots what bears no mark. On the bench that says assumed; the rest is drawn solid, in no state's colour. */
const drawnSolid = (id: string): Mark => ({
  id,
  kind: 'member',
  state: 'lookedAt',
  findings: [],
  damage: [],
  finishRemoved: false,
});
const noGhosts: ReadonlySet<string> = new Set();

/** The truss on the bench: it follows each key press, and what is touched comes to hand. */
export const BenchPicture = () => {
  const truss = useShownTruss();
  const picked = useDraft((draft) => draft.picked);
  const { light, units } = usePrefs();
  const still = useStill();
  const [camera, setCamera] = useState<ViewAsk>({ view: 'threeQuarter', fit: 'all', turn: 0 });
  const [labels, setLabels] = useState<SceneProps['labels']>('clusters');
  const [marks, colours] = useMemo(() => {
    const guessed = new Set(truss.clusters.filter((c) => c.assumed).map((c) => c.id));
    const isPoint = new Set(truss.clusters.map((c) => c.id));
    const sure = [
      ...truss.members.filter((m) => !guessed.has(m.from) && !guessed.has(m.to)),
      ...truss.clusters.filter((c) => !c.assumed),
    ];
    return [
      new Map(sure.map(({ id }) => [id, drawnSolid(id)] as const).filter(([id]) => !isPoint.has(id))),
      new Map(sure.map(({ id }) => [id, plain[light]])),
    ];
  }, [truss, light]);
  const picks = useMemo(() => new Set(picked), [picked]);
  const ask = (view: ViewName | 'keep'): void => setCamera({ view, fit: 'all', turn: camera.turn + 1 });
  return (
    <section className="bench-picture" aria-label={text.picture}>
      <div className="toolbar" role="toolbar" aria-label={text.view}>
        <div className="segments">
          {(Object.keys(viewWords) as (keyof typeof viewWords)[]).map((view) => (
            <button key={view} type="button" aria-pressed={camera.view === view} onClick={() => ask(view)}>
              {viewWords[view]}
            </button>
          ))}
          <button type="button" onClick={() => ask('keep')}>
            {text.fit}
          </button>
        </div>
        <select
          aria-label={text.names}
          value={labels}
          onChange={(e) => setLabels(e.target.value as SceneProps['labels'])}
        >
          <option value="clusters">{text.named.clusters}</option>
          <option value="members">{text.named.members}</option>
          <option value="selection">{text.named.selection}</option>
          <option value="none">{text.named.none}</option>
        </select>
      </div>
      {truss.members.length === 0 ? (
        <p className="empty">{text.empty}</p>
      ) : (
        <ErrorEdge words={text.failed}>
          <Suspense fallback={<p className="empty">{text.coming}</p>}>
            <div className="bench-scene">
              <Scene
                truss={truss}
                marks={marks}
                selected={picks}
                ghosted={noGhosts}
                labels={labels}
                colours={colours}
                scaleUnit={units === 'mm' ? 'mm' : 'in'}
                light={light}
                view={camera}
                reducedMotion={still}
                onPick={(hit) => pickOnBench(hit?.id ?? null)}
              />
            </div>
          </Suspense>
        </ErrorEdge>
      )}
    </section>
  );
};
