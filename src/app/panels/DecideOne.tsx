import type { DispositionRow } from '../../core/disposition/result.ts';
import { showFigure, showTime } from '../../present/show.ts';
import { damageTags } from '../../present/tags.ts';
import {
  againstWords,
  limitOfWords,
  limitVerdictWords,
  scopeWayOut,
  scopeWords,
  sentence,
} from '../../present/words/disposition.ts';
import { findingPlace, findingSize } from '../../present/words/findings.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { GlyphMark } from '../parts/TagMark.tsx';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { decideOneText } from '../text/decide.ts';
import { DecideWay } from './DecideWay.tsx';
import { decideTopics } from './decideTopics.ts';
import { OwnData } from './OwnData.tsx';

/** One tube or cluster: what was found, what closes the weld, and every way with what the rules say to it. */
export const DecideOne = ({ now, row }: { readonly now: AtOnce; readonly row: DispositionRow }) => (
  <section className="stack" aria-label={decideOneText.named(row.id)}>
    <Found now={now} row={row} />
    {row.scope.length > 0 && (
      <div className="notice blocking" role="note">
        <strong>{decideOneText.closed(row.scope.map((s) => scopeWords[s]))}</strong>
        <p className="small">{scopeWayOut}</p>
      </div>
    )}
    {row.decided && <Stands now={now} row={row} decided={row.decided} />}
    <section className="stack tight" aria-label={decideOneText.ways}>
      <h3>{decideOneText.ways}</h3>
      <p className="small soft">{decideOneText.waysLead}</p>
      <div className="options">
        {row.options.map((option) => (
          <DecideWay key={option.choice} now={now} row={row} option={option} />
        ))}
      </div>
    </section>
    <Limits row={row} />
    <OwnData topics={decideTopics(row)} />
  </section>
);

const Found = ({ now, row }: { readonly now: AtOnce; readonly row: DispositionRow }) => {
  const units = usePrefs((prefs) => prefs.units);
  const findings = now.coverage.findings.filter((f) => row.findings.includes(f.id));
  if (findings.length === 0) return <p className="soft">{decideOneText.noFinding}</p>;
  return (
    <section className="stack tight" aria-label={decideOneText.found}>
      <h3>{decideOneText.foundTogether}</h3>
      <ul className="entries small">
        {findings.map((f) => (
          <li key={f.id}>
            <span className="row">
              <GlyphMark glyph={damageTags[f.damage].glyph} />
              <strong>{damageTags[f.damage].word}</strong>
              {f.of !== row.id && <span className="soft">{decideOneText.on(f.of)}</span>}
            </span>
            <span>
              {findingSize(f, units)}
              {findingPlace(f, units) === '' ? '' : `; ${findingPlace(f, units)}`}
            </span>
          </li>
        ))}
      </ul>
      {row.room && (
        <div className="figures small">
          {row.room.sides.map(({ cluster, clearIn }) => (
            <FigureLine key={cluster} name={decideOneText.soundTube(cluster)} figure={clearIn} />
          ))}
        </div>
      )}
    </section>
  );
};

const Stands = ({
  now,
  row,
  decided,
}: {
  readonly now: AtOnce;
  readonly row: DispositionRow;
  readonly decided: NonNullable<DispositionRow['decided']>;
}) => {
  const record = now.coverage.decisions.find((d) => d.id === decided.record);
  return (
    <section
      className={`notice ${decided.against ? 'blocking' : ''}`}
      aria-label={decideOneText.decisionOn(row.id)}
    >
      <p>
        <strong>{againstWords(decided.choice, decided.answer)}</strong>
      </p>
      <p className="small">
        {record ? `${record.by}, ${showTime(record.at)}. ` : ''}
        {record?.reason
          ? decideOneText.reason(record.reason)
          : decided.reasonNeeded
            ? decideOneText.reasonNeeded
            : decideOneText.noReason}
      </p>
    </section>
  );
};

const Limits = ({ row }: { readonly row: DispositionRow }) => {
  const units = usePrefs((prefs) => prefs.units);
  if (row.limits.length === 0) return null;
  return (
    <section className="stack tight" aria-label={decideOneText.limitsNamed}>
      <h3>{decideOneText.limits}</h3>
      <div className="figures">
        {row.limits.map((check) =>
          check.measured ? (
            <FigureLine
              key={`${check.of} ${check.finding}`}
              name={`${sentence(limitOfWords[check.of])}: ${limitVerdictWords[check.verdict]}`}
              figure={check.measured}
              text={
                check.limit
                  ? decideOneText.ofLimit(showFigure(check.measured, units), showFigure(check.limit, units))
                  : showFigure(check.measured, units)
              }
            />
          ) : (
            <PlainLine key={`${check.of} ${check.finding}`} name={sentence(limitOfWords[check.of])}>
              {decideOneText.notMeasured}
            </PlainLine>
          ),
        )}
      </div>
      <Cautions step="noSource" />
    </section>
  );
};
