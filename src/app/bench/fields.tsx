import { useEffect, useId, useState } from 'react';
import type { Tube } from '../../core/job/modelSchema.ts';
import { stock } from '../../core/truss/stock.ts';
import { leaveField, useDraft, useDraftTruss } from './draft.ts';
import { asDrawn, readDrawn, readTube, tubeAsDrawn } from './drawn.ts';

/** A length in the unit of the drawing, taken as it is typed; what cannot be read is said and not taken. */
export const LengthCell = ({
  label,
  shown,
  valueIn,
  negative = true,
  onValue,
}: {
  readonly label: string;
  /** Seen beside the field; left out in a table, where the heading says it. */
  readonly shown?: string;
  readonly valueIn: number | undefined;
  readonly negative?: boolean;
  readonly onValue: (valueIn: number | undefined) => void;
}) => {
  const id = useId();
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? asDrawn(valueIn, drawnIn);
  const read = readDrawn(text, drawnIn, negative);
  const wrong = typed !== null && read.kind === 'wrong' ? read.words : undefined;
  return (
    <div className="field">
      {shown !== undefined && <label htmlFor={id}>{shown}</label>}
      <input
        id={id}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : `${id}-said`}
        value={text}
        placeholder={drawnIn}
        onFocus={(e) => e.currentTarget.select()}
        onChange={(e) => {
          setTyped(e.target.value);
          const now = readDrawn(e.target.value, drawnIn, negative);
          if (now.kind === 'length') onValue(now.valueIn);
          else if (now.kind === 'empty') onValue(undefined);
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

/** A tube size, typed or chosen from the list of stock. */
export const TubeField = ({
  label,
  shown,
  tube,
  onTube,
}: {
  readonly label: string;
  readonly shown?: string;
  readonly tube: Tube | undefined;
  readonly onTube: (tube: Tube | null) => void;
}) => {
  const id = useId();
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? tubeAsDrawn(tube, drawnIn);
  const read = readTube(text, drawnIn);
  const wrong = typed !== null && typed.length > 3 && read.kind === 'wrong' ? read.words : undefined;
  return (
    <div className="field">
      {shown !== undefined && <label htmlFor={id}>{shown}</label>}
      <input
        id={id}
        type="text"
        list="stock-sizes"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : `${id}-said`}
        value={text}
        placeholder={drawnIn === 'mm' ? '19.05 × 0.89' : '3/4 × .035'}
        onFocus={(e) => e.currentTarget.select()}
        onChange={(e) => {
          setTyped(e.target.value);
          const now = readTube(e.target.value, drawnIn);
          if (now.kind === 'tube') onTube(now.tube);
          else if (now.kind === 'empty') onTube(null);
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

/** The lists that fields offer: sizes of stock, clusters and tubes of the model. Once on the page. */
export const Lists = () => {
  const truss = useDraftTruss();
  const drawnIn = useDraft((draft) => draft.model.drawnIn);
  return (
    <>
      <datalist id="stock-sizes">
        {stock.flatMap(({ odIn, wallsIn }) =>
          wallsIn.map((wallIn) => {
            const text = tubeAsDrawn({ odIn, wallIn }, drawnIn);
            return <option key={text} value={text} />;
          }),
        )}
      </datalist>
      <datalist id="bench-clusters">
        {truss.clusters.map(({ id }) => (
          <option key={id} value={id} />
        ))}
      </datalist>
      <datalist id="bench-members">
        {truss.members.map(({ id }) => (
          <option key={id} value={id} />
        ))}
      </datalist>
    </>
  );
};

/** A text that is taken when the field is left or Enter is pressed, so that one entry is one change. */
export const TextCell = ({
  label,
  shown,
  value,
  list,
  hint,
  onText,
}: {
  readonly label: string;
  readonly shown?: string;
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
        onChange={(e) => setText(e.target.value)}
        onBlur={take}
        onKeyDown={(e) => {
          if (e.key === 'Enter') take();
        }}
      />
    </div>
  );
};

/** A number in a unit that is no length: pounds, g. */
export const NumberCell = ({
  label,
  value,
  onNumber,
}: {
  readonly label: string;
  readonly value: number;
  readonly onNumber: (value: number) => void;
}) => {
  const [typed, setTyped] = useState<string | null>(null);
  const wrong = typed !== null && !Number.isFinite(Number(typed || '0'));
  return (
    <input
      type="text"
      inputMode="text"
      autoComplete="off"
      aria-label={label}
      aria-invalid={wrong}
      className="number-cell"
      value={typed ?? String(value)}
      onFocus={(e) => e.currentTarget.select()}
      onChange={(e) => {
        setTyped(e.target.value);
        const now = Number(e.target.value || '0');
        if (Number.isFinite(now)) onNumber(now);
      }}
      onBlur={() => {
        setTyped(null);
        leaveField();
      }}
    />
  );
};
