import { useState } from 'react';
import type { Tube } from '../../core/job/modelSchema.ts';
import { clusterWords } from '../../present/words/names.ts';
import { openingsText, pointsText, takeOutText, tubesText } from '../text/modelPoints.ts';
import { AddForm } from './AddForm.tsx';
import { changeModel, setDraft, useDraft } from './draft.ts';
import { asDrawn, tubeAsDrawn } from './drawn.ts';
import { LengthCell, TextCell, TubeField } from './fields.tsx';
import { EnteredRows } from './Lists.tsx';
import { Sides } from './Sides.tsx';
import { originWords } from './stationEntry.ts';

type Three = readonly [number | undefined, number | undefined, number | undefined];
const nowhere: Three = [undefined, undefined, undefined];

const Openings = () => {
  const omitted = useDraft((draft) => draft.model.omitted) ?? [];
  const [id, setId] = useState('');
  return (
    <section className="stack tight" aria-label={openingsText.region}>
      <h3>{openingsText.title}</h3>
      <EnteredRows
        rows={omitted}
        nameOf={(one) => one}
        show={(one) => one}
        deeds={[
          [
            openingsText.putBack,
            (one) => () => changeModel([{ kind: 'restore', id: one }], openingsText.wasPutBack(one)),
          ],
        ]}
      />
      <AddForm
        words={openingsText.leaveOut}
        ready={id !== ''}
        onAdd={() => {
          const done = changeModel([{ kind: 'omit', id }], openingsText.leftOut(id));
          if (done) setId('');
          return done;
        }}
      >
        <TextCell
          shown={openingsText.tube}
          label={openingsText.tubeNamed}
          value={id}
          list="bench-members"
          hint="U3L-L4L"
          onText={setId}
        />
      </AddForm>
    </section>
  );
};

const Points = () => {
  const model = useDraft((draft) => draft.model);
  const [id, setId] = useState('');
  const [at, setAt] = useState<Three>(nowhere);
  const [fitting, setFitting] = useState('');
  const [x, y, z] = at;
  const add = (): boolean => {
    if (x === undefined || y === undefined || z === undefined || id === '') return false;
    const row = { id, at: [x, y, z] as [number, number, number], ...(fitting ? { fitting } : {}) };
    if (!changeModel([{ kind: 'setCluster', row }], pointsText.added(id))) return false;
    setId('');
    setAt(nowhere);
    setFitting('');
    return true;
  };
  return (
    <section className="stack tight" aria-label={pointsText.title}>
      <h3>{pointsText.title}</h3>
      <EnteredRows
        rows={model.clusters}
        nameOf={(c) => c.id}
        show={(c) => (
          <>
            {clusterWords(c.id)} {c.at.map((v) => asDrawn(v, model.drawnIn)).join(' / ')} {model.drawnIn}
            {c.fitting ? ` · ${c.fitting}` : ''}
            {c.origin && c.origin !== 'drawing' ? ` · ${originWords[c.origin].toLowerCase()}` : ''}
          </>
        )}
        deeds={[
          ['Change', (c) => () => setDraft({ picked: [c.id] })],
          [
            takeOutText,
            (c) => () => changeModel([{ kind: 'removeCluster', id: c.id }], pointsText.takenOut(c.id)),
          ],
        ]}
      />
      <AddForm words={pointsText.add} ready={id !== '' && !at.includes(undefined)} onAdd={add}>
        <TextCell
          shown={pointsText.cluster}
          label={pointsText.clusterNamed}
          value={id}
          list="bench-clusters"
          hint={pointsText.clusterHint}
          onText={setId}
        />
        {pointsText.axes.map((shown, k) => (
          <LengthCell
            key={shown}
            shown={shown}
            label={pointsText.axisNamed(shown)}
            valueIn={at[k]}
            onValue={(v) => setAt(at.map((old, i) => (i === k ? v : old)) as unknown as Three)}
          />
        ))}
        <TextCell
          shown={pointsText.fitting}
          label={pointsText.fittingNamed}
          value={fitting}
          hint={pointsText.fittingHint}
          onText={setFitting}
        />
      </AddForm>
    </section>
  );
};

const Tubes = () => {
  const model = useDraft((draft) => draft.model);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [tube, setTube] = useState<Tube | null>(null);
  const add = (): boolean => {
    const row = { from, to, ...(tube ? { tube } : {}) };
    if (!changeModel([{ kind: 'setMember', row }], tubesText.added(from, to))) return false;
    setFrom('');
    setTo('');
    return true;
  };
  return (
    <section className="stack tight" aria-label={tubesText.title}>
      <h3>{tubesText.title}</h3>
      <EnteredRows
        rows={model.members}
        nameOf={(m) => tubesText.row(m.from, m.to)}
        show={(m) => (
          <>
            {m.id ?? `${m.from}-${m.to}`}
            {m.tube ? ` · ${tubeAsDrawn(m.tube, model.drawnIn)}` : ''}
            {m.ends?.includes('ball') ? tubesText.pinned : ''}
            {m.bolted ? tubesText.bolted : ''}
            {m.near ? tubesText.near(m.near.join(', ')) : ''}
          </>
        )}
        deeds={[
          ['Change', (m) => () => setDraft({ picked: [m.id ?? `${m.from}-${m.to}`] })],
          [
            takeOutText,
            (m, at) => () => changeModel([{ kind: 'removeMember', at }], tubesText.takenOut(m.from, m.to)),
          ],
        ]}
      />
      <AddForm words={tubesText.add} ready={from !== '' && to !== '' && from !== to} onAdd={add}>
        <TextCell
          shown="From"
          label={tubesText.from}
          value={from}
          list="bench-clusters"
          hint="U3L"
          onText={setFrom}
        />
        <TextCell
          shown="To"
          label={tubesText.to}
          value={to}
          list="bench-clusters"
          hint="L5L"
          onText={setTo}
        />
        <TubeField
          shown={tubesText.size}
          label={tubesText.sizeNamed}
          tube={tube ?? undefined}
          onTube={setTube}
        />
      </AddForm>
      <p className="small soft">{tubesText.foot}</p>
    </section>
  );
};

/** What the station table and the bracing words do not say: openings, points and tubes of their own; the two sides. */
export const PointsAndTubes = () => (
  <div className="stack">
    <Sides />
    <Openings />
    <Points />
    <Tubes />
  </div>
);
