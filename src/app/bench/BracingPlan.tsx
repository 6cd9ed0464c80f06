import { type KeyboardEvent, useState } from 'react';
import type { Role, Station } from '../../core/job/modelSchema.ts';
import { type BracingCell, wordAt, wordsOf } from '../../core/truss/modelBracing.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import type { FaceName } from '../../core/truss/result.ts';
import { changeModel, useDraft, useShownTruss } from './draft.ts';

/** Faces as they lie when the truss is folded open, and what they are called. */
const strips = [
  ['left', 'Left side'],
  ['top', 'Top'],
  ['right', 'Right side'],
  ['bottom', 'Bottom'],
  ['ring', 'Across the stations'],
] as const satisfies readonly (readonly [FaceName, string])[];

const wordSaid: Readonly<Record<string, string>> = {
  none: 'none',
  rising: 'rising aft',
  falling: 'falling aft',
  toRight: 'to the right',
  toLeft: 'to the left',
  crossed: 'crossed',
};

const CELL = 64;
const HIGH = 62;
const EDGE = 6;

/** Where the two edges of a strip lie at a station, 0 at the top of the picture; null where it has none. */
type Edges = (row: Station) => readonly [number, number] | null;

const edgesOf = (face: FaceName, stations: readonly Station[]): Edges => {
  if (face === 'ring') return (row) => (row.upper && row.lower ? [EDGE, HIGH - EDGE] : null);
  const raw = (row: Station): readonly [number, number] | null => {
    if (face === 'left' || face === 'right')
      return row.upper && row.lower ? [-row.upper.waterLineIn, -row.lower.waterLineIn] : null;
    const pair = face === 'top' ? row.upper : row.lower;
    return pair ? [-pair.halfWidthIn, pair.halfWidthIn] : null;
  };
  const all = stations.flatMap((row) => raw(row) ?? []);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const scale = (HIGH - 2 * EDGE) / Math.max(1e-9, high - low);
  return (row) => {
    const at = raw(row);
    return at && [EDGE + (at[0] - low) * scale, EDGE + (at[1] - low) * scale];
  };
};

/** Lines of a word between two stations: from upper (or left) edge to the other, as they are drawn. */
const linesOf = (word: string): readonly (readonly [0 | 1, 0 | 1])[] => {
  // Edge 0 is upper, or left; a side's `rising` runs from the lower edge up, a flat's `toRight` from the left edge over.
  if (word === 'rising' || word === 'toLeft') return [[1, 0]];
  if (word === 'falling' || word === 'toRight') return [[0, 1]];
  return word === 'crossed'
    ? [
        [1, 0],
        [0, 1],
      ]
    : [];
};

const stepWord = (face: FaceName, word: string): string => {
  const words = wordsOf(face);
  return words[(words.indexOf(word) + 1) % words.length]!;
};

/** What a key says: the sign looks like the tube. */
const wordOfKey = (face: FaceName, key: string): string | undefined => {
  const [none, one, other, crossed] = wordsOf(face);
  const side = face === 'left' || face === 'right';
  return {
    '/': side ? one : other,
    '\\': side ? other : one,
    x: crossed,
    X: crossed,
    '0': none,
    Delete: none,
    Backspace: none,
  }[key];
};

const otherHand = { left: 'right', right: 'left' } as const;

const moveTo = (event: KeyboardEvent<SVGGElement>, along: number, across: number): void => {
  const plan = event.currentTarget.closest('.bracing-plan');
  const { strip, bay } = event.currentTarget.dataset;
  const next = plan?.querySelector<SVGGElement>(
    `[data-strip="${Number(strip) + across}"][data-bay="${Number(bay) + along}"]`,
  );
  next?.focus();
};

const Strip = ({ strip, alike }: { readonly strip: number; readonly alike: boolean }) => {
  const [face, title] = strips[strip]!;
  const model = useDraft((draft) => draft.model);
  const truss = useShownTruss();
  const [last, setLast] = useState(0);
  const { stations } = model;
  const edges = edgesOf(face, stations);
  const ring = face === 'ring';
  const x = (k: number): number => EDGE + k * CELL;
  const wide = 2 * EDGE + (ring ? stations.length : stations.length - 1) * CELL;
  const bays = ring ? stations : stations.slice(0, -1);
  const isLongeron = (role: Role): boolean => role === 'upperLongeron' || role === 'lowerLongeron';
  const built = new Set(
    truss.members.flatMap((m) => (isLongeron(m.role) && m.faces.includes(face) ? [m.bay] : [])),
  );
  /** Where a pair has come together the face is a triangle, and needs no diagonal. */
  const square = (k: number): boolean => {
    const rows = ring ? [stations[k]] : [stations[k], stations[k + 1]];
    const pairs = rows.flatMap((row) =>
      face === 'top' ? [row?.upper] : face === 'bottom' ? [row?.lower] : [row?.upper, row?.lower],
    );
    const flat = face === 'top' || face === 'bottom' || ring;
    return pairs.every((pair) => pair !== undefined && !(flat && pair.halfWidthIn === 0));
  };

  const both = (cells: readonly BracingCell[]): BracingCell[] =>
    alike && (face === 'left' || face === 'right')
      ? [...cells, ...cells.map((c) => ({ ...c, face: otherHand[face] }))]
      : [...cells];
  const set = (label: string, word: string): void => {
    changeModel(
      [{ kind: 'setBracing', cells: both([{ at: label, face }]), word }],
      `${label} ${face}: ${wordSaid[word]}`,
    );
  };
  const setAll = (how: string): void => {
    const [, one, other] = wordsOf(face);
    const words = how === 'alternating' ? [one, other] : how === 'otherwise' ? [other, one] : [how];
    const changes = bays.map(
      ({ label }, k): ModelChange => ({
        kind: 'setBracing',
        cells: both([{ at: label, face }]),
        word: square(k) ? words[k % words.length]! : 'none',
      }),
    );
    changeModel(changes, `${title.toLowerCase()}, all`);
  };
  return (
    <section className="strip" aria-label={title}>
      <div className="strip-head">
        <h3>{title}</h3>
        <select
          aria-label={`${title}: all ${ring ? 'stations' : 'bays'} at once`}
          value=""
          onChange={(e) => setAll(e.target.value)}
        >
          <option value="" disabled>
            All at once …
          </option>
          <option value="alternating">Alternating, {wordSaid[wordsOf(face)[1]]} first</option>
          <option value="otherwise">Alternating, {wordSaid[wordsOf(face)[2]]} first</option>
          {wordsOf(face).map((word) => (
            <option key={word} value={word}>
              {word === 'none' ? 'None' : `All ${wordSaid[word]}`}
            </option>
          ))}
        </select>
      </div>
      <div className="strip-scroll">
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing whose cells are the buttons */}
        <svg width={wide} height={HIGH + 16} role="group" aria-label={`${title}, forward at the left`}>
          {bays.map((row, k) => {
            const aft = stations[k + 1];
            const a = edges(row);
            const b = ring ? a : aft ? edges(aft) : null;
            if (!a || !b) return null;
            const word = wordAt(model, { at: row.label, face });
            const [x1, x2] = ring ? [x(k) + 9, x(k) + CELL - 9] : [x(k), x(k + 1)];
            const gone = !ring && !built.has(row.label);
            return (
              // biome-ignore lint/a11y/useSemanticElements: a button element cannot stand inside a drawing
              <g
                key={row.label}
                role="button"
                tabIndex={k === Math.min(last, bays.length - 1) ? 0 : -1}
                aria-label={`${ring ? 'Station' : 'Bay'} ${row.label}, ${title.toLowerCase()}: ${wordSaid[word]}`}
                data-strip={strip}
                data-bay={k}
                className="bay-cell"
                onFocus={() => setLast(k)}
                aria-disabled={!square(k)}
                onClick={() => square(k) && set(row.label, stepWord(face, word))}
                onKeyDown={(e) => {
                  const move = {
                    ArrowLeft: [-1, 0],
                    ArrowRight: [1, 0],
                    ArrowUp: [0, -1],
                    ArrowDown: [0, 1],
                  }[e.key];
                  const said = square(k) || word !== 'none' ? wordOfKey(face, e.key) : undefined;
                  if (move) moveTo(e, move[0]!, move[1]!);
                  else if (said !== undefined) set(row.label, said);
                  else if ((e.key === 'Enter' || e.key === ' ') && square(k))
                    set(row.label, stepWord(face, word));
                  else return;
                  e.preventDefault();
                }}
              >
                <rect
                  x={ring ? x(k) + 2 : x1}
                  y={1}
                  width={ring ? CELL - 4 : CELL}
                  height={HIGH - 2}
                  className="cell-ground"
                />
                <path
                  className={gone ? 'edge-line gone' : 'edge-line'}
                  d={`M${x1} ${a[0]}L${x2} ${b[0]}M${x1} ${a[1]}L${x2} ${b[1]}M${x1} ${a[0]}V${a[1]}M${x2} ${b[0]}V${b[1]}`}
                />
                {linesOf(word).map(([from, to]) => (
                  <line key={from} className="brace-line" x1={x1} y1={a[from]} x2={x2} y2={b[to]} />
                ))}
                <text
                  x={ring ? x(k) + CELL / 2 : x1 + 3}
                  y={HIGH + 13}
                  className={ring ? 'cell-name mid' : 'cell-name'}
                >
                  {row.label}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
    </section>
  );
};

const CopyBay = () => {
  const { stations } = useDraft((draft) => draft.model);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const labels = stations.map((s) => s.label);
  const bays = labels.slice(0, -1);
  const chosen = to === 'aft' ? bays.slice(bays.indexOf(from) + 1) : to === 'all' ? bays : [to];
  return (
    <fieldset className="row">
      <legend className="caption">Copy a bay’s bracing and tube sizes</legend>
      <select aria-label="Copy bay" value={from} onChange={(e) => setFrom(e.target.value)}>
        <option value="">Bay …</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            Bay {label}
          </option>
        ))}
      </select>
      <select aria-label="Copy to" value={to} onChange={(e) => setTo(e.target.value)}>
        <option value="">to …</option>
        <option value="aft">to all aft of it</option>
        <option value="all">to all bays</option>
        {bays.map((label) => (
          <option key={label} value={label}>
            to bay {label}
          </option>
        ))}
      </select>
      <button
        type="button"
        disabled={from === '' || to === '' || chosen.every((label) => label === from)}
        onClick={() => changeModel([{ kind: 'copyBay', from, to: chosen }], `bay ${from} copied`)}
      >
        Copy the bay
      </button>
    </fieldset>
  );
};

/** The truss folded open: each bay of each face is pressed until its diagonal is right. */
export const BracingPlan = () => {
  const stations = useDraft((draft) => draft.model.stations);
  const [alike, setAlike] = useState(true);
  if (stations.length < 2)
    return <p className="empty">Enter two stations first. The faces between them are then shown here.</p>;
  return (
    <div className="stack bracing-plan">
      <p className="soft">
        Press a bay until its diagonal is right.{' '}
        <span className="keys-hint">
          With keys: arrows move, <kbd>/</kbd> and <kbd>\</kbd> lay the diagonal, <kbd>x</kbd> crosses,{' '}
          <kbd>0</kbd> takes it out.{' '}
        </span>
        Forward is at the left; the top is seen from above with the left side uppermost.
      </p>
      <label className="check">
        <input type="checkbox" checked={alike} onChange={(e) => setAlike(e.target.checked)} />
        Left and right alike
      </label>
      {strips.map(([face], k) => (
        <Strip key={face} strip={k} alike={alike} />
      ))}
      <CopyBay />
    </div>
  );
};
