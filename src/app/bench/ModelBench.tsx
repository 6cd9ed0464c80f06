import { type ComponentType, type DragEvent, lazy, Suspense, useEffect, useMemo, useState } from 'react';
import { readModel } from '../../core/job/read.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import { keysOf } from '../commands.ts';
import { ErrorEdge } from '../parts/ErrorEdge.tsx';
import { lightText as lightWords, unitText as unitWords } from '../text/frame.ts';
import { useStill } from '../picture/useStill.ts';
import type { Light, SceneProps, ViewAsk, ViewName } from '../scene/sceneProps.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { BeginModel } from './BeginModel.tsx';
import { BracingPlan } from './BracingPlan.tsx';
import { Distances } from './Distances.tsx';
import {
  closeBench,
  pickOnBench,
  putModel,
  redoDraft,
  type Section,
  sections,
  setDraft,
  undoDraft,
  useDraft,
  useDraftUndo,
  useShownTruss,
} from './draft.ts';
import { Lists } from './fields.tsx';
import { HeldAndLoads } from './HeldAndLoads.tsx';
import { ImportTable } from './ImportTable.tsx';
import { InHand } from './InHand.tsx';
import { OddList } from './OddList.tsx';
import { PointsAndTubes } from './PointsAndTubes.tsx';
import { StationTable } from './StationTable.tsx';
import { TubeSizes } from './TubeSizes.tsx';
import { UseModel } from './UseModel.tsx';
import '../style/modelBench.css';

const Scene = lazy(async () => ({ default: (await import('../scene/Scene.tsx')).Scene }));

const parts: { readonly [S in Section]: readonly [words: string, ComponentType] } = {
  begin: ['Begin', BeginModel],
  stations: ['Stations', StationTable],
  bracing: ['Bracing', BracingPlan],
  tubes: ['Sizes', TubeSizes],
  points: ['Points and tubes', PointsAndTubes],
  loads: ['Held and loaded', HeldAndLoads],
  distances: ['Distances', Distances],
  tables: ['Tables', ImportTable],
  use: ['Use it', UseModel],
};

const viewWords = {
  leftSide: 'Left',
  plan: 'Plan',
  fromAhead: 'Ahead',
  threeQuarter: '¾',
} as const satisfies Partial<Record<ViewName, string>>;

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

const BenchPicture = () => {
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
    <section className="bench-picture" aria-label="Truss picture">
      <div className="toolbar" role="toolbar" aria-label="View">
        <div className="segments">
          {(Object.keys(viewWords) as (keyof typeof viewWords)[]).map((view) => (
            <button key={view} type="button" aria-pressed={camera.view === view} onClick={() => ask(view)}>
              {viewWords[view]}
            </button>
          ))}
          <button type="button" onClick={() => ask('keep')}>
            Fit
          </button>
        </div>
        <select
          aria-label="Names in the picture"
          value={labels}
          onChange={(e) => setLabels(e.target.value as SceneProps['labels'])}
        >
          <option value="clusters">Name clusters</option>
          <option value="members">Name tubes</option>
          <option value="selection">Name what is in hand</option>
          <option value="none">No names</option>
        </select>
      </div>
      {truss.members.length === 0 ? (
        <p className="empty">The truss is drawn here as you type, from the first ring on.</p>
      ) : (
        <ErrorEdge words="The picture cannot be drawn here. Everything can be entered without it.">
          <Suspense fallback={<p className="empty">The picture is being set up …</p>}>
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

/** A model file dropped on the bench lies on it; any other text is taken for a table. */
const dropped = (event: DragEvent): void => {
  event.preventDefault();
  const file = event.dataTransfer.files[0];
  void file?.text().then((text) => {
    const read = readModel(text);
    if (read.ok) putModel(read.value, `model from ${file.name}`);
    else setDraft({ pasted: text, section: 'tables' });
  });
};

const texts = 'input:not([type="checkbox"], [type="radio"]), textarea';

const pressed = (event: KeyboardEvent): void => {
  const keys = keysOf(event);
  // Undo takes back the bench's last change from anywhere but a field in which something is half typed.
  const half =
    event.target instanceof Element && event.target.matches(`${texts}[aria-invalid="true"], textarea`);
  if (half) return;
  if (keys === 'Mod+Z') undoDraft();
  else if (keys === 'Mod+Shift+Z' || keys === 'Mod+Y') redoDraft();
  else return;
  if (document.activeElement instanceof HTMLElement && document.activeElement.matches(texts))
    document.activeElement.blur();
  event.preventDefault();
};

/** The page on which a model is built or changed: one part at a time, the truss and what is odd beside it. */
export const ModelBench = () => {
  const section = useDraft((draft) => draft.section);
  const name = useDraft((draft) => draft.model.name);
  const { units, light } = usePrefs();
  const { undo, redo } = useDraftUndo();
  const [words, Part] = parts[section];
  useEffect(() => {
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a file may be dropped anywhere; opening by button does the same
    <div className="model-bench" onDragOver={(e) => e.preventDefault()} onDrop={dropped}>
      <header className="bench-head">
        <div className="cell">
          <span className="caption">Model bench</span>
          <h1 className="job-name">{name}</h1>
        </div>
        <div className="cell undo-cell">
          <button
            type="button"
            className="quiet"
            disabled={undo === null}
            aria-label={undo === null ? 'Undo: nothing to undo' : `Undo: ${undo}`}
            onClick={undoDraft}
          >
            <span aria-hidden="true">↶</span>
            <span className="undo-words">
              Undo<span className="small soft">{undo ?? 'nothing yet'}</span>
            </span>
          </button>
          <button
            type="button"
            className="quiet redo"
            disabled={redo === null}
            aria-label={redo === null ? 'Redo: nothing to redo' : `Redo: ${redo}`}
            onClick={redoDraft}
          >
            <span aria-hidden="true">↷</span>
            <span className="undo-words">
              Redo<span className="small soft">{redo ?? 'nothing'}</span>
            </span>
          </button>
        </div>
        <div className="cell bench-show">
          <select
            aria-label="Units"
            value={units}
            onChange={(e) => setPrefs({ units: e.target.value as typeof units })}
          >
            {Object.entries(unitWords).map(([value, said]) => (
              <option key={value} value={value}>
                {said}
              </option>
            ))}
          </select>
          <select
            aria-label="Light"
            value={light}
            onChange={(e) => setPrefs({ light: e.target.value as typeof light })}
          >
            {Object.entries(lightWords).map(([value, said]) => (
              <option key={value} value={value}>
                {said}
              </option>
            ))}
          </select>
        </div>
        <div className="cell">
          <button type="button" onClick={closeBench}>
            Back to the job
          </button>
        </div>
      </header>
      <nav className="bench-parts" aria-label="Parts of the bench">
        {sections.map((one) => (
          <button
            key={one}
            type="button"
            className="quiet"
            aria-current={one === section ? 'true' : undefined}
            onClick={() => setDraft({ section: one })}
          >
            {parts[one][0]}
          </button>
        ))}
      </nav>
      <main className="bench-work" aria-label={words} key={section}>
        <h2>{words}</h2>
        <ErrorEdge words="This part of the bench failed. The model is kept; the other parts go on working.">
          <Part />
        </ErrorEdge>
      </main>
      <aside className="bench-side" aria-label="The truss">
        <BenchPicture />
        <InHand />
        <OddList />
      </aside>
      <Lists />
    </div>
  );
};
