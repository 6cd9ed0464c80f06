import { useMemo, useState } from 'react';
import { jobFromModel } from '../../core/job/jobFromModel.ts';
import { writeModel } from '../../core/job/write.ts';
import { modelChanges } from '../../core/truss/modelChanges.ts';
import { countWords, listWords } from '../../present/words/names.ts';
import { startJob } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { change, useJob } from '../state/job.ts';
import { setView } from '../state/view.ts';
import { fileName, saveFile } from '../storage/files.ts';
import { closeBench, useDraft, useDraftTruss } from './draft.ts';
import { asDrawn } from './drawn.ts';

const Listed = ({ title, ids }: { readonly title: string; readonly ids: readonly string[] }) =>
  ids.length === 0 ? null : (
    <li>
      <strong>
        {title}: {ids.length}
      </strong>
      <span className="small">{listWords(ids)}</span>
    </li>
  );

const Amend = () => {
  const model = useDraft((draft) => draft.model);
  const job = useJob((state) => state.job);
  const live = useAnswer((answer) => answer.atOnce?.live);
  const [sure, setSure] = useState(false);
  const before = live?.model ?? job?.model;
  const told = useMemo(() => {
    if (!before || !live) return null;
    const records = [
      ...live.looks,
      ...live.areas,
      ...live.findings,
      ...live.readings,
      ...live.decisions,
      ...live.held,
      ...live.progress,
      ...live.photos,
      ...live.notes,
      ...(live.mishap ? [live.mishap] : []),
    ];
    return modelChanges(before, model, records);
  }, [before, model, live]);
  if (!job || !told) return null;
  const size = (v: number): string => `${asDrawn(Math.abs(v), model.drawnIn)} ${model.drawnIn}`;
  const lists = [
    ['Clusters added', told.clustersAdded],
    ['Clusters gone', told.clustersRemoved],
    ['Clusters moved', told.clustersMoved.map((m) => `${m.id} by ${size(m.byIn)}`)],
    ['Tubes added', told.membersAdded],
    ['Tubes gone', told.membersRemoved],
    ['Tubes of another size', told.membersResized],
    [
      'Tubes longer or shorter',
      told.membersLengthened.map((m) => `${m.id} ${m.byIn > 0 ? 'longer' : 'shorter'} by ${size(m.byIn)}`),
    ],
  ] as const;
  const nothing = lists.every(([, ids]) => ids.length === 0);
  const amend = (): void => {
    if (!change({ kind: 'amendModel', model }, 'model amended')) return;
    closeBench();
  };
  return (
    <section className="stack tight" aria-label="Amend the open job">
      <h3>Amend the open job: {job.name}</h3>
      <p>Everything entered in the job stays. What the amendment does:</p>
      {nothing ? (
        <p className="soft">No tube and no cluster changes.</p>
      ) : (
        <ul className="entries">
          {lists.map(([title, ids]) => (
            <Listed key={title} title={title} ids={ids} />
          ))}
        </ul>
      )}
      {told.lost.length > 0 && (
        <div className="notice caution stack tight">
          <strong>{countWords(told.lost.length, 'record')} would name what the truss no longer has:</strong>
          <ul className="small">
            {told.lost.map((one) => (
              <li key={`${one.record} ${one.names}`}>
                {one.kind} of {one.names}
              </li>
            ))}
          </ul>
          <label className="check">
            <input type="checkbox" checked={sure} onChange={(e) => setSure(e.target.checked)} />
            Keep them; they will show as odd
          </label>
        </div>
      )}
      <div className="row">
        <button type="button" disabled={told.lost.length > 0 && !sure} onClick={amend}>
          Amend the open job
        </button>
      </div>
    </section>
  );
};

/** What is done with the model: a file, a new job, or the open job amended. */
export const UseModel = () => {
  const model = useDraft((draft) => draft.model);
  const truss = useDraftTruss();
  const assumed = truss.clusters.filter((c) => c.assumed).length;
  const still = [
    ...(model.source === '' ? ['say where its numbers come from'] : []),
    ...(model.datum === '' ? ['say where its datum is'] : []),
    ...(model.setups.length === 0 ? ['enter a way to be held'] : []),
  ];
  return (
    <div className="stack">
      <p>
        {countWords(truss.members.length, 'tube')}, {countWords(truss.clusters.length, 'cluster')}
        {assumed > 0 ? `; ${assumed} of them assumed` : ''}.
        {still.length > 0 ? ` Still to do: ${listWords(still)}.` : ''}
      </p>
      <section className="stack tight" aria-label="Keep or begin">
        <h3>Keep it, or begin a job on it</h3>
        <div className="row">
          <button
            type="button"
            onClick={() =>
              saveFile(fileName(model.name, '.model.json'), writeModel(model), 'application/json')
            }
          >
            Save the model as a file
          </button>
          <button
            type="button"
            className="main"
            disabled={truss.members.length === 0}
            onClick={() => {
              startJob(jobFromModel(model, model.name));
              closeBench();
              setView({ route: 'walkRound' });
            }}
          >
            New job on this model
          </button>
        </div>
      </section>
      <Amend />
    </div>
  );
};
