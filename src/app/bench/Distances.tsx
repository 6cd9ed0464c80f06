import { useState } from 'react';
import { changeModel, useDraft } from './draft.ts';
import { asDrawn } from './drawn.ts';
import { LengthCell, TextCell } from './fields.tsx';

/** Distances that the drawing gives, each with its tolerance. Each counts for its own pair only. */
export const Distances = () => {
  const { distances, drawnIn } = useDraft((draft) => draft.model);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [lengthIn, setLength] = useState<number>();
  const [toleranceIn, setTolerance] = useState<number>();
  const [source, setSource] = useState('');
  const [turn, setTurn] = useState(0);
  const ready = from !== '' && to !== '' && from !== to && lengthIn !== undefined;
  const add = (): void => {
    if (lengthIn === undefined) return;
    const row = {
      from,
      to,
      lengthIn,
      ...(toleranceIn ? { toleranceIn } : {}),
      ...(source ? { source } : {}),
    };
    if (!changeModel([{ kind: 'setDistance', row }], `distance ${from} to ${to}`)) return;
    setFrom('');
    setTo('');
    setLength(undefined);
    setTolerance(undefined);
    setTurn(turn + 1);
  };
  return (
    <div className="stack">
      <p className="soft">
        A distance of the drawing stands in place of the one the stations give, for its own pair only. Where
        the two differ by more than the tolerance, the list of what is odd says so.
      </p>
      {distances.length > 0 && (
        <ul className="entries">
          {distances.map((d, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their place
            <li key={k} className="entry-head">
              <span>
                {d.from} to {d.to}: <strong>{asDrawn(d.lengthIn, drawnIn)}</strong>
                {d.toleranceIn === undefined
                  ? ', no tolerance given'
                  : ` ± ${asDrawn(d.toleranceIn, drawnIn)}`}{' '}
                {drawnIn}
                {d.source ? ` · ${d.source}` : ''}
              </span>
              <button
                type="button"
                className="link"
                aria-label={`Take out the distance ${d.from} to ${d.to}`}
                onClick={() =>
                  changeModel([{ kind: 'removeDistance', at: k }], `distance ${d.from} to ${d.to} taken out`)
                }
              >
                Take out
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="fields" key={turn}>
        <TextCell
          shown="From"
          label="Distance from"
          value={from}
          list="bench-clusters"
          hint="U3L"
          onText={setFrom}
        />
        <TextCell shown="To" label="Distance to" value={to} list="bench-clusters" hint="L4L" onText={setTo} />
        <LengthCell
          shown="Length"
          label="Distance, length"
          valueIn={lengthIn}
          negative={false}
          onValue={setLength}
        />
        <LengthCell
          shown="Tolerance ±"
          label="Distance, tolerance"
          valueIn={toleranceIn}
          negative={false}
          onValue={setTolerance}
        />
        <TextCell
          shown="Drawing and place in it"
          label="Distance, source"
          value={source}
          onText={setSource}
        />
        <button type="button" className="end" disabled={!ready} onClick={add}>
          Add the distance
        </button>
      </div>
    </div>
  );
};
