import { useState } from 'react';
import { AddForm } from './AddForm.tsx';
import { changeModel, useDraft } from './draft.ts';
import { asDrawn } from './drawn.ts';
import { LengthCell, TextCell } from './fields.tsx';
import { EnteredRows } from './Lists.tsx';

/** Distances that the drawing gives, each with its tolerance. Each counts for its own pair only. */
export const Distances = () => {
  const { distances, drawnIn } = useDraft((draft) => draft.model);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [lengthIn, setLength] = useState<number>();
  const [toleranceIn, setTolerance] = useState<number>();
  const [source, setSource] = useState('');
  const edit = (d: (typeof distances)[number]): void => {
    setFrom(d.from);
    setTo(d.to);
    setLength(d.lengthIn);
    setTolerance(d.toleranceIn);
    setSource(d.source ?? '');
  };
  const ready = from !== '' && to !== '' && from !== to && lengthIn !== undefined;
  const add = (): boolean => {
    if (lengthIn === undefined) return false;
    const row = {
      from,
      to,
      lengthIn,
      ...(toleranceIn ? { toleranceIn } : {}),
      ...(source ? { source } : {}),
    };
    if (!changeModel([{ kind: 'setDistance', row }], `distance ${from} to ${to}`)) return false;
    setFrom('');
    setTo('');
    setLength(undefined);
    return true;
  };
  return (
    <div className="stack">
      <p className="soft">
        A distance of the drawing stands in place of the one the stations give, for its own pair only. Where
        the two differ by more than the tolerance, the list of what is odd says so.
      </p>
      <EnteredRows
        rows={distances}
        nameOf={(d) => `the distance ${d.from} to ${d.to}`}
        show={(d) => (
          <>
            {d.from} to {d.to}: <strong>{asDrawn(d.lengthIn, drawnIn)}</strong>
            {d.toleranceIn === undefined ? ', no tolerance given' : ` ± ${asDrawn(d.toleranceIn, drawnIn)}`}{' '}
            {drawnIn}
            {d.source ? ` · ${d.source}` : ''}
          </>
        )}
        deeds={[
          ['Change', (d) => () => edit(d)],
          [
            'Take out',
            (d, at) => () =>
              changeModel([{ kind: 'removeDistance', at }], `distance ${d.from} to ${d.to} taken out`),
          ],
        ]}
      />
      <AddForm
        words={
          distances.some((d) => d.from === from && d.to === to) ? 'Change the distance' : 'Add the distance'
        }
        ready={ready}
        onAdd={add}
      >
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
      </AddForm>
    </div>
  );
};
