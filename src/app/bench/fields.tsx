import { useEffect, useId, useState } from 'react';
import type { Tube } from '../../core/job/modelSchema.ts';
import { modelFieldText } from '../text/modelFields.ts';
import { leaveField, useDraft } from './draft.ts';
import { asDrawn, readDrawn, readTube, tubeAsDrawn } from './drawn.ts';

/** A field of the bench: its label beside it or unseen, what is wrong with it below. */
interface Named {
  readonly label: string;
  /** Seen beside the field; left out in a table, where the heading says it. */
  readonly shown?: string;
}

/** A field whose value is taken as it is typed; what cannot be read is said and not taken. */
const TypedCell = ({
  label,
  shown,
  kept,
  hint,
  list,
  narrow = false,
  wrongIn,
  onTyped,
}: Named & {
  /** What the model holds, as it is written here. */
  readonly kept: string;
  readonly hint?: string | undefined;
  readonly list?: string;
  readonly narrow?: boolean;
  readonly wrongIn: (text: string) => string | undefined;
  readonly onTyped: (text: string) => void;
}) => {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const wrong = typed === null ? undefined : wrongIn(typed);
  return (
    <div className="field">
      {shown !== undefined && <label htmlFor={id}>{shown}</label>}
      <input
        id={id}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        className={narrow ? 'number-cell' : undefined}
        list={list}
        aria-label={label}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : `${id}-said`}
        value={typed ?? kept}
        placeholder={hint}
        onFocus={(e) => e.currentTarget.select()}
        onChange={(e) => {
          setTyped(e.target.value);
          onTyped(e.target.value);
        }}
        onBlur={() => {
          setTyped(null);
          leaveField();
        }}
      />
      {wrong !== undefined && (
        <span id={`${id}-said`} className="error small" role="status">
          {wrong}
        </span>
      )}
    </div>
  );
};

/** A length in the unit of the drawing. */
export const LengthCell = ({
  valueIn,
  negative = true,
  onValue,
  ...named
}: Named & {
  readonly valueIn: number | undefined;
  readonly negative?: boolean;
  readonly onValue: (valueIn: number | undefined) => void;
}) => {
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const read = (text: string) => readDrawn(text, drawnIn, negative);
  return (
    <TypedCell
      {...named}
      kept={asDrawn(valueIn, drawnIn)}
      hint={drawnIn}
      wrongIn={(text) => {
        const now = read(text);
        return now.kind === 'wrong' ? now.words : undefined;
      }}
      onTyped={(text) => {
        const now = read(text);
        if (now.kind === 'length') onValue(now.valueIn);
        else if (now.kind === 'empty') onValue(undefined);
      }}
    />
  );
};

/** A tube size, typed or chosen from the list of stock. */
export const TubeField = ({
  tube,
  onTube,
  ...named
}: Named & { readonly tube: Tube | undefined; readonly onTube: (tube: Tube | null) => void }) => {
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  return (
    <TypedCell
      {...named}
      kept={tubeAsDrawn(tube, drawnIn)}
      hint={drawnIn === 'mm' ? '19.05 × 0.89' : '3/4 × .035'}
      list="stock-sizes"
      wrongIn={(text) => {
        const now = readTube(text, drawnIn);
        return text.length > 3 && now.kind === 'wrong' ? now.words : undefined;
      }}
      onTyped={(text) => {
        const now = readTube(text, drawnIn);
        if (now.kind === 'tube') onTube(now.tube);
        else if (now.kind === 'empty') onTube(null);
      }}
    />
  );
};

/** A number in a unit that is no length: pounds, g, a coefficient. */
export const NumberCell = ({
  value,
  hint,
  onNumber,
  ...named
}: Named & {
  readonly value: number | undefined;
  readonly hint?: string;
  readonly onNumber: (value: number | undefined) => void;
}) => (
  <TypedCell
    {...named}
    kept={value === undefined ? '' : String(value)}
    hint={hint}
    narrow
    wrongIn={(text) => (Number.isFinite(Number(text)) ? undefined : modelFieldText.noNumber)}
    onTyped={(text) => {
      const now = Number(text);
      if (text.trim() === '') onNumber(undefined);
      else if (Number.isFinite(now)) onNumber(now);
    }}
  />
);

/** A text that is taken when the field is left or Enter is pressed, so that one entry is one change. */
export const TextCell = ({
  label,
  shown,
  value,
  list,
  hint,
  onText,
}: Named & {
  readonly value: string;
  readonly list?: 'bench-clusters' | 'bench-members';
  readonly hint?: string;
  readonly onText: (text: string) => void;
}) => {
  const id = useId();
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const take = (): void => {
    if (text !== value) onText(text.trim());
  };
  return (
    <div className="field">
      {shown !== undefined && <label htmlFor={id}>{shown}</label>}
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        list={list}
        value={text}
        placeholder={hint}
        onFocus={(e) => e.currentTarget.select()}
        onChange={(e) => setText(e.target.value)}
        onBlur={take}
        onKeyDown={(e) => {
          if (e.key === 'Enter') take();
        }}
      />
    </div>
  );
};

/** One of a few words. */
export const ChoiceCell = <Word extends string>({
  label,
  shown,
  value,
  words,
  onWord,
}: Named & {
  readonly value: Word;
  readonly words: readonly (readonly [Word, string])[];
  readonly onWord: (word: Word) => void;
}) => {
  const id = useId();
  return (
    <div className="field">
      {shown !== undefined && <label htmlFor={id}>{shown}</label>}
      <select id={id} aria-label={label} value={value} onChange={(e) => onWord(e.target.value as Word)}>
        {words.map(([word, said]) => (
          <option key={word} value={word}>
            {said}
          </option>
        ))}
      </select>
    </div>
  );
};
