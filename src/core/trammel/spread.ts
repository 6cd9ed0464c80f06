import { type Figure, figure } from '../base/figure.ts';
import { distance, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Hold } from '../job/jobSchema.ts';
import { placeIn, type Solution, sumOfMoves } from './adjust.ts';
import type { Spread, Target } from './result.ts';
import { FREE_STD_IN } from './shape.ts';
import { verdictOf } from './verdict.ts';

/** Moves of all clusters per lbf that pushes the two named apart, as the truss is held now. */
export type Flexibility = (from: string, to: string) => ReadonlyMap<string, Vec3>;

interface Push {
  readonly forceLbf: Figure;
  readonly changes: Spread['changes'] & {};
}

/** Below this a change of another distance is not worth a line: 1/64 in. */
const WORTH_SAYING_IN = 1 / 64;

const pushOf = (
  s: Solution,
  t: Target,
  amountIn: number,
  line: Vec3,
  targets: readonly Target[],
  flexibility: Flexibility,
): Push | undefined => {
  const perLbf = flexibility(t.from, t.to);
  const change = (a: string, b: string, along: Vec3): number => {
    const [p, q] = [perLbf.get(a), perLbf.get(b)];
    return p && q ? dot(along, sub(q, p)) : 0;
  };
  const opens = change(t.from, t.to, line);
  if (!(opens > 0)) return undefined;
  const force = amountIn / opens;
  const changes = targets
    .filter((o) => o.id !== t.id)
    .map((o) => {
      const along = unit(sub(placeIn(s, o.to), placeIn(s, o.from)));
      return { target: o.id, changeIn: force * change(o.from, o.to, along) };
    })
    .filter((c) => Math.abs(c.changeIn) >= WORTH_SAYING_IN)
    .sort((a, b) => Math.abs(b.changeIn) - Math.abs(a.changeIn) || (a.target < b.target ? -1 : 1));
  const basis = { kind: 'computed', ref: 'frame stiffness as held' } as const;
  return { forceLbf: figure(force, 'lbf', basis, ['elastic', 'no-friction']), changes };
};

/**
 * What to spread or draw: every target that the adjusted shape puts outside its tolerance, or, with no tolerance loaded,
 * further off than two standard deviations; never one that rests on a cluster whose place is a guess. Largest against its deviation first.
 *
 *   amount = target − adjusted distance, std of it from the covariance of both clusters and the target's own
 *
 * Set to the target, spreader in until tacked (no over-travel). Force and the change of other distances are given only
 * with the frame's flexibility.
 */
export const spreadOf = (
  s: Solution,
  hold: Hold,
  targets: readonly Target[],
  flexibility?: Flexibility,
): readonly Spread[] => {
  const known = targets.filter(
    (t) => t.targetIn.basis.kind !== 'assumed' && s.network.index.has(t.from) && s.network.index.has(t.to),
  );
  return known
    .flatMap((t): Spread[] => {
      const [p, q] = [placeIn(s, t.from), placeIn(s, t.to)];
      const line = unit(sub(q, p));
      const found = distance(p, q);
      const ends = new Map([
        [t.from, scale(line, -1)],
        [t.to, line],
      ]);
      const foundStd = sumOfMoves(s, ends).std;
      if (foundStd > FREE_STD_IN) return [];
      const std = Math.hypot(foundStd, t.targetIn.std ?? 0);
      const amount = t.targetIn.value - found;
      const verdict = verdictOf(amount, std, t.toleranceIn?.value);
      if (verdict !== 'outside' && !(verdict === 'noLimit' && Math.abs(amount) > 2 * std)) return [];
      const basis = { kind: 'computed', ref: `adjusted shape ${hold}` } as const;
      const push = flexibility && pushOf(s, t, amount, line, known, flexibility);
      return [
        {
          target: t.id,
          from: t.from,
          to: t.to,
          stands: amount < 0 ? 'long' : 'short',
          action: amount < 0 ? 'draw' : 'spread',
          foundIn: figure(found, 'in', basis, [], { std: foundStd }),
          amountIn: figure(amount, 'in', basis, t.targetIn.assumed, { std }),
          line,
          verdict,
          normalised: Math.abs(amount) / std,
          ...push,
        },
      ];
    })
    .sort((a, b) => b.normalised - a.normalised || (a.target < b.target ? -1 : 1));
};
