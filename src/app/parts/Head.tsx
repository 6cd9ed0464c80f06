import { useEffect, useState } from 'react';
import type { Units } from '../../present/show.ts';
import { commandOf } from '../commands.ts';
import type { Light } from '../scene/sceneProps.ts';
import { redoName, undoName, useJob, useUndo } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { useSaved } from '../state/saved.ts';
import { ageWords } from '../text/age.ts';
import { lightText, headText as text, unitText } from '../text/frame.ts';
import { FindBox } from './FindBox.tsx';

/** The title block of the sheet: which job, whose aircraft, how it is kept, what can be undone, what is sought. */
export const Head = () => {
  const job = useJob((state) => state.job);
  const { units, light } = usePrefs();
  useUndo();
  const [undoing, redoing] = [undoName(), redoName()];
  return (
    <header className="head">
      <div className="cell job-cell">
        <span className="caption">{text.job}</span>
        <h1 className="job-name">{job ? job.name : text.noJob}</h1>
        <span className="small soft job-aircraft">{job?.aircraft ?? text.noAircraft}</span>
      </div>
      <Kept />
      <div className="cell undo-cell">
        <button
          type="button"
          className="quiet"
          aria-disabled={undoing === null}
          aria-label={undoing === null ? text.nothingToUndo : text.undoes(undoing)}
          onClick={commandOf('undo').do}
        >
          <span aria-hidden="true">↶</span>
          <span className="undo-words">
            {text.undo}
            <span className="small soft">{undoing ?? text.nothingYet}</span>
          </span>
        </button>
        <button
          type="button"
          className="quiet redo"
          aria-disabled={redoing === null}
          aria-label={redoing === null ? text.nothingToRedo : text.redoes(redoing)}
          onClick={commandOf('redo').do}
        >
          <span aria-hidden="true">↷</span>
          <span className="undo-words">
            {text.redo}
            <span className="small soft">{redoing ?? text.nothing}</span>
          </span>
        </button>
      </div>
      <div className="cell find-cell">
        <FindBox />
      </div>
      <div className="cell show-cell">
        <select
          aria-label={text.units}
          value={units}
          onChange={(e) => setPrefs({ units: e.target.value as Units })}
        >
          {Object.entries(unitText).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
        <select
          aria-label={text.light}
          value={light}
          onChange={(e) => setPrefs({ light: e.target.value as Light })}
        >
          {Object.entries(lightText).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </div>
    </header>
  );
};

/** A day of changes without a copy elsewhere is said aloud. */
const DAY_MS = 24 * 3600 * 1000;

/** Saved when, and how old the last copy outside this device is. */
const Kept = () => {
  const { state, at, copy } = useSaved();
  const records = useJob((job) => job.job?.records.length ?? 0);
  const first = useJob((job) => job.job?.records[0]?.at);
  const [, setBeat] = useState(0);
  useEffect(() => {
    const beat = setInterval(() => setBeat((beats) => beats + 1), 30_000);
    return () => clearInterval(beat);
  }, []);
  const now = Date.now();
  const later = copy ? records - copy.records : records;
  const waitingSince = copy?.at ?? first;
  const overdue =
    later > 0 && waitingSince !== undefined && now - Date.parse(waitingSince) > DAY_MS && state !== 'nothing';
  const words = {
    nothing: text.nothingToSave,
    saving: text.saving,
    saved: at ? text.savedAgo(ageWords(at, now)) : text.saved,
    failed: text.notSaved,
  }[state];
  return (
    <div className="cell kept-cell">
      <span className="caption">{text.kept}</span>
      <span role="status" aria-live="off" aria-label={text.saved}>
        {words}
      </span>
      <span className={overdue ? 'small overdue' : 'small soft'}>
        {overdue ? text.overdue : ''}
        {copy ? text.copied(ageWords(copy.at, now), later) : overdue ? text.noCopyOverdue : text.noCopy}
      </span>
    </div>
  );
};
