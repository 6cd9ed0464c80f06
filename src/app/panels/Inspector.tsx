import type { Cluster, Member } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import { showLength, showTube } from '../../present/show.ts';
import { stateWords } from '../../present/tables/members.ts';
import { clusterWords, listWords, memberWords } from '../../present/words/names.ts';
import { TagMark } from '../parts/TagMark.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, selectAll, useView } from '../state/view.ts';
import { inspectorText as text } from '../text/frame.ts';

/** What is in hand, in words: one tube, one cluster, or several. */
export const Inspector = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const selected = useView((view) => view.selected);
  if (!now) return null;
  const known = selected.filter((id) => now.marks.has(id));
  const [only] = known;
  return (
    <section className="in-hand stack tight" aria-label={text.region}>
      {known.length === 0 && <p className="soft">{text.nothing}</p>}
      {known.length === 1 && only !== undefined && <One now={now} id={only} />}
      {known.length > 1 && <Several ids={known} />}
    </section>
  );
};

const One = ({ now, id }: { readonly now: AtOnce; readonly id: string }) => {
  const member = now.members.get(id);
  const cluster = now.clusters.get(id);
  const mark = now.marks.get(id);
  if (member) return <TubeCard now={now} member={member} mark={mark} />;
  return cluster ? <ClusterCard now={now} cluster={cluster} mark={mark} /> : null;
};

const Jump = ({ id, words }: { readonly id: string; readonly words: string }) => (
  <button type="button" className="link" onClick={() => select(id)}>
    {words}
  </button>
);

const twinOf = (now: AtOnce, id: string): string | undefined => {
  const pair = now.truss.pairs.find(({ left, right }) => left === id || right === id);
  return pair ? (pair.left === id ? pair.right : pair.left) : undefined;
};

const TubeCard = ({
  now,
  member,
  mark,
}: {
  readonly now: AtOnce;
  readonly member: Member;
  readonly mark: Mark | undefined;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const twin = twinOf(now, member.id);
  return (
    <>
      <div className="card-head">
        <h2>{memberWords(member)}</h2>
        <TagMark state={mark?.state ?? 'notLookedAt'} damage={mark?.damage[0]} word={stateWords(mark)} />
      </div>
      <p>
        <strong>{member.id}</strong>
        {' · '}
        {member.tube ? showTube(member.tube, units) : text.ownSection}
        {' · '}
        {member.material}
        {' · '}
        {member.guessed ? text.noLength : text.lengthTrue(showLength(member.lengthIn, units))}
      </p>
      {member.near.length > 0 && <p className="small">{text.nearby(listWords(member.near))}</p>}
      <p className="row links">
        <Jump id={member.from} words={member.from} />
        <Jump id={member.to} words={member.to} />
        {twin !== undefined && <Jump id={twin} words={text.twin(twin)} />}
      </p>
    </>
  );
};

const ClusterCard = ({
  now,
  cluster,
  mark,
}: {
  readonly now: AtOnce;
  readonly cluster: Cluster;
  readonly mark: Mark | undefined;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const meeting = now.truss.members.filter(({ from, to }) => from === cluster.id || to === cluster.id);
  const twin = twinOf(now, cluster.id);
  const [station, buttLine, waterLine] = cluster.at;
  const hand = buttLine === 0 ? text.onCentre : buttLine > 0 ? text.right : text.left;
  return (
    <>
      <div className="card-head">
        <h2>{clusterWords(cluster.id)}</h2>
        <TagMark state={mark?.state ?? 'notLookedAt'} damage={mark?.damage[0]} word={stateWords(mark)} />
      </div>
      <p>
        <strong>{cluster.id}</strong>
        {cluster.fitting ? ` · ${cluster.fitting}` : ''}
      </p>
      <p className="small">
        {text.place(
          showLength(station, units),
          showLength(Math.abs(buttLine), units),
          hand,
          showLength(waterLine, units),
        )}
      </p>
      <p className="row links">
        {meeting.map(({ id }) => (
          <Jump key={id} id={id} words={id} />
        ))}
        {twin !== undefined && <Jump id={twin} words={text.twin(twin)} />}
      </p>
    </>
  );
};

const Several = ({ ids }: { readonly ids: readonly string[] }) => (
  <>
    <div className="entry-head">
      <h2>{text.selected(ids.length)}</h2>
      <button type="button" onClick={() => selectAll([])}>
        {text.selectNothing}
      </button>
    </div>
    <p className="row links several">
      {ids.slice(0, 24).map((id) => (
        <Jump key={id} id={id} words={id} />
      ))}
      {ids.length > 24 && <span className="small soft">{text.more(ids.length - 24)}</span>}
    </p>
  </>
);
