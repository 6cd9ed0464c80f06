import { type Issue, issue } from '../base/issue.ts';
import { scale } from '../base/vec3.ts';
import type { LoadCase, Model } from '../job/modelSchema.ts';
import type { Truss } from '../truss/result.ts';
import type { Frame } from './frame.ts';
import { type HeldNow, heldBySetup } from './held.ts';
import { balanceByInertia } from './inertiaRelief.ts';
import { type CaseLoads, caseLoads, OWN_WEIGHT } from './loads.ts';
import { pinnedIdealisation } from './mechanisms.ts';
import { memberForce } from './memberForce.ts';
import { pinnedRedundancy } from './pinnedRedundancy.ts';
import { isFrame, type MovesFreely, prepareFrame } from './prepareFrame.ts';
import { redundancyOf } from './redundancy.ts';
import type { ClusterMove, Reaction, SolvedCase, Statics } from './result.ts';

/** Above this condition a frame is nearly a mechanism. Source: common practice, no source (1e16 leaves six digits). */
const NEARLY_A_MECHANISM = 1e10;

/**
 * Forces, movements and reactions of every load case, indeterminacy and redundancy; or the way the truss moves freely.
 * Each case stands on its own set-up (`free`: balanced by inertia), one that names none on `support`.
 * A model without load cases carries its own weight, 1 g down.
 *
 * @param frame  the truss prepared on `support`
 * Fails: a case whose set-up does not hold the truss, or that cannot be balanced, is left out with an issue.
 */
export const statics = (
  truss: Truss,
  model: Model,
  support: HeldNow,
  frame: Frame | MovesFreely,
): Statics => {
  if (!isFrame(frame)) return { ...frame, issues: [...support.issues, ...frame.issues] };
  const issues: Issue[] = [...support.issues];
  if (frame.condition > NEARLY_A_MECHANISM)
    issues.push(
      issue(
        'nearly-a-mechanism',
        'model',
        { condition: frame.condition, heldAs: frame.heldAs },
        'brace-or-hold-more',
      ),
    );
  const cases = model.loadCases.length > 0 ? model.loadCases : [OWN_WEIGHT];
  const stands = new Map<string, Stand | null>([[support.heldAs, { support, frame }]]);
  const standOf = (setup: string): Stand | null => {
    const known = stands.get(setup);
    if (known !== undefined) return known;
    const other = heldBySetup(truss, model, setup);
    const prepared = prepareFrame(truss, other);
    issues.push(...other.issues);
    const stand = isFrame(prepared) ? { support: other, frame: prepared } : null;
    stands.set(setup, stand);
    return stand;
  };
  const solved = cases.flatMap((loadCase): SolvedCase[] => {
    const setup = loadCase.setup ?? support.heldAs;
    const stand = standOf(setup);
    if (!stand) {
      const facts = { case: loadCase.id, setup };
      issues.push(
        issue(
          'case-moves-freely',
          `model.loadCases[${loadCase.id}].setup`,
          facts,
          'hold-the-truss-in-this-set-up',
        ),
      );
      return [];
    }
    const answer = solveCase(truss, stand, loadCase, setup);
    issues.push(...answer.issues);
    return answer.solved ? [answer.solved] : [];
  });
  const { basis, ...pinned } = pinnedIdealisation(truss, support);
  return {
    kind: 'stands',
    heldAs: frame.heldAs,
    cases: solved,
    indeterminacy: indeterminacy(frame),
    ...pinned,
    redundancy: redundancyOf(frame, pinnedRedundancy(basis, frame)),
    condition: frame.condition,
    issues,
  };
};

interface Stand {
  readonly support: HeldNow;
  readonly frame: Frame;
}

/**
 * Degree of statical indeterminacy: modes that carry force less freedoms that move.
 * Six modes a welded member; a ball end takes three, two ball ends five.
 */
export const indeterminacy = (frame: Frame): number => {
  const modes = frame.members.reduce((s, m) => s + m.stiffness.filter((d) => d > 0).length, 0);
  const free = frame.held.reduce((s, h) => s + (h ? 0 : 1), 0) - frame.loose.length;
  return modes - free;
};

const solveCase = (
  truss: Truss,
  { support, frame }: Stand,
  loadCase: LoadCase,
  setup: string,
): { solved?: SolvedCase; issues: readonly Issue[] } => {
  const flies = loadCase.setup === 'free';
  const given = caseLoads(frame, loadCase, flies ? 'lumped' : 'consistent');
  const loads = flies ? balanceByInertia(truss, frame, loadCase, given.loads) : given.loads;
  if (!loads) {
    const facts = { case: loadCase.id };
    const at = `model.loadCases[${loadCase.id}]`;
    return { issues: [...given.issues, issue('no-mass-to-balance', at, facts, 'give-weights-or-a-set-up')] };
  }
  const moves = frame.solve(loads);
  const carried = frame.multiply(moves);
  const issues = [...given.issues, ...notCarried(frame, support, loadCase, loads)];
  return {
    issues,
    solved: {
      id: loadCase.id,
      setup,
      members: memberForces(truss, support, frame, loadCase, given, moves),
      clusters: frame.clusters.map((id, c) => clusterMove(id, c, moves)),
      reactions: reactions(frame, support, carried, loads),
      residual: residual(frame, carried, loads),
    },
  };
};

const memberForces = (
  truss: Truss,
  support: HeldNow,
  frame: Frame,
  loadCase: LoadCase,
  given: CaseLoads,
  moves: Float64Array,
) => {
  const sections = new Map([...truss.members, ...support.braces].map((m) => [m.id, m.section]));
  return frame.members.map((m, index) => {
    const own = given.ownWeight.subarray(12 * index, 12 * index + 12);
    return memberForce(m, sections.get(m.id)!, moves, own, scale(loadCase.gravity, m.weightLbPerIn));
  });
};

const clusterMove = (id: string, c: number, moves: Float64Array): ClusterMove => ({
  id,
  moveIn: [moves[6 * c]!, moves[6 * c + 1]!, moves[6 * c + 2]!],
  turnRad: [moves[6 * c + 3]!, moves[6 * c + 4]!, moves[6 * c + 5]!],
});

/** What each held cluster gives the truss: K u − f at the freedoms that are held there. */
const reactions = (
  frame: Frame,
  support: HeldNow,
  carried: Float64Array,
  loads: Float64Array,
): Reaction[] => {
  const clusters = [...new Set(support.held.map((h) => frame.clusterIndex.get(h.cluster)!))].sort(
    (a, b) => a - b,
  );
  return clusters.map((c) => {
    const at = (d: number): number => (frame.held[6 * c + d] ? carried[6 * c + d]! - loads[6 * c + d]! : 0);
    return {
      cluster: frame.clusters[c]!,
      forceLbf: [at(0), at(1), at(2)],
      momentInLbf: [at(3), at(4), at(5)],
    };
  });
};

const residual = (frame: Frame, carried: Float64Array, loads: Float64Array): number => {
  let off = 0;
  let all = 0;
  for (let d = 0; d < loads.length; d++) {
    all += loads[d]! ** 2;
    if (!frame.held[d]) off += (carried[d]! - loads[d]!) ** 2;
  }
  return all === 0 ? 0 : Math.sqrt(off / all);
};

const axes = ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const;

/** Loads where no tube takes them: at a cluster without tubes, or turning what is free to turn. */
const notCarried = (frame: Frame, support: HeldNow, loadCase: LoadCase, loads: Float64Array): Issue[] => {
  const taken = new Set(support.held.flatMap((h) => h.fixed.map((f) => `${h.cluster} ${f}`)));
  const at = `model.loadCases[${loadCase.id}].loads`;
  const lost = (cluster: string, about: string): Issue =>
    issue(
      'load-not-carried',
      at,
      { case: loadCase.id, cluster, about },
      'put-the-load-where-a-tube-takes-it',
    );
  const largest = loads.reduce((s, v) => Math.max(s, Math.abs(v)), 0);
  const free = frame.clusters.flatMap((cluster, c) =>
    axes.flatMap((axis, d) =>
      frame.held[6 * c + d] &&
      Math.abs(loads[6 * c + d]!) > 1e-12 * largest &&
      !taken.has(`${cluster} ${axis}`)
        ? [lost(cluster, axis)]
        : [],
    ),
  );
  const skew = frame.loose.flatMap(({ cluster, axis }) => {
    const turning = [0, 1, 2].reduce((s, d) => s + axis[d]! * loads[6 * cluster + 3 + d]!, 0);
    return Math.abs(turning) > 1e-9 * largest ? [lost(frame.clusters[cluster]!, 'a free turning')] : [];
  });
  return [...free, ...skew];
};
