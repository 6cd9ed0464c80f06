import { type ComponentType, type DragEvent, useEffect } from 'react';
import { readModel } from '../../core/job/read.ts';
import { keysOf } from '../commands.ts';
import { ErrorEdge } from '../parts/ErrorEdge.tsx';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { lightText as lightWords, unitText as unitWords } from '../text/frame.ts';
import { beginText } from '../text/modelBegin.ts';
import { modelBenchText as text } from '../text/modelBench.ts';
import { BeginModel } from './BeginModel.tsx';
import { BenchPicture } from './BenchPicture.tsx';
import { BracingPlan } from './BracingPlan.tsx';
import { Distances } from './Distances.tsx';
import {
  closeBench,
  putModel,
  redoDraft,
  type Section,
  sections,
  setDraft,
  undoDraft,
  useDraft,
  useDraftUndo,
} from './draft.ts';
import { HeldAndLoads } from './HeldAndLoads.tsx';
import { ImportTable } from './ImportTable.tsx';
import { InHand } from './InHand.tsx';
import { Lists } from './Lists.tsx';
import { takeText } from './modelFile.ts';
import { OddList } from './OddList.tsx';
import { PointsAndTubes } from './PointsAndTubes.tsx';
import { StationTable } from './StationTable.tsx';
import { TubeSizes } from './TubeSizes.tsx';
import { UseModel } from './UseModel.tsx';
import '../style/modelBench.css';

const parts: { readonly [S in Section]: readonly [words: string, ComponentType] } = {
  begin: [text.part.begin, BeginModel],
  stations: [text.part.stations, StationTable],
  bracing: [text.part.bracing, BracingPlan],
  tubes: [text.part.tubes, TubeSizes],
  points: [text.part.points, PointsAndTubes],
  loads: [text.part.loads, HeldAndLoads],
  distances: [text.part.distances, Distances],
  tables: [text.part.tables, ImportTable],
  use: [text.part.use, UseModel],
};

/** A model file dropped on the bench lies on it; any other text is taken for a table. */
const dropped = (event: DragEvent): void => {
  event.preventDefault();
  const file = event.dataTransfer.files[0];
  if (!file) return;
  void takeText(file, (read) => {
    const model = readModel(read);
    if (model.ok) putModel(model.value, beginText.wasFromFile(file.name));
    else setDraft({ pasted: read, section: 'tables' });
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
          <span className="caption">{text.page}</span>
          <h1 className="job-name">{name}</h1>
        </div>
        <div className="cell undo-cell">
          <button
            type="button"
            className="quiet"
            disabled={undo === null}
            aria-label={text.undoNamed(undo)}
            onClick={undoDraft}
          >
            <span aria-hidden="true">↶</span>
            <span className="undo-words">
              {text.undo}
              <span className="small soft">{undo ?? text.undoNothing}</span>
            </span>
          </button>
          <button
            type="button"
            className="quiet redo"
            disabled={redo === null}
            aria-label={text.redoNamed(redo)}
            onClick={redoDraft}
          >
            <span aria-hidden="true">↷</span>
            <span className="undo-words">
              {text.redo}
              <span className="small soft">{redo ?? text.redoNothing}</span>
            </span>
          </button>
        </div>
        <div className="cell bench-show">
          <select
            aria-label={text.units}
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
            aria-label={text.light}
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
            {text.back}
          </button>
        </div>
      </header>
      <nav className="bench-parts" aria-label={text.parts}>
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
        <ErrorEdge words={text.partFailed}>
          <Part />
        </ErrorEdge>
      </main>
      <aside className="bench-side" aria-label={text.truss}>
        <BenchPicture />
        <InHand />
        <OddList />
      </aside>
      <Lists />
    </div>
  );
};
