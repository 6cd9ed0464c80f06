import { useState } from 'react';
import { takeOutText, distancesText as text } from '../text/modelPoints.ts';
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
    if (!changeModel([{ kind: 'setDistance', row }], text.changed(from, to))) return false;
    setFrom('');
    setTo('');
    setLength(undefined);
    return true;
  };
  return (
    <div className="stack">
      <p className="soft">{text.lead}</p>
      <EnteredRows
        rows={distances}
        nameOf={(d) => text.named(d.from, d.to)}
        show={(d) => (
          <>
            {text.between(d.from, d.to)}
            <strong>{asDrawn(d.lengthIn, drawnIn)}</strong>
            {d.toleranceIn === undefined ? text.noTolerance : ` ± ${asDrawn(d.toleranceIn, drawnIn)}`}{' '}
            {drawnIn}
            {d.source ? ` · ${d.source}` : ''}
          </>
        )}
        deeds={[
          ['Change', (d) => () => edit(d)],
          [
            takeOutText,
            (d, at) => () => changeModel([{ kind: 'removeDistance', at }], text.takenOut(d.from, d.to)),
          ],
        ]}
      />
      <AddForm
        words={distances.some((d) => d.from === from && d.to === to) ? text.change : text.add}
        ready={ready}
        onAdd={add}
      >
        <TextCell
          shown="From"
          label={text.from}
          value={from}
          list="bench-clusters"
          hint="U3L"
          onText={setFrom}
        />
        <TextCell shown="To" label={text.to} value={to} list="bench-clusters" hint="L4L" onText={setTo} />
        <LengthCell
          shown="Length"
          label={text.length}
          valueIn={lengthIn}
          negative={false}
          onValue={setLength}
        />
        <LengthCell
          shown={text.toleranceShown}
          label={text.tolerance}
          valueIn={toleranceIn}
          negative={false}
          onValue={setTolerance}
        />
        <TextCell shown={text.source} label={text.sourceNamed} value={source} onText={setSource} />
      </AddForm>
    </div>
  );
};
