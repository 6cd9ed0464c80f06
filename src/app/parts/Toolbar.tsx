import { useState } from 'react';
import { zoneWords } from '../../present/words/names.ts';
import type { SceneProps, ViewName } from '../scene/sceneProps.ts';
import { useAnswer } from '../state/answer.ts';
import { ask, type Middle, setView, useView } from '../state/view.ts';

export const viewWords = {
  leftSide: 'Left side',
  rightSide: 'Right side',
  plan: 'Plan',
  fromAhead: 'From ahead',
  fromBelow: 'From below',
  threeQuarter: 'Three-quarter',
} as const satisfies Record<ViewName, string>;

/** On the button; the full name is its accessible name. */
const shortWords = {
  leftSide: 'Left',
  rightSide: 'Right',
  plan: 'Plan',
  fromAhead: 'Ahead',
  fromBelow: 'Below',
  threeQuarter: '¾',
} as const satisfies Record<ViewName, string>;

const labelWords = {
  selection: 'Name selected',
  clusters: 'Name clusters',
  members: 'Name tubes',
  all: 'Name all',
  none: 'No names',
} as const satisfies Record<SceneProps['labels'], string>;

const middleWords = {
  picture: 'Picture',
  both: 'Both',
  table: 'Table',
} as const satisfies Record<Middle, string>;

const viewNames = Object.keys(viewWords) as ViewName[];

/** How the truss is looked at: named views, fit, names, a bay or face set apart, picture or table. */
export const Toolbar = () => {
  const { apart, labels, middle, camera, several, selected } = useView();
  const [more, setMore] = useState(false);
  const truss = useAnswer((answer) => answer.atOnce?.truss);
  return (
    <div className="toolbar" role="toolbar" aria-label="View" data-more={more}>
      <div className="segments">
        {viewNames.map((view) => (
          <button
            key={view}
            type="button"
            aria-label={viewWords[view]}
            title={viewWords[view]}
            aria-pressed={camera.view === view}
            onClick={() => ask(view, 'all')}
          >
            {shortWords[view]}
          </button>
        ))}
      </div>
      <button
        type="button"
        className="more-button"
        aria-expanded={more}
        aria-label="More ways to look"
        onClick={() => setMore(!more)}
      >
        More
      </button>
      <div className="segments more">
        <button type="button" onClick={() => ask('keep', 'all')}>
          Fit all
        </button>
        <button type="button" disabled={selected.length === 0} onClick={() => ask('keep', 'selection')}>
          Fit selected
        </button>
      </div>
      <select
        className="more"
        aria-label="Names in the picture"
        value={labels}
        onChange={(e) => setView({ labels: e.target.value as SceneProps['labels'] })}
      >
        {Object.entries(labelWords).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      <select
        className="more"
        aria-label="Bay or face set apart"
        value={apart?.ids ? 'these' : (apart?.zone ?? '')}
        onChange={(e) =>
          setView({
            apart: e.target.value === '' ? null : { zone: e.target.value, how: apart?.how ?? 'isolate' },
          })
        }
      >
        <option value="">Whole truss</option>
        {apart?.ids && <option value="these">Those chosen</option>}
        <optgroup label="Bays">
          {truss?.bays.map(({ id }) => (
            <option key={id} value={id}>
              Bay {id}
            </option>
          ))}
        </optgroup>
        <optgroup label="Faces">
          {truss?.faces.map(({ id }) => (
            <option key={id} value={id}>
              {zoneWords(id)}
            </option>
          ))}
        </optgroup>
      </select>
      <button
        type="button"
        className="more"
        aria-label="Pick several"
        title="Pick several"
        aria-pressed={several}
        onClick={() => setView({ several: !several })}
      >
        Several
      </button>
      <select
        className="more"
        aria-label="Picture or table"
        value={middle}
        onChange={(e) => setView({ middle: e.target.value as Middle })}
      >
        {Object.entries(middleWords).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
};
