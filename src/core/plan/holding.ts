import { distance } from '../base/vec3.ts';
import type { Relief } from '../relief/result.ts';
import type { HeldNow } from '../statics/held.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { PlanBrace } from './result.ts';
import { isHeld, type Solver } from './state.ts';
import type { WorkUnit } from './units.ts';

type Ends = readonly [from: string, to: string];
const keyOf = ([a, b]: Ends): string => [a, b].sort().join('\n');

/** At most this many places for a brace are tried. */
const MOST_TRIED = 24;

/** Where a brace could go, best first: along each tube that is cut, as relief suggests, then across the faces it touches. */
const placesFor = (
  truss: Truss,
  unit: WorkUnit,
  opened: readonly Member[],
  relief: Relief,
): readonly Ends[] => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const out = new Set(unit.opens);
  const joined = new Set(truss.members.filter((m) => !out.has(m.id)).map((m) => keyOf([m.from, m.to])));
  const found = new Map<string, Ends>();
  const put = (ends: Ends): void => {
    if (ends[0] !== ends[1] && !joined.has(keyOf(ends)) && !found.has(keyOf(ends)))
      found.set(keyOf(ends), ends);
  };
  if (unit.kind === 'member') for (const m of opened) put([m.from, m.to]);
  for (const target of relief.targets)
    for (const { cuts, brace } of [...target.candidates, ...target.soundTubes])
      if (brace && cuts.length === 1 && cuts[0] === unit.id) put([brace.from, brace.to]);
  const across: Ends[] = [];
  for (const { corners } of truss.faces) {
    if (!corners.some((c) => unit.clusters.includes(c))) continue;
    for (let p = 0; p < corners.length; p++)
      for (let q = p + 1; q < corners.length; q++) across.push([corners[p]!, corners[q]!]);
  }
  const lengthOf = ([a, b]: Ends): number => distance(at.get(a)!, at.get(b)!);
  across.sort((p, q) => lengthOf(p) - lengthOf(q) || (keyOf(p) < keyOf(q) ? -1 : 1));
  for (const ends of across) if (!ends.includes(unit.kind === 'cluster' ? unit.id : '')) put(ends);
  return [...found.values()].slice(0, MOST_TRIED);
};

/** Is a cluster where two tubes are open held: on a support, or by a brace that ends there? */
export const clusterHeld = (
  support: HeldNow,
  braces: readonly Pick<PlanBrace, 'from' | 'to'>[],
  cluster: string,
): boolean =>
  support.held.some(
    (h) => h.cluster === cluster && (['x', 'y', 'z'] as const).every((d) => h.fixed.includes(d)),
  ) || [...support.braces, ...braces].some((b) => b.from === cluster || b.to === cluster);

/** Clusters at which one of these tubes would be opened beside one that is open already. */
export const sharedClusters = (
  truss: Truss,
  open: readonly string[],
  opens: readonly string[],
): readonly string[] => {
  const endsOf = (ids: readonly string[]): ReadonlySet<string> =>
    new Set(truss.members.filter((m) => ids.includes(m.id)).flatMap((m) => [m.from, m.to]));
  const already = endsOf(open.filter((id) => !opens.includes(id)));
  return [...endsOf(opens)].filter((c) => already.has(c)).sort();
};

/**
 * Braces that keep the truss standing and under its sag limit when a repair is opened: none when it stands by itself, one,
 * or two; null when nothing tried holds it.
 *
 * @param open  tubes open already
 * @param placed  braces in place already
 * @param away  bolted tubes let go
 * Assumes: a brace is of the cut tube's own size. Common practice, no source.
 */
export const bracesFor = (
  solver: Solver,
  support: HeldNow,
  relief: Relief,
  unit: WorkUnit,
  open: readonly string[],
  placed: readonly PlanBrace[],
  away: readonly string[],
): readonly PlanBrace[] | null => {
  const { truss } = solver;
  const opened = truss.members.filter((m) => unit.opens.includes(m.id));
  const all = [...open, ...unit.opens, ...away];
  const shared = sharedClusters(truss, open, unit.opens);
  const first = opened[0];
  if (!first) return [];
  const bare = solver.solve(all, placed);
  const good = (braces: readonly PlanBrace[]): boolean => {
    const inPlace = [...placed, ...braces];
    // A rebuilt cluster opens all its tubes at once: what stands around it is always held.
    if (unit.kind === 'cluster' && braces.length === 0) return false;
    return shared.every((c) => clusterHeld(support, inPlace, c)) && isHeld(solver.solve(all, inPlace));
  };
  if (good([])) return [];
  const why =
    shared.length > 0 || (unit.kind === 'cluster' && isHeld(bare))
      ? 'neighbourOpen'
      : bare.says === 'mechanism'
        ? 'mechanism'
        : 'sag';
  const braces = placesFor(truss, unit, opened, relief)
    .filter((ends) => !placed.some((b) => keyOf([b.from, b.to]) === keyOf(ends)))
    .map(
      ([from, to]): PlanBrace => ({
        id: `brace:${unit.id}:${from}-${to}`,
        from,
        to,
        odIn: first.section.odIn,
        wallIn: first.section.wallIn,
        holds: unit.opens,
        why: why === 'sag' && keyOf([from, to]) === keyOf([first.from, first.to]) ? 'ownEnds' : why,
      }),
    );
  const one = braces.find((b) => good([b]));
  if (one) return [one];
  const [start, ...others] = braces;
  const more = start && others.find((b) => good([start, b]));
  return more ? [start, more] : null;
};
