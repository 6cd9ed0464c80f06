import { useState } from 'react';
import type { Tube } from '../../core/job/modelSchema.ts';
import { clusterWords } from '../../present/words/names.ts';
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
    <section className="stack tight" aria-label="Openings">
      <h3>Openings: tubes left out</h3>
      <EnteredRows
        rows={omitted}
        nameOf={(one) => one}
        show={(one) => one}
        deeds={[['Put back', (one) => () => changeModel([{ kind: 'restore', id: one }], `${one} put back`)]]}
      />
      <AddForm
        words="Leave it out"
        ready={id !== ''}
        onAdd={() => {
          const done = changeModel([{ kind: 'omit', id }], `${id} left out`);
          if (done) setId('');
          return done;
        }}
      >
        <TextCell
          shown="Tube"
          label="Tube to leave out"
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
    if (!changeModel([{ kind: 'setCluster', row }], `cluster ${id}`)) return false;
    setId('');
    setAt(nowhere);
    setFitting('');
    return true;
  };
  return (
    <section className="stack tight" aria-label="Clusters added or moved">
      <h3>Clusters added or moved</h3>
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
          ['Take out', (c) => () => changeModel([{ kind: 'removeCluster', id: c.id }], `${c.id} taken out`)],
        ]}
      />
      <AddForm words="Add the cluster" ready={id !== '' && !at.includes(undefined)} onAdd={add}>
        <TextCell
          shown="Cluster"
          label="Cluster to add or move"
          value={id}
          list="bench-clusters"
          hint="GC, U4R"
          onText={setId}
        />
        {(['Station', 'Butt line (right +)', 'Water line'] as const).map((shown, k) => (
          <LengthCell
            key={shown}
            shown={shown}
            label={`New cluster, ${shown.toLowerCase()}`}
            valueIn={at[k]}
            onValue={(v) => setAt(at.map((old, i) => (i === k ? v : old)) as unknown as Three)}
          />
        ))}
        <TextCell
          shown="What sits there"
          label="New cluster, fitting"
          value={fitting}
          hint="landing gear, left"
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
    if (!changeModel([{ kind: 'setMember', row }], `tube ${from} to ${to}`)) return false;
    setFrom('');
    setTo('');
    return true;
  };
  return (
    <section className="stack tight" aria-label="Tubes added or given by themselves">
      <h3>Tubes added or given by themselves</h3>
      <EnteredRows
        rows={model.members}
        nameOf={(m) => `${m.from} to ${m.to}`}
        show={(m) => (
          <>
            {m.id ?? `${m.from}-${m.to}`}
            {m.tube ? ` · ${tubeAsDrawn(m.tube, model.drawnIn)}` : ''}
            {m.ends?.includes('ball') ? ' · pinned' : ''}
            {m.bolted ? ' · bolted' : ''}
            {m.near ? ` · near ${m.near.join(', ')}` : ''}
          </>
        )}
        deeds={[
          ['Change', (m) => () => setDraft({ picked: [m.id ?? `${m.from}-${m.to}`] })],
          [
            'Take out',
            (m, at) => () => changeModel([{ kind: 'removeMember', at }], `${m.from}-${m.to} taken out`),
          ],
        ]}
      />
      <AddForm words="Add the tube" ready={from !== '' && to !== '' && from !== to} onAdd={add}>
        <TextCell
          shown="From"
          label="New tube, from"
          value={from}
          list="bench-clusters"
          hint="U3L"
          onText={setFrom}
        />
        <TextCell
          shown="To"
          label="New tube, to"
          value={to}
          list="bench-clusters"
          hint="L5L"
          onText={setTo}
        />
        <TubeField
          shown="Size (else by its kind)"
          label="New tube, size"
          tube={tube ?? undefined}
          onTube={setTube}
        />
      </AddForm>
      <p className="small soft">
        Enter adds it and begins the next; the size stays. Or touch two clusters in the picture, one after the
        other, and join them there.
      </p>
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
