import { inToMm } from '../../core/base/units.ts';
import type { Target } from '../../core/trammel/result.ts';
import { fixed, showDifference, showLength } from '../../present/show.ts';
import { clusterWords } from '../../present/words/names.ts';
import {
  distanceWords,
  holdWords,
  instrumentWords,
  verdictMends,
  verdictWords,
} from '../../present/words/record.ts';
import { removeRecord } from '../deeds.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { useView } from '../state/view.ts';
import { targetsText, targetText } from '../text/trammel.ts';
import { ReadingForm } from './ReadingForm.tsx';
import { TrammelEntry } from './TrammelEntry.tsx';
import { Fits } from './TrammelFit.tsx';
import { TrammelHolds } from './TrammelHolds.tsx';
import { TrammelOwn } from './TrammelOwn.tsx';
import { TrammelPlan } from './TrammelPlan.tsx';
import { TrammelShape } from './TrammelShape.tsx';
import { SheetButton } from './TrammelSheetButton.tsx';
import { TrammelSpread } from './TrammelSpread.tsx';
import { BaySwings } from './TrammelSwings.tsx';
import { PairsTable } from './TrammelTargets.tsx';
import { targetsFor } from './trammelLines.ts';

/**
 * The trammel in the order of its use: the reading in hand, what the readings say, what to spread, how the bays sit, the
 * plan and the hold points, and every target.
 */
export const TrammelPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!now || !all) return <Waiting />;
  const { trammel } = all;
  const targets = targetsFor(now, trammel, selected);
  const last = selected.at(-1);
  return (
    <div className="stack">
      <TrammelEntry now={now} trammel={trammel} />
      <Fits trammel={trammel} />
      <TrammelSpread trammel={trammel} />
      <BaySwings trammel={trammel} />
      <TrammelShape trammel={trammel} />
      <TrammelPlan trammel={trammel} now={now} />
      <TrammelHolds trammel={trammel} />
      <section className="stack tight" aria-label={targetsText.region}>
        <h2>{last === undefined ? targetsText.measured : targetsText.round(last)}</h2>
        {targets.length === 0 ? (
          <p className="empty">{last === undefined ? targetsText.nothingMeasured : targetsText.noTarget}</p>
        ) : (
          <>
            <details open={last !== undefined}>
              <summary>{targetsText.count(targets.length)}</summary>
              <PairsTable targets={targets} trammel={trammel} />
            </details>
            <details>
              <summary>{targetsText.each}</summary>
              <ul className="entries">
                {targets.map((target) => (
                  <TargetEntry key={target.id} target={target} />
                ))}
              </ul>
            </details>
          </>
        )}
      </section>
      <TrammelOwn now={now} trammel={trammel} />
      <SheetButton />
      <Cautions step="measuring" />
      <Issues issues={trammel.issues} />
    </div>
  );
};

/** A difference in the step a tape reads, and in millimetres: `3.2/32 in · 2.5 mm short`. */
const inThirtySeconds = (valueIn: number): string =>
  targetsText.off(fixed(Math.abs(valueIn) * 32, 1), fixed(Math.abs(inToMm(valueIn)), 1), valueIn < 0);

const TargetEntry = ({ target }: { readonly target: Target }) => {
  const units = usePrefs((prefs) => prefs.units);
  const latest = target.compared.at(-1);
  return (
    <li aria-label={targetText.named(target.id)}>
      <div className="entry-head">
        <strong>{target.id}</strong>
        <span className="small">
          {latest ? showDifference(latest.differenceIn.value, units, false) : targetText.notMeasured}
        </span>
      </div>
      <span className="small soft">
        {targetText.place(distanceWords[target.kind], clusterWords(target.from), clusterWords(target.to))}
      </span>
      <div className="figures">
        <FigureLine
          name={targetText.target}
          figure={target.targetIn}
          text={showLength(target.targetIn.value, units)}
        />
        {target.toleranceIn ? (
          <FigureLine name={targetText.tolerance} figure={target.toleranceIn} />
        ) : (
          <PlainLine name={targetText.tolerance}>{targetText.noLimit}</PlainLine>
        )}
        {target.compared.map((one) => (
          <div key={one.hold} className="stack tight">
            <FigureLine name={targetText.found(holdWords[one.hold])} figure={one.foundIn} />
            <FigureLine
              name={targetText.difference}
              figure={one.differenceIn}
              text={inThirtySeconds(one.differenceIn.value)}
            />
            <p className="small">
              {showDifference(one.differenceIn.value, units, true)}; {verdictWords[one.verdict]}
              {verdictMends[one.verdict] === '' ? '' : `: ${verdictMends[one.verdict]}`}.
            </p>
            <Taken ids={one.readings} />
          </div>
        ))}
      </div>
      <details>
        <summary>{targetText.enter(target.id)}</summary>
        <ReadingForm from={target.from} to={target.to} />
      </details>
    </li>
  );
};

/** The readings pooled in one comparison, each removable. */
const Taken = ({ ids }: { readonly ids: readonly string[] }) => {
  const units = usePrefs((prefs) => prefs.units);
  const readings = useAnswer((answer) => answer.atOnce?.live.readings);
  const mine = readings?.filter(({ id }) => ids.includes(id)) ?? [];
  return (
    <ul className="small">
      {mine.map((reading) => (
        <li key={reading.id} className="entry-head">
          <span>
            {reading.typed?.lengthIn ??
              (reading.lengthIn === undefined ? targetText.setAndMiss : showLength(reading.lengthIn, units))}
            , {instrumentWords[reading.instrument]}, {reading.by}
          </span>
          <button
            type="button"
            className="link"
            aria-label={targetText.removeNamed(reading.ends[0].cluster, reading.ends[1].cluster)}
            onClick={() => removeRecord(reading.id, targetText.removed)}
          >
            {targetText.remove}
          </button>
        </li>
      ))}
    </ul>
  );
};
