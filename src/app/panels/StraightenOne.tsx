import type { StraightenRow } from '../../core/straighten/result.ts';
import type { Member } from '../../core/truss/result.ts';
import { showFigure, showLength } from '../../present/show.ts';
import { choiceWords } from '../../present/tags.ts';
import { saysLine, stepCautions, stopWords, straightenCautions } from '../../present/words/straighten.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine } from '../parts/FigureLine.tsx';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { selectAll, setView } from '../state/view.ts';
import { straightenText } from '../text/straighten.ts';
import { OwnData, type OwnTopic } from './OwnData.tsx';
import { SetUpCard } from './SetUpCard.tsx';
import { StraightenAxis } from './StraightenAxis.tsx';
import { StraightenChecks } from './StraightenChecks.tsx';
import { StraightenPushes } from './StraightenPushes.tsx';
import { StraightenRound } from './StraightenRound.tsx';

/** One tube: what its sums say, what comes before the press, the set-ups, the log and the checks. */
export const StraightenOne = ({
  now,
  row,
  member,
}: {
  readonly now: AtOnce;
  readonly row: StraightenRow;
  readonly member: Member;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const choice = now.marks.get(row.member)?.choice;
  const ends = [member.from, member.to] as const;
  return (
    <section className="stack" aria-label={straightenText.named(row.member)}>
      <div className={`notice ${row.says === 'stop' ? 'blocking' : ''}`}>
        <p className="says">{capital(saysLine(row, units))}.</p>
        {row.stops.length > 0 && <p>{straightenText.because(row.stops.map(({ why }) => stopWords[why]))}</p>}
        <p className="small">
          {choice ? straightenText.decided(choiceWords[choice]) : straightenText.notDecided}
          {straightenText.pairing}{' '}
          <button type="button" className="link" onClick={() => setView({ route: 'decide' })}>
            {straightenText.toDecision}
          </button>
        </p>
        {row.accepted && <p className="small">{straightenText.acceptedBy(row.accepted.by)}</p>}
      </div>
      {row.cautions.map((code) => (
        <p key={code} className="notice caution small" role="note">
          <strong>{straightenText.caution}</strong> {straightenCautions[code] ?? code}
        </p>
      ))}
      <StraightenAxis row={row} member={member} />
      {row.stops.length === 0 && (
        <>
          <section className="stack tight" aria-label={straightenText.before}>
            <h3>{straightenText.before}</h3>
            <Cautions step="straightening" />
            <p className="notice warning small" role="note">
              <strong>{straightenText.warning}</strong> {stepCautions.press}
            </p>
            <p className="notice caution small" role="note">
              <strong>{straightenText.caution}</strong> {stepCautions.look}
            </p>
            <Cautions step="heating" />
          </section>
          <SetUps row={row} member={member} ends={ends} />
        </>
      )}
      <StraightenPushes row={row} from={member.from} />
      <StraightenRound row={row} from={member.from} />
      <StraightenChecks row={row} />
      <button type="button" className="link back" onClick={() => selectAll([])}>
        {straightenText.back}
      </button>
      <OwnData topics={topicsOf(row.member)} />
    </section>
  );
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const SetUps = ({
  row,
  member,
  ends,
}: {
  readonly row: StraightenRow;
  readonly member: Member;
  readonly ends: readonly [string, string];
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const { fit, next, setups } = row;
  if (!fit || (setups.length === 0 && !next)) return null;
  return (
    <section className="stack tight" aria-label={straightenText.setUps}>
      {next && (
        <>
          <h3>{straightenText.nextLead}</h3>
          <SetUpCard
            fit={fit}
            setup={next}
            lengthIn={member.lengthIn}
            ends={ends}
            name={straightenText.next}
          />
        </>
      )}
      {setups.length > 0 && (
        <>
          <h3>{next ? straightenText.asPlanned : straightenText.inOrder(setups.length)}</h3>
          <FigureLine name={straightenText.yieldTaken} figure={row.yieldPsi} />
          {setups.map((setup) => (
            <details key={setup.no} className="set-up" open={setup.no === 1 && !next}>
              <summary>
                <strong>{setup.no}.</strong>{' '}
                {straightenText.setUp(showLength(setup.atIn, units), showFigure(setup.press.pressIn, units))}
              </summary>
              <SetUpCard
                fit={fit}
                setup={setup}
                lengthIn={member.lengthIn}
                ends={ends}
                name={straightenText.setUpNamed(setup.no)}
              />
            </details>
          ))}
        </>
      )}
    </section>
  );
};

const say = straightenText.topics;
const topicsOf = (id: string): readonly OwnTopic[] => [
  { topic: `straighten-only:${id}`, label: say.alone(id), takes: 'words' },
  { topic: `limit:bow:${id}`, label: say.bow(id), takes: 'length' },
  { topic: `limit:ovality:${id}`, label: say.ovality(id), takes: 'share' },
  { topic: `yield:${id}`, label: say.yield(id), takes: 'psi' },
  { topic: `blocks:${id}`, label: say.blocks(id), takes: 'length' },
  { topic: 'blocks', label: say.allBlocks, takes: 'length' },
];
