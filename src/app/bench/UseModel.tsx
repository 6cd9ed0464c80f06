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
import { useModelText as text, amendText as words } from '../text/modelUse.ts';
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
    [words.lists.clustersAdded, told.clustersAdded],
    [words.lists.clustersGone, told.clustersRemoved],
    [words.lists.clustersMoved, told.clustersMoved.map((m) => words.moved(m.id, size(m.byIn)))],
    [words.lists.tubesAdded, told.membersAdded],
    [words.lists.tubesGone, told.membersRemoved],
    [words.lists.tubesResized, told.membersResized],
    [
      words.lists.tubesLengthened,
      told.membersLengthened.map((m) => words.lengthened(m.id, m.byIn > 0, size(m.byIn))),
    ],
  ] as const;
  const nothing = lists.every(([, ids]) => ids.length === 0);
  const amend = (): void => {
    if (!change({ kind: 'amendModel', model }, words.amended)) return;
    closeBench();
  };
  return (
    <section className="stack tight" aria-label={words.amend}>
      <h3>{words.title(job.name)}</h3>
      <p>{words.lead}</p>
      {nothing ? (
        <p className="soft">{words.nothing}</p>
      ) : (
        <ul className="entries">
          {lists.map(([title, ids]) => (
            <Listed key={title} title={title} ids={ids} />
          ))}
        </ul>
      )}
      {told.lost.length > 0 && (
        <div className="notice caution stack tight">
          <strong>{words.lost(countWords(told.lost.length, 'record'))}</strong>
          <ul className="small">
            {told.lost.map((one) => (
              <li key={`${one.record} ${one.names}`}>{words.lostOne(one.kind, one.names)}</li>
            ))}
          </ul>
          <label className="check">
            <input type="checkbox" checked={sure} onChange={(e) => setSure(e.target.checked)} />
            {words.keep}
          </label>
        </div>
      )}
      <div className="row">
        <button type="button" disabled={told.lost.length > 0 && !sure} onClick={amend}>
          {words.amend}
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
    ...(model.source === '' ? [text.todo.source] : []),
    ...(model.datum === '' ? [text.todo.datum] : []),
    ...(model.setups.length === 0 ? [text.todo.setup] : []),
  ];
  return (
    <div className="stack">
      <p>
        {text.counts(
          countWords(truss.members.length, 'tube'),
          countWords(truss.clusters.length, 'cluster'),
          assumed,
        )}
        {still.length > 0 ? text.still(listWords(still)) : ''}
      </p>
      <section className="stack tight" aria-label={text.region}>
        <h3>{text.title}</h3>
        <div className="row">
          <button
            type="button"
            onClick={() =>
              saveFile(fileName(model.name, '.model.json'), writeModel(model), 'application/json')
            }
          >
            {text.save}
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
            {text.newJob}
          </button>
        </div>
      </section>
      <Amend />
    </div>
  );
};
