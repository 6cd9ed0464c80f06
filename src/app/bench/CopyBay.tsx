import { useState } from 'react';
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
      <legend className="caption">Copy a bay’s bracing and tube sizes</legend>
      <select aria-label="Copy bay" value={from} onChange={(e) => setFrom(e.target.value)}>
        <option value="">Bay …</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            Bay {label}
          </option>
        ))}
      </select>
      <select aria-label="Copy to" value={to} onChange={(e) => setTo(e.target.value)}>
        <option value="">to …</option>
        <option value="aft">to all aft of it</option>
        <option value="all">to all bays</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            to bay {label}
          </option>
        ))}
      </select>
      <button
        type="button"
        disabled={from === '' || to === '' || chosen.every((label) => label === from)}
        onClick={() => changeModel([{ kind: 'copyBay', from, to: chosen }], `bay ${from} copied`)}
      >
        Copy the bay
      </button>
    </fieldset>
  );
};
