import { byRule, fromCuts } from './parts.ts';
import type { Failing, Insertion } from './result.ts';

/** A sleeve and the room at its own stub. */
export interface Runner {
  readonly part: string;
  readonly needIn: number;
  readonly stubRoomIn: number;
}

type Into = 'stub' | 'section';
/** Both into their own stubs, else one into the section, else both into the section, end to end. */
const ways: readonly (readonly [Into, Into])[] = [
  ['stub', 'stub'],
  ['stub', 'section'],
  ['section', 'stub'],
  ['section', 'section'],
];

/** A hair of arithmetic must not refuse a sleeve that was given exactly its room. */
const SAME = 1e-9;

/**
 * Where the two sleeves wait, run back flush, while the section goes in.
 *
 * @param sectionRoomIn  longest sleeve that lies within the section, flush with both its ends
 * Source: common practice, no source.
 */
export const runBack = (
  runners: readonly [Runner, Runner],
  sectionRoomIn: number,
): { readonly insertion: readonly Insertion[]; readonly failing: readonly Failing[] } => {
  const goes = ways.find((way) => {
    const inSection = runners.filter((_, k) => way[k] === 'section').reduce((sum, r) => sum + r.needIn, 0);
    const inStubs = runners.every((r, k) => way[k] === 'section' || r.needIn <= r.stubRoomIn + SAME);
    return inStubs && inSection <= sectionRoomIn + SAME;
  });
  const insertion = runners.map((r, k): Insertion => {
    const stub = k === 0 ? 'fromStub' : 'toStub';
    return {
      part: r.part,
      into: goes ? (goes[k] === 'stub' ? stub : 'section') : r.needIn <= r.stubRoomIn + SAME ? stub : null,
      needIn: fromCuts(r.needIn),
      stubRoomIn: fromCuts(r.stubRoomIn),
      sectionRoomIn: fromCuts(sectionRoomIn),
    };
  });
  const failing = insertion
    .filter((i) => i.into === null)
    .map((i) => ({
      rule: 'run-back',
      at: i.part,
      needIn: byRule(i.needIn.value, 'run-back'),
      haveIn: fromCuts(Math.max(i.stubRoomIn.value, sectionRoomIn)),
    }));
  return { insertion, failing };
};
