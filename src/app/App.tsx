import { type ComponentType, type DragEvent, lazy, Suspense, useEffect, useRef } from 'react';
import { pressKey } from './commands.ts';
import { saveCopy } from './handout.ts';
import { openFile } from './opening.ts';
import { Inspector } from './panels/Inspector.tsx';
import { Picture } from './panels/Picture.tsx';
import { Announcer } from './parts/Announcer.tsx';
import { ErrorEdge } from './parts/ErrorEdge.tsx';
import { Head } from './parts/Head.tsx';
import { Legend } from './parts/Legend.tsx';
import { Newer } from './parts/Newer.tsx';
import { Route } from './parts/Route.tsx';
import { Toolbar } from './parts/Toolbar.tsx';
import { WorkLine } from './parts/Waiting.tsx';
import { useDialog } from './state/dialog.ts';
import { useJob } from './state/job.ts';
import { useOnBench } from './state/onBench.ts';
import { usePrefs } from './state/prefs.ts';
import { useSaved } from './state/saved.ts';
import { type Route as RouteName, useView } from './state/view.ts';
import { routeText, frameText as text } from './text/frame.ts';

/** Panels come when the route gets there, so that the picture is not kept waiting. */
const panels: { readonly [R in RouteName]: ComponentType } = {
  start: lazy(async () => ({ default: (await import('./panels/Start.tsx')).StartPanel })),
  walkRound: lazy(async () => ({ default: (await import('./panels/WalkRound.tsx')).WalkRoundPanel })),
  loadPath: lazy(async () => ({ default: (await import('./panels/LoadPath.tsx')).LoadPathPanel })),
  trammel: lazy(async () => ({ default: (await import('./panels/Trammel.tsx')).TrammelPanel })),
  decide: lazy(async () => ({ default: (await import('./panels/DecidePanel.tsx')).DecidePanel })),
  plan: lazy(async () => ({ default: (await import('./panels/Plan.tsx')).PlanPanel })),
  estimate: lazy(async () => ({ default: (await import('./panels/Estimate.tsx')).EstimatePanel })),
  relieve: lazy(async () => ({ default: (await import('./panels/Relieve.tsx')).RelievePanel })),
  straighten: lazy(async () => ({ default: (await import('./panels/Straighten.tsx')).StraightenPanel })),
  splice: lazy(async () => ({ default: (await import('./panels/Splice.tsx')).SplicePanel })),
  record: lazy(async () => ({ default: (await import('./panels/Record.tsx')).RecordPanel })),
  practice: lazy(async () => ({ default: (await import('./practice/PracticePanel.tsx')).PracticePanel })),
  bench: lazy(async () => ({ default: (await import('./panels/Bench.tsx')).BenchPanel })),
};

const ModelBench = lazy(async () => ({ default: (await import('./bench/ModelBench.tsx')).ModelBench }));

const TrussTable = lazy(async () => ({ default: (await import('./panels/TrussTable.tsx')).TrussTable }));

const PracticeBanner = lazy(async () => ({
  default: (await import('./parts/PracticeBanner.tsx')).PracticeBanner,
}));

const Refused = lazy(async () => ({ default: (await import('./parts/Refused.tsx')).Refused }));

const KeySheet = lazy(async () => ({ default: (await import('./parts/KeySheet.tsx')).KeySheet }));

const dropped = (event: DragEvent): void => {
  event.preventDefault();
  const file = event.dataTransfer.files[0];
  if (file) void openFile(file);
};

/** The sheet: title block above, route at the left, truss in the middle, card at the right, table below. */
export const App = () => {
  const light = usePrefs((prefs) => prefs.light);
  const hand = usePrefs((prefs) => prefs.hand);
  const dialog = useDialog((state) => state.open);
  const { route, middle } = useView();
  useEffect(() => {
    document.documentElement.dataset.light = light;
  }, [light]);
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (!useOnBench.getState().open && pressKey(event)) event.preventDefault();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);
  const selected = useView((view) => view.selected);
  const card = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is in hand stands at the top of the card
  useEffect(() => {
    card.current?.scrollTo(0, 0);
  }, [selected, route]);
  const onBench = useOnBench((bench) => bench.open);
  const Panel = panels[route];
  if (onBench)
    return (
      <ErrorEdge words={text.benchFailed}>
        <Suspense fallback={null}>
          <ModelBench />
        </Suspense>
      </ErrorEdge>
    );
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a file may be dropped anywhere; opening by button and key does the same
    <div
      className="sheet"
      data-middle={middle}
      data-hand={hand}
      data-route={route}
      onDragOver={(e) => e.preventDefault()}
      onDrop={dropped}
    >
      <Head />
      <Notices />
      <Route />
      <main className="middle" aria-label={text.truss}>
        <Toolbar />
        <section className="picture" aria-label={text.picture} hidden={middle === 'table'}>
          <Picture />
        </section>
        <Legend />
        <Suspense fallback={null}>{middle !== 'picture' && <TrussTable />}</Suspense>
      </main>
      <aside className="card" aria-label={routeText[route]}>
        <WorkLine />
        <div className="card-body" ref={card}>
          {route !== 'practice' && <Inspector />}
          <ErrorEdge key={route} words={text.partFailed}>
            <Suspense fallback={null}>
              <Panel />
            </Suspense>
          </ErrorEdge>
        </div>
      </aside>
      <Announcer />
      <Suspense fallback={null}>{dialog === 'keys' && <KeySheet />}</Suspense>
    </div>
  );
};

/** What must be seen from any part of the route: practice mark, failed saving, a change that was refused. */
const Notices = () => {
  const { message, state } = useSaved();
  const purpose = useJob((job) => job.job?.purpose);
  const refused = useJob((job) => job.refused.length > 0);
  return (
    <div className="notices">
      <Newer />
      <Suspense fallback={null}>{purpose === 'practice' && <PracticeBanner />}</Suspense>
      {message !== null && (
        <div className="banner row" role="alert">
          <span>{message}</span>
          {state === 'failed' && (
            <button type="button" onClick={() => void saveCopy()}>
              {text.saveCopy}
            </button>
          )}
          <button type="button" onClick={() => useSaved.setState({ message: null })}>
            {text.close}
          </button>
        </div>
      )}
      <Suspense fallback={null}>{refused && <Refused />}</Suspense>
    </div>
  );
};
