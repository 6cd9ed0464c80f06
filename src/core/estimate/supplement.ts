import type { Estimate, EstimateLine, Origin, Takeoff } from './result.ts';
import { momentsOf } from './triangle.ts';

/** What is different between two states of a job: lines of hours, pieces of tube. */
export interface Supplement {
  readonly added: readonly EstimateLine[];
  readonly removed: readonly EstimateLine[];
  readonly changed: readonly { readonly before: EstimateLine; readonly after: EstimateLine }[];
  readonly pieces: {
    readonly added: readonly string[];
    readonly removed: readonly string[];
    readonly changed: readonly string[];
  };
  /** Difference of the mean hours. */
  readonly meanH: number;
  readonly byOrigin: Readonly<Partial<Record<Origin, number>>>;
  readonly addedLb: number;
  /** Members and clusters that a difference is about, once each. */
  readonly of: readonly string[];
}

interface Snapshot {
  readonly takeoff: Takeoff;
  readonly estimate: Estimate;
}

const meanOf = (l: EstimateLine): number => momentsOf(l.hours).mean;

/** The supplement: two snapshots held against each other, line by line. */
export const supplement = (before: Snapshot, after: Snapshot): Supplement => {
  const lines = (s: Snapshot): ReadonlyMap<string, EstimateLine> =>
    new Map(s.estimate.lines.map((l) => [l.id, l]));
  const [old, now] = [lines(before), lines(after)];
  const cut = (s: Snapshot): ReadonlyMap<string, string> =>
    new Map(
      s.takeoff.stock.flatMap((line) =>
        line.pieces.map(
          (p) => [p.id, `${line.tube.odIn} ${line.tube.wallIn} ${line.material} ${p.takesIn.value}`] as const,
        ),
      ),
    );
  const [oldCuts, newCuts] = [cut(before), cut(after)];
  const added = [...now.values()].filter((l) => !old.has(l.id));
  const removed = [...old.values()].filter((l) => !now.has(l.id));
  const changed = [...now.values()].flatMap((l) => {
    const was = old.get(l.id);
    const same =
      was &&
      was.count === l.count &&
      was.origin === l.origin &&
      (['best', 'likely', 'worst'] as const).every((p) => was.hours[p] === l.hours[p]);
    return was && !same ? [{ before: was, after: l }] : [];
  });
  const byOrigin: Partial<Record<Origin, number>> = {};
  const put = (l: EstimateLine, sign: 1 | -1): void => {
    byOrigin[l.origin] = (byOrigin[l.origin] ?? 0) + sign * meanOf(l);
  };
  for (const l of added) put(l, 1);
  for (const l of removed) put(l, -1);
  for (const c of changed) {
    put(c.before, -1);
    put(c.after, 1);
  }
  const about = [...added, ...removed, ...changed.map((c) => c.after)].flatMap((l) =>
    l.of === undefined ? [] : [l.of],
  );
  return {
    added,
    removed,
    changed,
    pieces: {
      added: [...newCuts.keys()].filter((id) => !oldCuts.has(id)),
      removed: [...oldCuts.keys()].filter((id) => !newCuts.has(id)),
      changed: [...newCuts]
        .filter(([id, cutFrom]) => oldCuts.has(id) && oldCuts.get(id) !== cutFrom)
        .map(([id]) => id),
    },
    meanH: Object.values(byOrigin).reduce((sum, h) => sum + h, 0),
    byOrigin,
    addedLb: after.takeoff.ledger.addedLb.value - before.takeoff.ledger.addedLb.value,
    of: [...new Set(about)].sort(),
  };
};
