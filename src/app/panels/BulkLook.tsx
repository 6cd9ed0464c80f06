import { useState } from 'react';
import { accessStates } from '../../core/job/jobSchema.ts';
import { zoneWords } from '../../present/words/names.ts';
import { accessHides, accessWords, methodWords } from '../../present/words/record.ts';
import { lookAtZone, setAccess } from '../deeds.ts';
import type { AtOnce } from '../state/answer.ts';
import { ask, setView, useView } from '../state/view.ts';
import { bulkText } from '../text/walkRound.ts';
import { LookBy } from './LookBy.tsx';

/** A whole face of one bay recorded as looked at, with the method; never more than one face at a time. */
export const BulkLook = ({ now }: { readonly now: AtOnce }) => {
  const lookBy = useView((view) => view.lookBy);
  const selected = useView((view) => view.selected);
  const [chosen, setChosen] = useState('');
  // folded away it holds nothing: a long truss has thousands of faces to list
  const [open, setOpen] = useState(false);
  const zones = now.coverage.zones;
  const zone = zones.find(({ id }) => id === chosen);
  return (
    <details className="bulk" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>{bulkText.title}</summary>
      {open && (
        <div className="stack tight">
          <div className="field">
            <label htmlFor="bulk-zone">{bulkText.zone}</label>
            <select
              id="bulk-zone"
              value={chosen}
              onChange={(e) => {
                setChosen(e.target.value);
                setView({ apart: e.target.value === '' ? null : { zone: e.target.value, how: 'isolate' } });
                ask('keep', 'all');
              }}
            >
              <option value="">{bulkText.choose}</option>
              {zones.map(({ id, notLookedAt, members }) => (
                <option key={id} value={id}>
                  {bulkText.option(zoneWords(id), notLookedAt.length, members.length)}
                </option>
              ))}
            </select>
          </div>
          {selected.length === 0 && <LookBy />}
          <button
            type="button"
            className="main"
            disabled={!zone || zone.notLookedAt.length === 0}
            onClick={() => zone && lookAtZone(zone.id, zone.notLookedAt)}
          >
            {zone
              ? bulkText.record(zone.notLookedAt.length, methodWords[lookBy.method], lookBy.finishRemoved)
              : bulkText.recordNone}
          </button>
          {zone && (
            <div className="field">
              <label htmlFor="bulk-access">{bulkText.access(zoneWords(zone.id))}</label>
              <select
                id="bulk-access"
                value={zone.access ?? ''}
                onChange={(e) => {
                  const access = accessStates.find((state) => state === e.target.value);
                  if (access) setAccess(zone.id, access);
                }}
              >
                <option value="" disabled>
                  {bulkText.noAccess}
                </option>
                {accessStates.map((state) => (
                  <option key={state} value={state}>
                    {accessWords[state]}
                  </option>
                ))}
              </select>
              <span className="echo">{zone.access ? accessHides[zone.access] : ''}</span>
            </div>
          )}
        </div>
      )}
    </details>
  );
};
