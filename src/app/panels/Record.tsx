import { states } from '../../core/walkRound/result.ts';
import { pageFoot } from '../../present/words/cautions.ts';
import { clusterWords, memberWords } from '../../present/words/names.ts';
import { PlainLine } from '../parts/FigureLine.tsx';
import { TagMark } from '../parts/TagMark.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { select } from '../state/view.ts';
import { recordText as text } from '../text/record.ts';
import { PapersOfWork } from './PapersOfWork.tsx';
import { RecordPapers } from './RecordPapers.tsx';
import { RecordSupplement } from './RecordSupplement.tsx';
import { RecordWelds } from './RecordWelds.tsx';

/** What stands on the record: counts, what nobody has looked at, and the papers to take away. */
export const RecordPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  if (!now) return <Waiting />;
  const { coverage } = now;
  const { members, clusters } = coverage.notLookedAt;
  return (
    <div className="stack">
      <RecordPapers />
      <PapersOfWork />
      <RecordSupplement />
      <RecordWelds />
      <section className="stack tight" aria-label={text.counts}>
        <h2>{text.stands}</h2>
        <div className="figures">
          {states.map((state) => (
            <div key={state} className="figure figure-plain">
              <TagMark state={state} />
              <span className="value">
                {coverage.members[state]}
                <span className="soft"> + {coverage.clusters[state]}</span>
              </span>
            </div>
          ))}
          <PlainLine name={text.findings}>{coverage.findings.length}</PlainLine>
          <PlainLine name={text.readings}>{now.live.readings.length}</PlainLine>
        </div>
        <p className="small soft">{text.countsNote}</p>
      </section>
      <section className="stack tight" aria-label={text.notLookedAtNamed}>
        <h2>{text.notLookedAt(members.length, clusters.length)}</h2>
        {members.length + clusters.length === 0 && <p>{text.allLookedAt}</p>}
        <Ids ids={members} words={(id) => memberWords(now.members.get(id)!)} name={text.tubesNotLookedAt} />
        <Ids ids={clusters} words={clusterWords} name={text.clustersNotLookedAt} />
      </section>
      <p className="small soft">{pageFoot}</p>
    </div>
  );
};

const Ids = ({
  ids,
  words,
  name,
}: {
  readonly ids: readonly string[];
  readonly words: (id: string) => string;
  readonly name: string;
}) =>
  ids.length === 0 ? null : (
    <ul className="id-list" aria-label={name}>
      {ids.map((id) => (
        <li key={id}>
          <button type="button" className="link" title={words(id)} onClick={() => select(id)}>
            {id}
          </button>
        </li>
      ))}
    </ul>
  );
