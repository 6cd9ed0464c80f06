import { type KeyboardEvent, useState } from 'react';
import type { Role } from '../../core/job/modelSchema.ts';
import { type BracingCell, wordAt, wordsOf } from '../../core/truss/modelBracing.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import { bracingText as text } from '../text/modelStations.ts';
import { CopyBay } from './CopyBay.tsx';
import { changeModel, useDraft, useShownTruss } from './draft.ts';
import { CELL, EDGE, edgesOf, HIGH, linesOf, stepWord, strips, wordOfKey, wordSaid } from './foldedOpen.ts';

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
      text.changed(label, face, wordSaid[word]!),
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
    changeModel(changes, text.changedAll(title));
  };
  return (
    <section className="strip" aria-label={title}>
      <div className="strip-head">
        <h3>{title}</h3>
        <select aria-label={text.allNamed(title, ring)} value="" onChange={(e) => setAll(e.target.value)}>
          <option value="" disabled>
            {text.all}
          </option>
          <option value="alternating">{text.alternating(wordSaid[wordsOf(face)[1]]!)}</option>
          <option value="otherwise">{text.alternating(wordSaid[wordsOf(face)[2]]!)}</option>
          {wordsOf(face).map((word) => (
            <option key={word} value={word}>
              {word === 'none' ? text.none : text.allOf(wordSaid[word]!)}
            </option>
          ))}
        </select>
      </div>
      <div className="strip-scroll">
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing whose cells are the buttons */}
        <svg width={wide} height={HIGH + 16} role="group" aria-label={text.drawing(title)}>
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
                aria-label={text.bay(row.label, ring, title, wordSaid[word]!)}
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

/** The truss folded open: each bay of each face is pressed until its diagonal is right. */
export const BracingPlan = () => {
  const stations = useDraft((draft) => draft.model.stations);
  const [alike, setAlike] = useState(true);
  if (stations.length < 2) return <p className="empty">{text.twoFirst}</p>;
  return (
    <div className="stack bracing-plan">
      <p className="soft">
        {text.press}{' '}
        <span className="keys-hint">
          {text.keys.move}
          <kbd>/</kbd>
          {text.keys.and}
          <kbd>\</kbd>
          {text.keys.lay}
          <kbd>x</kbd>
          {text.keys.cross}
          <kbd>0</kbd>
          {text.keys.takeOut}
        </span>
        {text.lies}
      </p>
      <label className="check">
        <input type="checkbox" checked={alike} onChange={(e) => setAlike(e.target.checked)} />
        {text.alike}
      </label>
      {strips.map(([face], k) => (
        <Strip key={face} strip={k} alike={alike} />
      ))}
      <CopyBay />
    </div>
  );
};
