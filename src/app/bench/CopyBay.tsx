import { useState } from 'react';
import { copyBayText as text } from '../text/modelStations.ts';
import { changeModel, useDraft } from './draft.ts';

/** A bay's bracing and tube sizes given to others. */
export const CopyBay = () => {
  const { stations } = useDraft((draft) => draft.model);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const labels = stations.map((s) => s.label);
  const bays = labels.slice(0, -1);
  const chosen = to === 'aft' ? bays.slice(bays.indexOf(from) + 1) : to === 'all' ? bays : [to];
  return (
    <fieldset className="row">
      <legend className="caption">{text.title}</legend>
      <select aria-label={text.from} value={from} onChange={(e) => setFrom(e.target.value)}>
        <option value="">{text.chooseFrom}</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            {text.bay(label)}
          </option>
        ))}
      </select>
      <select aria-label={text.to} value={to} onChange={(e) => setTo(e.target.value)}>
        <option value="">{text.chooseTo}</option>
        <option value="aft">{text.toAft}</option>
        <option value="all">{text.toAll}</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            {text.toBay(label)}
          </option>
        ))}
      </select>
      <button
        type="button"
        disabled={from === '' || to === '' || chosen.every((label) => label === from)}
        onClick={() => changeModel([{ kind: 'copyBay', from, to: chosen }], text.copied(from))}
      >
        {text.copy}
      </button>
    </fieldset>
  );
};
