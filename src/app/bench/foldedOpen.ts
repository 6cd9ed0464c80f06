import type { Station } from '../../core/job/modelSchema.ts';
import { wordsOf } from '../../core/truss/modelBracing.ts';
import type { FaceName } from '../../core/truss/result.ts';
import { bracingText } from '../text/modelStations.ts';

/** The truss folded open: where its faces lie in the drawing, their words, and the keys that lay them. */

/** Faces as they lie when the truss is folded open, and what they are called. */
export const strips = [
  ['left', bracingText.faces.left],
  ['top', bracingText.faces.top],
  ['right', bracingText.faces.right],
  ['bottom', bracingText.faces.bottom],
  ['ring', bracingText.faces.ring],
] as const satisfies readonly (readonly [FaceName, string])[];

export const wordSaid: Readonly<Record<string, string>> = bracingText.words;

export const CELL = 64;
export const HIGH = 62;
export const EDGE = 6;

/** Where the two edges of a strip lie at a station, 0 at the top of the picture; null where it has none. */
type Edges = (row: Station) => readonly [number, number] | null;

export const edgesOf = (face: FaceName, stations: readonly Station[]): Edges => {
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
export const linesOf = (word: string): readonly (readonly [0 | 1, 0 | 1])[] => {
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

export const stepWord = (face: FaceName, word: string): string => {
  const words = wordsOf(face);
  return words[(words.indexOf(word) + 1) % words.length]!;
};

/** What a key says: the sign looks like the tube. */
export const wordOfKey = (face: FaceName, key: string): string | undefined => {
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
