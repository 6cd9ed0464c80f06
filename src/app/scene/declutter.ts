/** A piece of writing that wants a place near its anchor. Pixels. */
export interface Wish {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Distance kept from the anchor to the nearest side; 0 lets the writing lie on it. */
  readonly clear: number;
  /** May be moved far, with a leader line, before it is dropped. */
  readonly far: boolean;
  /** Direction to try first, e.g. square to a tube; a unit vector. */
  readonly toward?: readonly [number, number];
}

/** Where a piece of writing goes: its upper left corner, and whether it needs a leader line. */
export interface Place {
  readonly left: number;
  readonly top: number;
  readonly leader: boolean;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const CELL = 64;
const GAP = 2;
const diagonal = Math.SQRT1_2;
const compass: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [diagonal, -diagonal],
  [-diagonal, -diagonal],
  [diagonal, diagonal],
  [-diagonal, diagonal],
];
const farRings = [30, 54, 84, 120];

/** What is already taken, in cells, so that a question costs a few comparisons however many boxes there are. */
const ledger = () => {
  const cells = new Map<number, Box[]>();
  const eachCell = (b: Box, visit: (key: number) => boolean): boolean => {
    for (let i = Math.floor(b.left / CELL); i <= Math.floor(b.right / CELL); i++)
      for (let j = Math.floor(b.top / CELL); j <= Math.floor(b.bottom / CELL); j++)
        if (visit(i * 4096 + j)) return true;
    return false;
  };
  const hits = (a: Box) => (b: Box) =>
    a.left < b.right + GAP && b.left < a.right + GAP && a.top < b.bottom + GAP && b.top < a.bottom + GAP;
  return {
    isTaken: (box: Box) => eachCell(box, (key) => cells.get(key)?.some(hits(box)) ?? false),
    take: (box: Box) => {
      eachCell(box, (key) => {
        const there = cells.get(key);
        if (there) there.push(box);
        else cells.set(key, [box]);
        return false;
      });
    },
  };
};

/**
 * Gives each wish a place where it overlaps no other and nothing in `kept`, most important first; `null` where there is
 * none. Deterministic: the same wishes get the same places.
 */
export const declutter = (
  wishes: readonly Wish[],
  bounds: Box,
  kept: readonly Box[] = [],
): readonly (Place | null)[] => {
  const taken = ledger();
  for (const box of kept) taken.take(box);
  const inside = (b: Box) =>
    b.left >= bounds.left && b.top >= bounds.top && b.right <= bounds.right && b.bottom <= bounds.bottom;
  const tryAt = (left: number, top: number, w: Wish, leader: boolean): Place | null => {
    const box = { left, top, right: left + w.width, bottom: top + w.height };
    if (!inside(box) || taken.isTaken(box)) return null;
    taken.take(box);
    return { left, top, leader };
  };
  return wishes.map((w) => {
    const outside = w.x < bounds.left || w.x > bounds.right || w.y < bounds.top || w.y > bounds.bottom;
    if (outside) return null;
    // the box touches, from outside, an ellipse of `away` pixels around the anchor
    const beside = ([dx, dy]: readonly [number, number], away: number): readonly [number, number] => [
      w.x - w.width / 2 + dx * (away + w.width / 2),
      w.y - w.height / 2 + dy * (away + w.height / 2),
    ];
    if (w.clear === 0) {
      const on = tryAt(w.x - w.width / 2, w.y - w.height / 2, w, false);
      if (on) return on;
    }
    const t = w.toward;
    const first: typeof compass = t ? [t, [-t[0], -t[1]]] : [];
    for (const away of [Math.max(w.clear, 4), ...(w.far ? farRings.map((r) => r + w.clear) : [])])
      for (const direction of [...first, ...compass]) {
        const place = tryAt(...beside(direction, away), w, away > 20);
        if (place) return place;
      }
    return null;
  });
};
