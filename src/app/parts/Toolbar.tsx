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

const labelWords = {
  selection: 'Selection named',
  clusters: 'Clusters named',
  members: 'Tubes named',
  all: 'All named',
  none: 'No names',
} as const satisfies Record<SceneProps['labels'], string>;

const middleWords = {
  picture: 'Picture',
  both: 'Picture and table',
  table: 'Table',
} as const satisfies Record<Middle, string>;

const viewNames = Object.keys(viewWords) as ViewName[];

/** How the truss is looked at: named views, fit, names, a bay or face set apart, picture or table. */
export const Toolbar = () => {
  const { apart, labels, middle, camera, several, selected } = useView();
  const truss = useAnswer((answer) => answer.atOnce?.truss);
  return (
    <div className="toolbar" role="toolbar" aria-label="View">
      <div className="segments">
        {viewNames.map((view) => (
          <button
            key={view}
            type="button"
            aria-pressed={camera.view === view}
            onClick={() => ask(view, 'all')}
          >
            {viewWords[view]}
          </button>
        ))}
      </div>
      <div className="segments">
        <button type="button" onClick={() => ask('keep', 'all')}>
          Fit all
        </button>
        <button type="button" disabled={selected.length === 0} onClick={() => ask('keep', 'selection')}>
          Fit selected
        </button>
      </div>
      <select
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
        aria-label="Bay or face set apart"
        value={apart?.zone ?? ''}
        onChange={(e) =>
          setView({
            apart: e.target.value === '' ? null : { zone: e.target.value, how: apart?.how ?? 'isolate' },
          })
        }
      >
        <option value="">Whole truss</option>
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
      {apart && (
        <select
          aria-label="How it is set apart"
          value={apart.how}
          onChange={(e) => setView({ apart: { ...apart, how: e.target.value as 'isolate' | 'ghost' } })}
        >
          <option value="isolate">Fade the rest</option>
          <option value="ghost">Fade this</option>
        </select>
      )}
      <button type="button" aria-pressed={several} onClick={() => setView({ several: !several })}>
        Pick several
      </button>
      <select
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
