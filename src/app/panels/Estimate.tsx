import type { ReactNode } from 'react';
import type { Assessment } from '../../core/assessment.ts';
import { type EstimateLine, lineGroups, origins } from '../../core/estimate/result.ts';
import { states } from '../../core/walkRound/result.ts';
import { fixed, whole } from '../../present/show.ts';
import {
  excludedWords,
  groupWords,
  hoursText,
  inventedNote,
  lineBasisWords,
  lineOriginWords,
  lineWhere,
  operationWords,
  rangeNote,
  spreadLine,
  threeText,
  unopenedNote,
} from '../../present/words/estimate.ts';
import { countWords, listWords } from '../../present/words/names.ts';
import { PlainLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { TagMark } from '../parts/TagMark.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { select } from '../state/view.ts';
import { estimateText as text } from '../text/estimate.ts';
import { EstimateCompare } from './EstimateCompare.tsx';
import { HiddenBands } from './EstimateHidden.tsx';
import { EstimateRates } from './EstimateRates.tsx';
import { Takeoff } from './Takeoff.tsx';

/** What the job takes: hours with what is hidden in them, tube, weld and weight. */
export const EstimatePanel = () => {
  const all = useAnswer((answer) => answer.assessment);
  if (!all) return <Waiting />;
  const { estimate } = all;
  return (
    <div className="stack">
      <Sum all={all} />
      <section className="stack tight" aria-label={text.counts}>
        <h2>{text.tubes}</h2>
        <div className="figures">
          {states
            .filter((state) => state !== 'lookedAt')
            .map((state) => (
              <div key={state} className="figure figure-plain">
                <TagMark state={state} />
                <span className="value">{estimate.counts[state]}</span>
              </div>
            ))}
        </div>
      </section>
      <HiddenBands estimate={estimate} />
      <Lines all={all} />
      <Folded title={text.rates}>
        <EstimateRates estimate={estimate} />
      </Folded>
      <Takeoff all={all} />
      <EstimateCompare all={all} />
      <Issues issues={[...all.takeoff.issues, ...estimate.issues]} />
    </div>
  );
};

export const Folded = ({ title, children }: { readonly title: string; readonly children: ReactNode }) => (
  <details className="plan-phase">
    <summary>
      <strong>{title}</strong>
      <span />
    </summary>
    <div className="stack tight plan-more">{children}</div>
  </details>
);

const Sum = ({ all }: { readonly all: Assessment }) => {
  const { withHidden, money, lines } = all.estimate;
  if (lines.length === 0) return <p className="empty">{text.none}</p>;
  const cells = [
    [text.best, withHidden.bestH.value, money?.best],
    [text.likely, withHidden.likelyH.value, money?.likely],
    [text.worst, withHidden.worstH.value, money?.worst],
  ] as const;
  return (
    <section className="stack tight" aria-label={text.sumNamed}>
      <h2>{text.sum}</h2>
      <div className="sum">
        {cells.map(([name, hours, cost]) => (
          <div key={name}>
            <span className="small soft">{name}</span>
            <strong>
              {whole(hours)} <span className="small soft">h</span>
            </strong>
            {cost !== undefined && (
              <span className="small">
                {whole(cost)} {money!.currency}
              </span>
            )}
          </div>
        ))}
      </div>
      <p className="small soft">
        {unopenedNote} {rangeNote(withHidden)}
      </p>
      <p className="small">{spreadLine(withHidden)}.</p>
      <p className="small soft">
        {text.allAtOnce(
          whole(lines.reduce((sum, l) => sum + l.hours.best, 0)),
          whole(lines.reduce((sum, l) => sum + l.hours.worst, 0)),
        )}
      </p>
      <p className="small soft">
        {text.leftOut(listWords(all.estimate.excluded.map((one) => excludedWords[one] ?? one)))}
      </p>
    </section>
  );
};

const Lines = ({ all }: { readonly all: Assessment }) => {
  const { lines, byOrigin } = all.estimate;
  if (lines.length === 0) return null;
  return (
    <section className="stack tight" aria-label={text.lines}>
      <h2>{countWords(lines.length, 'line')}</h2>
      <p className="small soft">{inventedNote}</p>
      <div>
        {lineGroups.map((group) => {
          const mine = lines.filter((line) => line.group === group);
          if (mine.length === 0) return null;
          const sum = (of: 'best' | 'likely' | 'worst') => mine.reduce((all, l) => all + l.hours[of], 0);
          return (
            <details key={group} className="plan-gate">
              <summary>
                <strong>{groupWords[group]}</strong>
                <span className="small">
                  {fixed(sum('best'), 1)} · <strong>{fixed(sum('likely'), 1)}</strong> ·{' '}
                  {fixed(sum('worst'), 1)} h
                </span>
              </summary>
              <ul className="entries small plan-more">
                {mine.map((line) => (
                  <Line key={line.id} line={line} />
                ))}
              </ul>
            </details>
          );
        })}
      </div>
      <h3>{text.byOrigin}</h3>
      <div className="figures small">
        {origins.map((origin) => (
          <PlainLine key={origin} name={lineOriginWords[origin]}>
            {hoursText(byOrigin[origin].meanH)} h{' '}
            <span className="soft">· {countWords(byOrigin[origin].lines, 'line')}</span>
          </PlainLine>
        ))}
      </div>
    </section>
  );
};

const Line = ({ line }: { readonly line: EstimateLine }) => (
  <li>
    <div className="line-row">
      <span>
        {operationWords(line.operation)}
        {line.kind === 'setUp' ? text.setUp : ''}
        {line.count > 1 ? ` × ${line.count}` : ''}
      </span>
      <span>{threeText(line.hours)} h</span>
      <span className="soft">
        {line.of === undefined ? (
          lineWhere(line)
        ) : (
          <button type="button" className="link" onClick={() => select(line.of!)}>
            {line.of}
          </button>
        )}{' '}
        · {lineOriginWords[line.origin]}
      </span>
      <span className="soft">{lineBasisWords[line.basis]}</span>
    </div>
  </li>
);
