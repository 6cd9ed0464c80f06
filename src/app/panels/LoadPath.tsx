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
      {all.loadPath.kind === 'movesFreely' && (
        <p className="notice">
          The truss as it stands can move without straining a tube, so loads cannot be followed. Neighbours by
          the clusters they meet at are still listed.
        </p>
      )}
      {asked !== undefined && (
        <section className="stack tight" aria-label={`Load-path neighbours of ${asked}`}>
          <h2>Neighbours of {asked}</h2>
          {all.loadPath.noOtherPath.includes(asked) && (
            <p className="notice small">
              No other path carries its load: a length error in it changes shape, not force.
            </p>
          )}
          <TubeForces all={all} id={asked} />
          <TubeSums all={all} id={asked} />
          <OnlyThese ids={[asked, ...rows.slice(0, 10).map(({ id }) => id)]} />
          <NextList rows={rows} limit={10} empty="No other tube has a part in its load." />
        </section>
      )}
      <section className="stack tight" aria-label="Look here next, whole job">
        <h2>Look here next</h2>
        <p className="small soft">
          Four kinds of evidence, each from 0 to 1; the order is made of the first three. An order to look in,
          not a chance. Only what was looked at with the finish off drops out.
        </p>
        <NextList
          rows={all.loadPath.next}
          limit={asked === undefined ? 14 : 6}
          empty="Nothing yet: record what you find, and this list follows the load from it."
        />
      </section>
      {all.lockedIn.suspects.length > 0 && (
        <section className="stack tight" aria-label="Suspected by the sums">
          <h2>Bends nobody has seen yet</h2>
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
          <summary>{rows.length - limit} more</summary>
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
      <dl className="evidence" aria-label={`Evidence for ${row.id}, each from 0 to 1`}>
        <Evidence name="Shares clusters" value={row.a} />
        <Evidence name="Same load path" value={row.b} />
        <Evidence name="Locked in" value={row.l} />
        <Evidence name="Takes over" value={row.w} />
      </dl>
    </li>
  );
};
