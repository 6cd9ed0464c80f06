import type { KeyboardEvent } from 'react';
import type { Figure } from '../../core/base/figure.ts';
import type { Target } from '../../core/trammel/result.ts';
import { verdictOf } from '../../core/trammel/verdict.ts';
import { showLength, showWork, type Units } from '../../present/show.ts';
import { restsOn } from '../../present/words/basis.ts';
import { verdictWords } from '../../present/words/record.ts';
import { readEntry } from '../parts/lengthEntry.ts';
import { setEntry } from '../state/entry.ts';
import { aimText, readoutText } from '../text/trammelReading.ts';

/** What the distance should be, and on what that rests. */
export const Aim = ({
  aim,
  target,
  units,
}: {
  readonly aim: Figure;
  readonly target: Target;
  readonly units: Units;
}) => (
  <details className="figure">
    <summary>
      <span>{aim === target.targetIn ? aimText.target : aimText.withShrinkage}</span>
      <span className="value">{showLength(aim.value, units, 64)}</span>
    </summary>
    <div className="basis">
      <p>{aimText.inMm(showLength(aim.value, 'mm'))}</p>
      <p>{restsOn(aim)}</p>
      <p>
        {target.toleranceIn
          ? aimText.limit(showLength(target.toleranceIn.value, units, 64), restsOn(target.toleranceIn))
          : aimText.noLimit}
      </p>
    </div>
  </details>
);

/** What is typed, big; what it was read as, beside. A keyboard types into it as well. */
export const Readout = ({
  typed,
  units,
  asked,
  miss,
  onEnter,
}: {
  readonly typed: string;
  readonly units: Units;
  readonly asked: boolean;
  readonly miss: boolean;
  readonly onEnter: () => void;
}) => {
  const entry = readEntry(typed, units, false);
  const error =
    entry.kind === 'wrong'
      ? entry.words
      : entry.kind === 'empty' && asked
        ? readoutText.typeFirst
        : undefined;
  return (
    <div className="readout">
      <input
        className={typed === '' ? 'readout-typed empty-typed' : 'readout-typed'}
        aria-label={miss ? readoutText.miss : readoutText.length}
        aria-describedby="readout-said"
        inputMode="none"
        autoComplete="off"
        spellCheck={false}
        placeholder={units === 'mm' ? 'mm' : 'in'}
        value={typed}
        onChange={(e) => setEntry({ text: e.target.value })}
        onKeyDown={(e: KeyboardEvent) => {
          if (e.key === 'Enter' && !miss) onEnter();
        }}
      />
      <span className="readout-value">{entry.kind === 'length' ? entry.shown : ''}</span>
      <span id="readout-said" className={error === undefined ? 'unseen' : 'small wide'} aria-live="polite">
        {error ?? (entry.kind === 'length' ? entry.shown : '')}
      </span>
    </div>
  );
};

/** Longer or shorter than asked, and the work it means: an arrow, a word and the amount. */
export const Off = ({
  differenceIn,
  stdIn,
  toleranceIn,
  units,
}: {
  readonly differenceIn: number;
  readonly stdIn: number;
  readonly toleranceIn: number | undefined;
  readonly units: Units;
}) => {
  const amount = showWork(Math.abs(differenceIn), units);
  const none = /^0(\.0+)?( |$)/.test(amount);
  const verdict = verdictOf(differenceIn, stdIn, toleranceIn);
  const way = none ? 'none' : verdict === 'inside' ? 'inside' : differenceIn < 0 ? 'spread' : 'draw';
  return (
    <div className="off" data-way={way} role="status">
      <span className="off-arrow" aria-hidden="true">
        {none ? '=' : differenceIn < 0 ? '← →' : '→ ←'}
      </span>
      <span>
        <strong>
          {none
            ? readoutText.onTarget
            : differenceIn < 0
              ? readoutText.shorter(amount)
              : readoutText.longer(amount)}
        </strong>
        <br />
        <span className="small">{verdictWords[verdict]}</span>
      </span>
    </div>
  );
};
