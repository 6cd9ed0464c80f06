import { useId } from 'react';
import { type Level, levels } from '../../core/practice/exercise.ts';
import { levelWords } from '../../present/words/practice.ts';
import { askText } from '../text/practice.ts';
import { freshSeed } from './session.ts';

/** What an exercise is made by. */
export interface Asked {
  readonly level: Level;
  readonly seed: string;
  /** Exam: no hints, no reasons until it is handed in. */
  readonly locked: boolean;
}

/** Level, seed, and hints or none; the same for a trainee and an instructor. */
export const AskFields = ({
  ask,
  lockedWords,
  onAsk,
}: {
  readonly ask: Asked;
  readonly lockedWords: string;
  readonly onAsk: (ask: Asked) => void;
}) => {
  const id = useId();
  const { level, seed, locked } = ask;
  return (
    <>
      <div className="field wide">
        <label htmlFor={`${id}-level`}>{askText.level}</label>
        <select
          id={`${id}-level`}
          value={level}
          onChange={(e) => onAsk({ ...ask, level: Number(e.target.value) as Level })}
        >
          {levels.map((one) => (
            <option key={one} value={one}>
              {levelWords[one]}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor={`${id}-seed`}>{askText.seed}</label>
        <input
          id={`${id}-seed`}
          type="text"
          maxLength={40}
          value={seed}
          autoComplete="off"
          onChange={(e) => onAsk({ ...ask, seed: e.target.value })}
          onBlur={() => seed.trim() === '' && onAsk({ ...ask, seed: freshSeed() })}
        />
      </div>
      <label className="check">
        <input
          type="checkbox"
          checked={locked}
          onChange={(e) => onAsk({ ...ask, locked: e.target.checked })}
        />
        {lockedWords}
      </label>
    </>
  );
};
