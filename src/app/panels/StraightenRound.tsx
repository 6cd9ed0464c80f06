import { type FormEvent, useState } from 'react';
import type { StraightenRow } from '../../core/straighten/result.ts';
import { showLength } from '../../present/show.ts';
import { checkVerdictWords } from '../../present/words/straighten.ts';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { logRoundness } from '../shopDeeds.ts';
import { usePrefs } from '../state/prefs.ts';
import { roundText } from '../text/straighten.ts';

/** The diameters read on one tube, what they give, and the form for two more. */
export const StraightenRound = ({ row, from }: { readonly row: StraightenRow; readonly from: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <section className="stack tight" aria-label={roundText.title}>
      <h3>{roundText.title}</h3>
      {row.roundness.map((r) => (
        <div key={r.record} className="figures">
          <PlainLine name={r.atIn === null ? roundText.pair : roundText.pairAt(showLength(r.atIn, units))}>
            {showLength(r.largestIn, units, 64)}, {showLength(r.smallestIn, units, 64)}
          </PlainLine>
          <FigureLine name={roundText.ovality(checkVerdictWords[r.verdict])} figure={r.ovality} />
          <FigureLine name={roundText.bore} figure={r.boreIn} />
          <FigureLine name={roundText.squeeze} figure={r.overSqueezeIn} />
        </div>
      ))}
      {row.roundness.length === 0 && <p className="soft small">{roundText.none}</p>}
      <RoundnessForm member={row.member} from={from} />
    </section>
  );
};

/** Largest and smallest diameter at one place. */
const RoundnessForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
  const lengths = useLengths<'at' | 'largest' | 'smallest'>();
  const [said, setSaid] = useState('');
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const [at, largestIn, smallestIn] = (['at', 'largest', 'smallest'] as const).map((k) => lengths.value(k));
    if (!largestIn || !smallestIn) {
      setSaid(roundText.wanted);
      return;
    }
    if (smallestIn > largestIn) {
      setSaid(roundText.crossed);
      return;
    }
    if (!logRoundness(member, { largestIn, smallestIn, ...(at === undefined ? {} : { atIn: at }) })) return;
    lengths.clear();
    setSaid('');
  };
  return (
    <details>
      <summary>{roundText.enter}</summary>
      <form className="stack tight" onSubmit={send} aria-label={roundText.form(member)}>
        <div className="fields">
          <LengthField label={roundText.place(from)} {...lengths.field('at')} />
          <LengthField label={roundText.largest} {...lengths.field('largest')} />
          <LengthField label={roundText.smallest} {...lengths.field('smallest')} />
        </div>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <button type="submit" className="main">
          {roundText.record}
        </button>
      </form>
    </details>
  );
};
