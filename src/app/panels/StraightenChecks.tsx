import { useState } from 'react';
import { type Look, lookMethods } from '../../core/job/jobSchema.ts';
import type { StraightenRow } from '../../core/straighten/result.ts';
import { methodWords } from '../../present/words/record.ts';
import { checkVerdictWords, checkWords } from '../../present/words/straighten.ts';
import { acceptStraightened, logInspected } from '../shopDeeds.ts';
import { checksText } from '../text/straighten.ts';

const signs: Readonly<Record<string, string>> = {
  inside: '●',
  clear: '●',
  outside: '×',
  crack: '×',
  notDone: '○',
};

/** What must still be checked after the last push, the look for cracks, and the acceptance by name. */
export const StraightenChecks = ({ row }: { readonly row: StraightenRow }) => {
  const [reason, setReason] = useState('');
  const begun = row.says !== 'notStarted' && row.says !== 'stop';
  const wanting = row.says !== 'straight' && reason.trim() === '';
  const ready = row.says === 'straight' || row.says === 'straightenedNoLimit';
  return (
    <section className="stack tight" aria-label={checksText.title}>
      <h3>{checksText.title}</h3>
      <ul className="checks small">
        {row.checks.map((check) => (
          <li key={check.of}>
            <span className="sign" aria-hidden="true">
              {signs[check.verdict] ?? '?'}
            </span>
            <span>{checkWords[check.of]}</span>
            <strong>{checkVerdictWords[check.verdict]}</strong>
          </li>
        ))}
      </ul>
      <InspectedForm member={row.member} />
      {begun && ready && !row.accepted && (
        <form
          className="stack tight choose"
          aria-label={checksText.accept(row.member)}
          onSubmit={(event) => {
            event.preventDefault();
            if (!wanting && acceptStraightened(row.member, reason)) setReason('');
          }}
        >
          <label className="field">
            <span className="caption">{row.says === 'straight' ? checksText.note : checksText.why}</span>
            <input type="text" value={reason} onChange={(e) => setReason(e.target.value)} />
          </label>
          <button type="submit" className="main" disabled={wanting}>
            {checksText.acceptByName}
          </button>
        </form>
      )}
    </section>
  );
};

const places = ['bend', 'pressPoints', 'endWelds'] as const;

/** Looked at again for cracks after the last push. */
const InspectedForm = ({ member }: { readonly member: string }) => {
  const [place, setPlace] = useState('');
  const [method, setMethod] = useState<Look['method']>('penetrant');
  const send = (result: 'clear' | 'crack'): void => {
    const one = places.find((p) => p === place);
    if (one && logInspected(member, { place: one, method, result })) setPlace('');
  };
  return (
    <details>
      <summary>{checksText.enter}</summary>
      <fieldset className="stack tight" aria-label={checksText.form(member)}>
        <div className="fields">
          <label className="field">
            <span className="caption">{checksText.where}</span>
            <select value={place} onChange={(e) => setPlace(e.target.value)}>
              <option value="">{checksText.notChosen}</option>
              {places.map((one) => (
                <option key={one} value={one}>
                  {checkWords[one].replace(/^[^:]*: /, '')}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="caption">{checksText.how}</span>
            <select value={method} onChange={(e) => setMethod(e.target.value as Look['method'])}>
              {lookMethods.map((one) => (
                <option key={one} value={one}>
                  {methodWords[one]}
                </option>
              ))}
            </select>
          </label>
        </div>
        <div className="row">
          <button type="button" disabled={place === ''} onClick={() => send('clear')}>
            {checksText.noCrack}
          </button>
          <button type="button" disabled={place === ''} onClick={() => send('crack')}>
            {checksText.crack}
          </button>
        </div>
      </fieldset>
    </details>
  );
};
