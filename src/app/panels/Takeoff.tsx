import { useState } from 'react';
import type { Assessment } from '../../core/assessment.ts';
import type { RepairTakes } from '../../core/estimate/result.ts';
import { nestingDrawing } from '../../present/draw/nesting.ts';
import { showFigure, showLength } from '../../present/show.ts';
import {
  nestingWords,
  sleeveCount,
  stockName,
  thresholdNames,
  thresholdWords,
  topicWords,
} from '../../present/words/estimate.ts';
import { listWords } from '../../present/words/names.ts';
import { methodNames } from '../../present/words/splice.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { readEntry } from '../parts/lengthEntry.ts';
import { setManual } from '../planDeeds.ts';
import { usePrefs } from '../state/prefs.ts';
import { select } from '../state/view.ts';
import { stockText, takesText, weightText } from '../text/takeoff.ts';
import { Folded } from './Estimate.tsx';

/** Tube to buy and how it is cut, what each repair takes besides, and the weight that is added. */
export const Takeoff = ({ all }: { readonly all: Assessment }) => (
  <div>
    <Folded title={stockText.fold}>
      <Stock all={all} />
    </Folded>
    <Folded title={takesText.fold}>
      <Takes all={all} />
    </Folded>
    <Folded title={weightText.fold}>
      <Weight all={all} />
    </Folded>
  </div>
);

const Stock = ({ all }: { readonly all: Assessment }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { stock } = all.takeoff;
  const [first] = stock;
  return (
    <>
      {stock.length === 0 && <p className="empty">{stockText.none}</p>}
      {stock.map((line) => {
        const name = stockName(line, units);
        return (
          <section key={name} className="stack tight stock-line" aria-label={name}>
            <div className="group-head">
              <span>{name}</span>
              <span className="small soft">{nestingWords(line)}</span>
            </div>
            <Drawing
              drawing={nestingDrawing(line, units, innerWidth < 600 ? 68 : 104)}
              title={stockText.howCut(name)}
            />
            <div className="figures small">
              <FigureLine name={stockText.bought} figure={line.boughtIn} />
              <FigureLine name={stockText.waste} figure={line.wasteIn} />
            </div>
            {line.tooLong.length > 0 && <p className="small">{stockText.tooLong(listWords(line.tooLong))}</p>}
          </section>
        );
      })}
      <p className="small soft">{stockText.note}</p>
      <div className="fields">
        <OwnLength
          topic="stock-length"
          label={stockText.lengthBought(first ? showLength(first.stockIn.value, units) : null)}
        />
        <OwnLength topic="kerf" label={stockText.kerf} />
      </div>
    </>
  );
};

const OwnLength = ({ topic, label }: { readonly topic: string; readonly label: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [typed, setTyped] = useState('');
  const entry = readEntry(typed, units, false);
  const send = (): void => {
    if (entry.kind !== 'length') return;
    if (setManual({ topic, valueIn: entry.valueIn, words: typed, source: stockText.source }, label))
      setTyped('');
  };
  return (
    <div className="stack tight">
      <LengthField label={label} typed={typed} onChange={setTyped} />
      {entry.kind === 'length' && typed.trim() !== '' && (
        <button type="button" onClick={send}>
          {stockText.use}
        </button>
      )}
    </div>
  );
};

const sums = ['rosettes', 'weldIn', 'rodLb', 'primerIn2'] as const;

const Takes = ({ all }: { readonly all: Assessment }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { repairs } = all.takeoff;
  if (repairs.length === 0) return <p className="empty">{takesText.none}</p>;
  const totalOf = (what: (typeof sums)[number]): string => {
    const known = repairs.flatMap((r) => r[what] ?? []);
    const missing = repairs.length - known.length;
    if (known.length === 0) return takesText.notDesigned;
    const value = known.reduce((sum, f) => sum + f.value, 0);
    return takesText.alsoNotDesigned(showFigure({ ...known[0]!, value }, units), missing);
  };
  return (
    <>
      <div className="figures">
        <PlainLine name={takesText.sleeves}>{sleeveCount(all.takeoff.stock)}</PlainLine>
        {sums.map((what) => (
          <PlainLine key={what} name={takesText.sums[what]}>
            {totalOf(what)}
          </PlainLine>
        ))}
      </div>
      <ul className="entries small">
        {repairs.map((repair) => (
          <Repair key={repair.member} repair={repair} />
        ))}
      </ul>
    </>
  );
};

const Repair = ({ repair }: { readonly repair: RepairTakes }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    <li>
      <span>
        <button type="button" className="link" onClick={() => select(repair.member)}>
          {repair.member}
        </button>
        {repair.method ? methodNames[repair.method] : takesText.notDesigned}
      </span>
      <span className="soft">
        {sums
          .flatMap((what) => {
            const figure = repair[what];
            return figure ? takesText.sum(takesText.sums[what], showFigure(figure, units)) : [];
          })
          .join(' · ')}
      </span>
    </li>
  );
};

const Weight = ({ all }: { readonly all: Assessment }) => {
  const units = usePrefs((prefs) => prefs.units);
  const { ledger } = all.takeoff;
  return (
    <>
      <div className="figures">
        <FigureLine name={weightText.added} figure={ledger.addedLb} />
        <FigureLine name={weightText.moment} figure={ledger.momentLbIn} />
        {ledger.shiftIn ? (
          <FigureLine name={weightText.movesAft} figure={ledger.shiftIn} />
        ) : (
          <PlainLine name={weightText.moves}>{weightText.cannotSay}</PlainLine>
        )}
      </div>
      {ledger.rows.length > 0 && (
        <ul className="entries small">
          {ledger.rows.map((row) => (
            <li key={row.member} className="line-row">
              <span>
                <button type="button" className="link" onClick={() => select(row.member)}>
                  {row.member}
                </button>
                {weightText.atStation(showFigure(row.armIn, units))}
              </span>
              <span>
                {showFigure(row.addedLb, units)} · {showFigure(row.momentLbIn, units)}
              </span>
            </li>
          ))}
        </ul>
      )}
      {ledger.notKnown.length > 0 && (
        <p className="small">{weightText.notKnown(listWords(ledger.notKnown))}</p>
      )}
      {ledger.thresholds.map((held) => (
        <div key={held.rule} className="notice small">
          <strong>{thresholdNames[held.rule] ?? held.rule}</strong>
          <p>
            {weightText.against(
              held.value ? showFigure(held.value, units) : null,
              held.limit ? showFigure(held.limit, units) : null,
              thresholdWords[held.says],
              held.missing.map((m) => topicWords[m] ?? m).join(', '),
            )}
          </p>
          {held.limit && <p className="soft">{held.limit.basis.ref}</p>}
        </div>
      ))}
      <p className="small soft">{weightText.note}</p>
      <WeightNumber />
      <div className="fields">
        <OwnLength topic="empty-cg" label={weightText.emptyCg} />
        <OwnLength topic="chord" label={weightText.chord} />
      </div>
    </>
  );
};

const WeightNumber = () => {
  const [typed, setTyped] = useState('');
  const value = Number(typed);
  return (
    <div className="plan-freeze">
      <label className="field">
        <span className="caption">{weightText.emptyWeightLb}</span>
        <input inputMode="decimal" value={typed} onChange={(e) => setTyped(e.target.value)} />
      </label>
      <button
        type="button"
        disabled={!(value > 0)}
        onClick={() =>
          setManual(
            { topic: 'empty-weight-lb', value, words: `${typed} lb`, source: weightText.source },
            weightText.emptyWeight,
          ) && setTyped('')
        }
      >
        {weightText.use}
      </button>
    </div>
  );
};
