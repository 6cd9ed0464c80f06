import { useState } from 'react';
import type { Assessment } from '../../core/assessment.ts';
import { type LineGroup, lineGroups } from '../../core/estimate/result.ts';
import { exchangeTable, exchangeTopic } from '../../present/tables/exchange.ts';
import { groupWords } from '../../present/words/estimate.ts';
import { setManual } from '../planDeeds.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { exchangeText as text } from '../text/estimate.ts';

/** The same line groups for repair and exchange: hours of the exchange are the user's own. */
export const Exchange = ({ all }: { readonly all: Assessment }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const units = usePrefs((prefs) => prefs.units);
  if (!now) return null;
  const table = exchangeTable({ job: now.job, assessment: all, units }, now.live.manual);
  return (
    <>
      <p className="small soft">{table.note}</p>
      <table className="rate-table small">
        <thead>
          <tr>
            <th scope="col">{text.group}</th>
            <th scope="col">{text.repair}</th>
            <th scope="col">{text.exchange}</th>
          </tr>
        </thead>
        <tbody>
          {lineGroups.map((group, k) => (
            <tr key={group}>
              <th scope="row">{groupWords[group]}</th>
              <td>{table.rows[k]!.cells[1]!.text}</td>
              <td>
                <Hours
                  key={String(table.rows[k]!.cells[2]!.raw)}
                  group={group}
                  start={table.rows[k]!.cells[2]!.raw}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
};

const Hours = ({ group, start }: { readonly group: LineGroup; readonly start: string | number | null }) => {
  const [typed, setTyped] = useState(start === null ? '' : String(start));
  const value = Number(typed);
  const fits = typed.trim() !== '' && Number.isFinite(value) && value >= 0;
  const send = (): void => {
    if (fits && value !== start)
      setManual(
        { topic: exchangeTopic(group), value, words: `${typed} h`, source: text.source },
        text.entered(groupWords[group].toLowerCase()),
      );
  };
  return (
    <input
      inputMode="decimal"
      aria-label={text.hours(groupWords[group])}
      aria-invalid={typed !== '' && !fits}
      value={typed}
      onChange={(e) => setTyped(e.target.value)}
      onBlur={send}
      onKeyDown={(e) => e.key === 'Enter' && send()}
    />
  );
};
