import { type FormEvent, useState } from 'react';
import type { StraightenRow } from '../../core/straighten/result.ts';
import { showLength } from '../../present/show.ts';
import { pushSaysWords } from '../../present/words/straighten.ts';
import { removeRecord } from '../deeds.ts';
import { FigureLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { logPush } from '../shopDeeds.ts';
import { usePrefs } from '../state/prefs.ts';
import { pushText } from '../text/straighten.ts';
import { ClockSelect } from './ClockSelect.tsx';

/** The pushes logged on one tube, each with what it says, and the form for the next. */
export const StraightenPushes = ({ row, from }: { readonly row: StraightenRow; readonly from: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <section className="stack tight" aria-label={pushText.named}>
      <h3>{pushText.title(row.pushes.length, row.reversals)}</h3>
      {row.pushes.length === 0 ? (
        <p className="soft small">{pushText.none}</p>
      ) : (
        <ol className="entries">
          {row.pushes.map((push, k) => (
            <li key={push.record}>
              <div className="entry-head">
                <strong>
                  {pushText.row(
                    k + 1,
                    showLength(push.pressedIn, units, 64),
                    showLength(push.leftIn, units, 64),
                  )}
                </strong>
                <button
                  type="button"
                  className="link"
                  onClick={() => removeRecord(push.record, pushText.removed(k + 1, row.member))}
                >
                  {pushText.remove}
                </button>
              </div>
              <span className="small">
                {pushText.where(showLength(push.atIn, units), showLength(push.spanIn, units))}
                {push.forceLbf === undefined ? '' : pushText.force(Math.round(push.forceLbf))}
                {push.reversal ? pushText.reversal : ''}; {pushSaysWords[push.says]}
              </span>
              {push.yieldPsi && <FigureLine name={pushText.yield} figure={push.yieldPsi} />}
            </li>
          ))}
        </ol>
      )}
      <PushForm member={row.member} from={from} />
    </section>
  );
};

/** One push: where, how far, what stayed. */
const PushForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
  const lengths = useLengths<'at' | 'span' | 'pressed' | 'left'>();
  const [clock, setClock] = useState('');
  const [force, setForce] = useState('');
  const [said, setSaid] = useState('');
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const [atIn, spanIn, pressedIn, leftIn] = (['at', 'span', 'pressed', 'left'] as const).map((k) =>
      lengths.value(k),
    );
    if (atIn === undefined || !spanIn || pressedIn === undefined || leftIn === undefined) {
      setSaid(pushText.wanted);
      return;
    }
    if (leftIn > pressedIn) {
      setSaid(pushText.moreStayed);
      return;
    }
    const lbf = Number(force.replace(',', '.'));
    const sent = logPush(member, {
      atIn,
      spanIn,
      pressedIn,
      leftIn,
      ...(clock === '' ? {} : { clock: Number(clock) }),
      ...(force.trim() !== '' && lbf >= 0 ? { forceLbf: lbf } : {}),
    });
    if (!sent) return;
    lengths.clear();
    setForce('');
    setSaid('');
  };
  return (
    <details>
      <summary>{pushText.log}</summary>
      <form className="stack tight" onSubmit={send} aria-label={pushText.form(member)}>
        <div className="fields">
          <LengthField label={pushText.ramAt(from)} {...lengths.field('at')} />
          <LengthField label={pushText.blocksApart} {...lengths.field('span')} />
          <LengthField label={pushText.pressed} {...lengths.field('pressed')} />
          <LengthField label={pushText.stayed} {...lengths.field('left')} />
          <ClockSelect label={pushText.ramStood} value={clock} onChange={setClock} />
          <label className="field">
            <span className="caption">{pushText.forceRead}</span>
            <input type="text" inputMode="decimal" value={force} onChange={(e) => setForce(e.target.value)} />
          </label>
        </div>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <button type="submit" className="main">
          {pushText.record}
        </button>
      </form>
    </details>
  );
};
