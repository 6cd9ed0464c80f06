import type { Model } from '../job/modelSchema.ts';
import { addEndForces, times6 } from '../lockedIn/lockedState.ts';
import type { Member, Truss } from '../truss/result.ts';
import { effectOf, type TargetView } from './effect.ts';
import { MECHANISM } from './release.ts';
import type { Release } from './result.ts';
import type { Situation } from './situation.ts';

/** Starting values of ours, yours to change: what is worth letting go of before a saw is taken up. */
const HELPS = 0.1;
/** A weight counts when it puts this stress into the target, psi. */
const LEAST_STRESS_PSI = 100;
/** A support counts when the locked-in forces push this hard on it, lbf; the three hardest are named. */
const LEAST_REACTION_LBF = 20;
const MOST_SUPPORTS = 3;

/**
 * Releases that need no saw: bolted tubes whose letting go helps the target, weights that load it, supports that the
 * locked-in forces push on.
 *
 * Assumes: entered weights hang at 1 g down; shortening only for the supports.
 * Source: methods section 4 (releases first); common practice, no source.
 */
export const withoutSaw = (
  truss: Truss,
  model: Model,
  s: Situation,
  view: TargetView,
  target: Member,
): Release[] => [...boltedTubes(truss, s, view), ...weights(model, s, view, target), ...strainedSupports(s)];

const boltedTubes = (truss: Truss, s: Situation, view: TargetView): Release[] =>
  truss.members.flatMap((m): Release[] => {
    const cut = s.changed.frame.memberIndex.get(m.id);
    if (!m.bolted || cut === undefined || s.cuts.mu[cut]! < MECHANISM) return [];
    const { eta, source } = effectOf(s, view, cut);
    const helps = eta >= HELPS || (source !== null && Math.min(source.short, source.full) >= HELPS);
    return helps ? [{ kind: 'bolted', id: m.id, why: 'bolted-tube-lets-go' }] : [];
  });

const weights = (model: Model, s: Situation, view: TargetView, target: Member): Release[] => {
  const heaviest = new Map<string, number>();
  for (const { weights: carried } of model.loadCases)
    for (const w of carried ?? [])
      heaviest.set(w.cluster, Math.max(heaviest.get(w.cluster) ?? 0, w.weightLbf));
  const { frame } = s.changed;
  const size = frame.held.length;
  const { coupled } = view;
  return [...heaviest].sort().flatMap(([cluster, weightLbf]): Release[] => {
    const c = frame.clusterIndex.get(cluster);
    if (c === undefined) return [];
    // N = e₁ᵀ D B K⁻¹ f, and K⁻¹ Bᵀ is already there.
    let axial = 0;
    for (let t = 0; t < 6; t++) axial -= coupled.d1[t]! * coupled.moves[t * size + c * 6 + 2]! * weightLbf;
    return Math.abs(axial) / target.section.areaIn2 >= LEAST_STRESS_PSI
      ? [{ kind: 'weight', id: cluster, why: 'weight-loads-the-tube', forceLbf: axial }]
      : [];
  });
};

const strainedSupports = (s: Situation): Release[] => {
  const { frame } = s.changed;
  const pull = new Float64Array(frame.held.length);
  frame.members.forEach((m, index) => {
    const strain = s.strains.short.subarray(index * 6, index * 6 + 6);
    addEndForces(m, times6(s.changed.stiffness(index), strain), pull);
  });
  const strained = frame.clusters.flatMap((id, c) => {
    const at = c * 6;
    const forceLbf = Math.hypot(...[0, 1, 2].map((d) => (frame.held[at + d] ? pull[at + d]! : 0)));
    return forceLbf >= LEAST_REACTION_LBF
      ? [{ kind: 'support' as const, id, why: 'support-holds-it-strained' as const, forceLbf }]
      : [];
  });
  return strained.sort((p, q) => q.forceLbf - p.forceLbf).slice(0, MOST_SUPPORTS);
};
