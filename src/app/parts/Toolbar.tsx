import { memo, useState } from 'react';
import type { Truss } from '../../core/truss/result.ts';
import { zoneWords } from '../../present/words/names.ts';
import type { SceneProps, ViewName } from '../scene/sceneProps.ts';
import { useAnswer } from '../state/answer.ts';
import { ask, type Middle, setView, useView } from '../state/view.ts';
import { toolbarText as text, viewText } from '../text/frame.ts';

const viewNames = Object.keys(viewText) as ViewName[];

/** Every bay and face of a truss; a long one has thousands, written once. */
const Zones = memo(({ truss }: { readonly truss: Truss }) => (
  <>
    <optgroup label={text.bays}>
      {truss.bays.map(({ id }) => (
        <option key={id} value={id}>
          {text.bay(id)}
        </option>
      ))}
    </optgroup>
    <optgroup label={text.faces}>
      {truss.faces.map(({ id }) => (
        <option key={id} value={id}>
          {zoneWords(id)}
        </option>
      ))}
    </optgroup>
  </>
));

/** How the truss is looked at: named views, fit, names, a bay or face set apart, picture or table. */
export const Toolbar = () => {
  const { apart, labels, middle, camera, several, selected } = useView();
  const [more, setMore] = useState(false);
  const truss = useAnswer((answer) => answer.atOnce?.truss);
  return (
    <div className="toolbar" role="toolbar" aria-label={text.region} data-more={more}>
      <div className="segments">
        {viewNames.map((view) => (
          <button
            key={view}
            type="button"
            aria-label={viewText[view].name}
            title={viewText[view].name}
            aria-pressed={camera.view === view}
            onClick={() => ask(view, 'all')}
          >
            {viewText[view].short}
          </button>
        ))}
      </div>
      <button
        type="button"
        className="more-button"
        aria-expanded={more}
        aria-label={text.moreNamed}
        onClick={() => setMore(!more)}
      >
        {text.more}
      </button>
      <div className="segments more">
        <button type="button" onClick={() => ask('keep', 'all')}>
          {text.fitAll}
        </button>
        <button type="button" disabled={selected.length === 0} onClick={() => ask('keep', 'selection')}>
          {text.fitSelected}
        </button>
      </div>
      <select
        className="more"
        aria-label={text.names}
        value={labels}
        onChange={(e) => setView({ labels: e.target.value as SceneProps['labels'] })}
      >
        {Object.entries(text.labels).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      <select
        className="more"
        aria-label={text.apart}
        value={apart?.ids ? 'these' : (apart?.zone ?? '')}
        onChange={(e) =>
          setView({
            apart: e.target.value === '' ? null : { zone: e.target.value, how: apart?.how ?? 'isolate' },
          })
        }
      >
        <option value="">{text.whole}</option>
        {apart?.ids && <option value="these">{text.chosen}</option>}
        {truss && <Zones truss={truss} />}
      </select>
      <button
        type="button"
        className="more"
        aria-label={text.severalNamed}
        title={text.severalNamed}
        aria-pressed={several}
        onClick={() => setView({ several: !several })}
      >
        {text.several}
      </button>
      <select
        className="more"
        aria-label={text.middleNamed}
        value={middle}
        onChange={(e) => setView({ middle: e.target.value as Middle })}
      >
        {Object.entries(text.middle).map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
};
