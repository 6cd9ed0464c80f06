import { type Issue, issue } from '../base/issue.ts';
import type { Model, Station } from '../job/modelSchema.ts';

/** Two cluster ids that the pattern joins, not yet in order. */
export type Ends = readonly [string, string];

type Word = string | undefined;
/** `U4R`, or the centre cluster where the two longerons merge; null where the station has none. */
const corner = (row: Station, height: 'U' | 'L', side: 'L' | 'R'): string | null => {
  const pair = height === 'U' ? row.upper : row.lower;
  if (!pair) return null;
  return `${height}${row.label}${pair.halfWidthIn === 0 ? 'C' : side}`;
};
const join = (a: string | null, b: string | null): readonly Ends[] =>
  a !== null && b !== null && a !== b ? [[a, b]] : [];

const sideDiagonals = (word: Word, fwd: Station, aft: Station, side: 'L' | 'R'): readonly Ends[] => {
  const rising = join(corner(fwd, 'L', side), corner(aft, 'U', side));
  const falling = join(corner(fwd, 'U', side), corner(aft, 'L', side));
  if (word === 'rising') return rising;
  if (word === 'falling') return falling;
  return word === 'crossed' ? [...rising, ...falling] : [];
};

const flatDiagonals = (word: Word, fwd: Station, aft: Station, height: 'U' | 'L'): readonly Ends[] => {
  // Where a pair merges the face is a triangle: the diagonal would lie on a longeron.
  const square = [fwd, aft].every((row) => {
    const pair = height === 'U' ? row.upper : row.lower;
    return pair && pair.halfWidthIn > 0;
  });
  if (!square) return [];
  const toRight = join(corner(fwd, height, 'L'), corner(aft, height, 'R'));
  const toLeft = join(corner(fwd, height, 'R'), corner(aft, height, 'L'));
  if (word === 'toRight') return toRight;
  if (word === 'toLeft') return toLeft;
  return word === 'crossed' ? [...toRight, ...toLeft] : [];
};

const ringDiagonals = (word: Word, row: Station): readonly Ends[] => {
  if (!row.upper?.halfWidthIn || !row.lower?.halfWidthIn) return [];
  const toRight = join(corner(row, 'U', 'L'), corner(row, 'L', 'R'));
  const toLeft = join(corner(row, 'U', 'R'), corner(row, 'L', 'L'));
  if (word === 'toRight') return toRight;
  if (word === 'toLeft') return toLeft;
  return word === 'crossed' ? [...toRight, ...toLeft] : [];
};

/** Longerons, verticals and cross members: what the station table makes without any word of bracing. */
const basics = (stations: readonly Station[]): readonly Ends[] => {
  const longerons = (['U', 'L'] as const).flatMap((height) => {
    const rows = stations.filter((row) => (height === 'U' ? row.upper : row.lower));
    return rows
      .slice(1)
      .flatMap((aft, k) =>
        (['L', 'R'] as const).flatMap((side) =>
          join(corner(rows[k]!, height, side), corner(aft, height, side)),
        ),
      );
  });
  const rings = stations.flatMap((row) => [
    ...join(corner(row, 'U', 'L'), corner(row, 'L', 'L')),
    ...join(corner(row, 'U', 'R'), corner(row, 'L', 'R')),
    ...join(corner(row, 'U', 'L'), corner(row, 'U', 'R')),
    ...join(corner(row, 'L', 'L'), corner(row, 'L', 'R')),
  ]);
  return [...longerons, ...rings];
};

const words = ['left', 'right', 'top', 'bottom', 'ring'] as const;
const diagonals = (
  face: (typeof words)[number],
  word: Word,
  row: Station,
  aft?: Station,
): readonly Ends[] => {
  if (face === 'ring') return ringDiagonals(word, row);
  if (!aft) return [];
  if (face === 'left') return sideDiagonals(word, row, aft, 'L');
  if (face === 'right') return sideDiagonals(word, row, aft, 'R');
  return flatDiagonals(word, row, aft, face === 'top' ? 'U' : 'L');
};

/**
 * The pairs of clusters that stations and bracing words join, each pair once.
 *
 * Sides: `rising` = L k → U k+1, `falling` = U k → L k+1. Top and bottom: `toRight` = left k → right k+1.
 * Ring: `toRight` = upper left → lower right. `crossed` = both, passing unjoined. Later rows outrank earlier ones.
 *
 * @param stations  in order aft, labels unique
 * @returns odd: words that make no tube (no such station, a merged corner, the last bay)
 */
export const bracing = (
  model: Model,
  stations: readonly Station[],
): { ends: readonly Ends[]; odd: readonly Issue[] } => {
  const index = new Map(stations.map((row, k) => [row.label, k]));
  const chosen = new Map<string, { ends: readonly Ends[] }>();
  const odd: Issue[] = [];
  for (const [r, row] of model.bracing.entries()) {
    const k = index.get(row.at);
    if (k === undefined) {
      odd.push(issue('unknown-station', `bracing[${r}].at`, { label: row.at }, 'name-a-station'));
      continue;
    }
    for (const face of words) {
      const word = row[face];
      if (word === undefined) continue;
      const ends = diagonals(face, word, stations[k]!, stations[k + 1]);
      chosen.set(`${k} ${face}`, { ends });
      if (word !== 'none' && ends.length === 0)
        odd.push(
          issue('bracing-makes-nothing', `bracing[${r}].${face}`, { at: row.at, face, word }, 'take-out'),
        );
    }
  }
  const all = [...basics(stations), ...[...chosen.values()].flatMap((c) => c.ends)];
  // Left and right words meet on one tube where both ends are merged.
  const once = new Map(all.map((e) => [e.toSorted().join(' '), e]));
  return { ends: [...once.values()], odd };
};
