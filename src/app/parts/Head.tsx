import { useEffect, useState } from 'react';
import type { Units } from '../../present/show.ts';
import { commandOf } from '../commands.ts';
import { ageWords } from '../parts/age.ts';
import type { Light } from '../scene/sceneProps.ts';
import { redoName, undoName, useJob, useUndo } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { useSaved } from '../state/saved.ts';
import { FindBox } from './FindBox.tsx';

export const unitWords = {
  inFraction: 'in, fraction',
  inDecimal: 'in, decimal',
  mm: 'mm',
} as const satisfies Record<Units, string>;

export const lightWords = { day: 'Day', night: 'Night', outdoor: 'Outdoor' } as const satisfies Record<
  Light,
  string
>;

/** The title block of the sheet: which job, whose aircraft, how it is kept, what can be undone, what is sought. */
export const Head = () => {
  const job = useJob((state) => state.job);
  const { units, light } = usePrefs();
  useUndo();
  const [undoing, redoing] = [undoName(), redoName()];
  return (
    <header className="head">
      <div className="cell job-cell">
        <span className="caption">Job</span>
        <h1 className="job-name">{job ? job.name : 'Tubewright'}</h1>
        <span className="small soft job-aircraft">{job?.aircraft ?? 'No aircraft entered'}</span>
      </div>
      <Kept />
      <div className="cell undo-cell">
        <button
          type="button"
          className="quiet"
          aria-disabled={undoing === null}
          aria-label={undoing === null ? 'Undo: nothing to undo' : `Undo: ${undoing}`}
          onClick={commandOf('undo').do}
        >
          <span aria-hidden="true">↶</span>
          <span className="undo-words">
            Undo<span className="small soft">{undoing ?? 'nothing yet'}</span>
          </span>
        </button>
        <button
          type="button"
          className="quiet redo"
          aria-disabled={redoing === null}
          aria-label={redoing === null ? 'Redo: nothing to redo' : `Redo: ${redoing}`}
          onClick={commandOf('redo').do}
        >
          <span aria-hidden="true">↷</span>
          <span className="undo-words">
            Redo<span className="small soft">{redoing ?? 'nothing'}</span>
          </span>
        </button>
      </div>
      <div className="cell find-cell">
        <FindBox />
      </div>
      <div className="cell show-cell">
        <select
          aria-label="Units"
          value={units}
          onChange={(e) => setPrefs({ units: e.target.value as Units })}
        >
          {Object.entries(unitWords).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
        <select
          aria-label="Light"
          value={light}
          onChange={(e) => setPrefs({ light: e.target.value as Light })}
        >
          {Object.entries(lightWords).map(([value, words]) => (
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
    nothing: 'Nothing to save yet',
    saving: 'Saving …',
    saved: at ? `Saved ${ageWords(at, now)}` : 'Saved',
    failed: 'NOT SAVED on this device',
  }[state];
  return (
    <div className="cell kept-cell">
      <span className="caption">Kept</span>
      <span role="status" aria-live="off" aria-label="Saved">
        {words}
      </span>
      <span className={overdue ? 'small overdue' : 'small soft'}>
        {overdue ? 'Save a copy: ' : ''}
        {copy
          ? `Copy off this device ${ageWords(copy.at, now)}${later > 0 ? `, ${later} newer records` : ''}`
          : overdue
            ? 'none off this device yet'
            : 'No copy off this device yet'}
      </span>
    </div>
  );
};
