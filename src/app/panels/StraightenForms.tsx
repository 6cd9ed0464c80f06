import { type FormEvent, useState } from 'react';
import { type Look, lookMethods } from '../../core/job/jobSchema.ts';
import { methodWords } from '../../present/words/record.ts';
import { checkWords } from '../../present/words/straighten.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { logInspected, logPush, logRoundness, logStraightEdge } from '../shopDeeds.ts';

const clocks = [12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] as const;

export const ClockSelect = ({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) => (
  <label className="field">
    <span className="caption">{label}</span>
    <select value={value} onChange={(e) => onChange(e.target.value)}>
      <option value="">not chosen</option>
      {clocks.map((clock) => (
        <option key={clock} value={clock}>
          {clock} o’clock
        </option>
      ))}
    </select>
  </label>
);

const LEAST_ROWS = 5;

/** One laying of the straight edge: the side it lies on, and the gap at each station. */
export const StraightEdgeForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
  const lengths = useLengths<`${'x' | 'gap'}${number}`>();
  const [rows, setRows] = useState(LEAST_ROWS);
  const [clock, setClock] = useState('');
  const [said, setSaid] = useState('');
  const read = Array.from({ length: rows }, (_, k) => ({
    x: lengths.value(`x${k}`),
    gap: lengths.value(`gap${k}`, true),
  }));
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const whole = read.flatMap(({ x, gap }) => (x !== undefined && gap !== undefined ? [{ x, gap }] : []));
    const half = read.some(({ x, gap }) => (x === undefined) !== (gap === undefined));
    if (clock === '') {
      setSaid('Say which side of the tube the edge lies on.');
      return;
    }
    if (half) {
      setSaid('A row has a place without a gap, or a gap without a place.');
      return;
    }
    if (whole.length < 4) {
      setSaid('Four stations or more are wanted on one side.');
      return;
    }
    const sent = logStraightEdge(member, {
      stationsIn: whole.map(({ x }) => x),
      offsetsIn: whole.map(({ gap }) => gap),
      clock: Number(clock),
    });
    if (!sent) return;
    lengths.clear();
    setClock('');
    setSaid('');
  };
  return (
    <details>
      <summary>Enter a straight-edge reading</summary>
      <form className="stack tight" onSubmit={send} aria-label={`Straight edge on ${member}`}>
        <p className="small soft">
          Lay the edge along one side, read the gap at four places or more, then lay it a quarter turn round
          and read again. Places from {from}.
        </p>
        <ClockSelect label="The edge lies at" value={clock} onChange={setClock} />
        <ul className="reading-rows">
          {read.map((_, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their number
            <li key={k}>
              <span className="row-no small">{k + 1}</span>
              <LengthField label={`Place from ${from}`} {...lengths.field(`x${k}`)} />
              <LengthField label="Gap" signed {...lengths.field(`gap${k}`)} />
            </li>
          ))}
        </ul>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <div className="row">
          <button type="button" onClick={() => setRows(rows + 1)}>
            One more place
          </button>
          <button type="submit" className="main">
            Record this side
          </button>
        </div>
      </form>
    </details>
  );
};

/** One push: where, how far, what stayed. */
export const PushForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
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
      setSaid('Place, blocks apart, travel pressed and what stayed are all wanted.');
      return;
    }
    if (leftIn > pressedIn) {
      setSaid('More stayed than was pressed: look at both again.');
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
      <summary>Log a push</summary>
      <form className="stack tight" onSubmit={send} aria-label={`Push on ${member}`}>
        <div className="fields">
          <LengthField label={`Ram at, from ${from}`} {...lengths.field('at')} />
          <LengthField label="Blocks apart" {...lengths.field('span')} />
          <LengthField label="Pressed, from where it lay" {...lengths.field('pressed')} />
          <LengthField label="Stayed after letting go" {...lengths.field('left')} />
          <ClockSelect label="Ram stood at" value={clock} onChange={setClock} />
          <label className="field">
            <span className="caption">Force, lbf, if read</span>
            <input type="text" inputMode="decimal" value={force} onChange={(e) => setForce(e.target.value)} />
          </label>
        </div>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <button type="submit" className="main">
          Record the push
        </button>
      </form>
    </details>
  );
};

/** Largest and smallest diameter at one place. */
export const RoundnessForm = ({ member, from }: { readonly member: string; readonly from: string }) => {
  const lengths = useLengths<'at' | 'largest' | 'smallest'>();
  const [said, setSaid] = useState('');
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const [at, largestIn, smallestIn] = (['at', 'largest', 'smallest'] as const).map((k) => lengths.value(k));
    if (!largestIn || !smallestIn) {
      setSaid('Both diameters are wanted.');
      return;
    }
    if (smallestIn > largestIn) {
      setSaid('The smallest is larger than the largest.');
      return;
    }
    if (!logRoundness(member, { largestIn, smallestIn, ...(at === undefined ? {} : { atIn: at }) })) return;
    lengths.clear();
    setSaid('');
  };
  return (
    <details>
      <summary>Enter largest and smallest diameter</summary>
      <form className="stack tight" onSubmit={send} aria-label={`Diameters of ${member}`}>
        <div className="fields">
          <LengthField label={`Place from ${from}`} {...lengths.field('at')} />
          <LengthField label="Largest" {...lengths.field('largest')} />
          <LengthField label="Smallest" {...lengths.field('smallest')} />
        </div>
        {said !== '' && (
          <p className="error" role="alert">
            {said}
          </p>
        )}
        <button type="submit" className="main">
          Record the diameters
        </button>
      </form>
    </details>
  );
};

const places = ['bend', 'pressPoints', 'endWelds'] as const;

/** Looked at again for cracks after the last push. */
export const InspectedForm = ({ member }: { readonly member: string }) => {
  const [place, setPlace] = useState('');
  const [method, setMethod] = useState<Look['method']>('penetrant');
  const send = (result: 'clear' | 'crack'): void => {
    const one = places.find((p) => p === place);
    if (one && logInspected(member, { place: one, method, result })) setPlace('');
  };
  return (
    <details>
      <summary>Enter a look for cracks</summary>
      <fieldset className="stack tight" aria-label={`Looked at again: ${member}`}>
        <div className="fields">
          <label className="field">
            <span className="caption">Where</span>
            <select value={place} onChange={(e) => setPlace(e.target.value)}>
              <option value="">not chosen</option>
              {places.map((one) => (
                <option key={one} value={one}>
                  {checkWords[one].replace(/^[^:]*: /, '')}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="caption">How</span>
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
            No crack seen
          </button>
          <button type="button" disabled={place === ''} onClick={() => send('crack')}>
            Crack seen
          </button>
        </div>
      </fieldset>
    </details>
  );
};
