import type { NextRow } from '../../core/loadPath/result.ts';
import { fixed } from '../../present/show.ts';
import { stateWords } from '../../present/tables/members.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { reasonWords, suspectWords } from '../../present/words/reasons.ts';
import { Cautions } from '../parts/Caution.tsx';
import { Issues } from '../parts/Issues.tsx';
import { OnlyThese } from '../parts/OnlyThese.tsx';
import { TagMark } from '../parts/TagMark.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { ShowInPicture } from '../picture/ShowInPicture.tsx';
import { useAnswer } from '../state/answer.ts';
import { ask, select, useView } from '../state/view.ts';
import { loadPathText } from '../text/loadPath.ts';
import { MishapForm } from './MishapForm.tsx';
import { TubeForces } from './TubeForces.tsx';
import { TubeSums } from './TubeSums.tsx';
import { ZoneCoverage } from './ZoneCoverage.tsx';

/** Where to look next, with the reasons: for the tube in hand, and for the whole job. */
export const LoadPathPanel = () => {
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!all) return <Waiting />;
  const asked = [...selected].reverse().find((id) => all.loadPath.byMember[id] !== undefined);
  const rows = asked === undefined ? [] : (all.loadPath.byMember[asked] ?? []);
  return (
    <div className="stack">
      <ShowInPicture />
      <Cautions step="lookNext" />
      <MishapForm />
      <ZoneCoverage />
      {all.loadPath.kind === 'movesFreely' && <p className="notice">{loadPathText.movesFreely}</p>}
      {asked !== undefined && (
        <section className="stack tight" aria-label={loadPathText.neighboursNamed(asked)}>
          <h2>{loadPathText.neighbours(asked)}</h2>
          {all.loadPath.noOtherPath.includes(asked) && (
            <p className="notice small">{loadPathText.noOtherPath}</p>
          )}
          <TubeForces all={all} id={asked} />
          <TubeSums all={all} id={asked} />
          <OnlyThese ids={[asked, ...rows.slice(0, 10).map(({ id }) => id)]} />
          <NextList rows={rows} limit={10} empty={loadPathText.noNeighbours} />
        </section>
      )}
      <section className="stack tight" aria-label={loadPathText.nextNamed}>
        <h2>{loadPathText.next}</h2>
        <p className="small soft">{loadPathText.nextLead}</p>
        <NextList
          rows={all.loadPath.next}
          limit={asked === undefined ? 14 : 6}
          empty={loadPathText.nothingNext}
        />
      </section>
      {all.lockedIn.suspects.length > 0 && (
        <section className="stack tight" aria-label={loadPathText.suspectsNamed}>
          <h2>{loadPathText.suspects}</h2>
          <ul className="entries">
            {all.lockedIn.suspects.map((suspect) => (
              <li key={suspect.id}>
                <button type="button" className="link" onClick={() => select(suspect.id)}>
                  {suspect.id}
                </button>
                <span>{suspectWords(suspect)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Issues issues={all.loadPath.issues} />
    </div>
  );
};

const NextList = ({
  rows,
  limit,
  empty,
}: {
  readonly rows: readonly NextRow[];
  readonly limit: number;
  readonly empty: string;
}) => {
  if (rows.length === 0) return <p className="empty">{empty}</p>;
  return (
    <>
      <ol className="entries">
        {rows.slice(0, limit).map((row) => (
          <Next key={row.id} row={row} />
        ))}
      </ol>
      {rows.length > limit && (
        <details>
          <summary>{loadPathText.more(rows.length - limit)}</summary>
          <ol className="entries">
            {rows.slice(limit).map((row) => (
              <Next key={row.id} row={row} />
            ))}
          </ol>
        </details>
      )}
    </>
  );
};

const Evidence = ({ name, value }: { readonly name: string; readonly value: number | null }) => (
  <div>
    <dt>{name}</dt>
    <dd>{value === null ? '–' : fixed(value, 2)}</dd>
  </div>
);

const Next = ({ row }: { readonly row: NextRow }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const member = now?.members.get(row.id);
  const mark = now?.marks.get(row.id);
  return (
    <li>
      <div className="entry-head">
        <button
          type="button"
          className="link"
          onClick={() => {
            select(row.id);
            ask('keep', 'none');
          }}
        >
          {row.rank}. {row.id}
        </button>
        <TagMark state={mark?.state ?? 'notLookedAt'} damage={mark?.damage[0]} word={stateWords(mark)} />
      </div>
      <p className="soft small">{member ? memberWords(member) : clusterWords(row.id)}</p>
      <ul className="reasons">
        {row.reasons.map((reason) => (
          <li key={JSON.stringify(reason)}>{reasonWords(reason)}</li>
        ))}
      </ul>
      <dl className="evidence" aria-label={loadPathText.evidence(row.id)}>
        <Evidence name={loadPathText.sharesClusters} value={row.a} />
        <Evidence name={loadPathText.sameLoadPath} value={row.b} />
        <Evidence name={loadPathText.lockedIn} value={row.l} />
        <Evidence name={loadPathText.takesOver} value={row.w} />
      </dl>
    </li>
  );
};
