import { type Issue, issue } from '../base/issue.ts';
import { cross, dot, scale, sub, type Vec3 } from '../base/vec3.ts';
import type { LoadCase } from '../job/modelSchema.ts';
import { holdsTurning } from './element.ts';
import type { Frame, FrameMember } from './frame.ts';

/** What one load case puts on the clusters. */
export interface CaseLoads {
  /** Forces and moments at the freedoms of the frame, lbf and in-lbf, length 6 n. */
  readonly loads: Float64Array;
  /** The part of them that each member's own weight makes at its two ends, 12 numbers a member. */
  readonly ownWeight: Float64Array;
  readonly issues: readonly Issue[];
}

/** A model without load cases carries this: its own weight, standing still. */
export const OWN_WEIGHT: LoadCase = {
  id: 'ownWeight',
  name: 'Own weight, 1 g down',
  gravity: [0, 0, -1],
  loads: [],
};

/** How a member's own weight comes to its ends: with the end moments of a loaded beam, or half and half. */
export type WeightRule = 'consistent' | 'lumped';

/**
 * Forces, moments, entered weights and own weight of a load case.
 *
 * @param rule  consistent for a welded frame; lumped where inertia carries the case, so that weight and inertia
 *              of one tube cancel. Members that only stretch are lumped either way.
 * Fails: loads at clusters that do not exist, or have no tube, become issues and are left out.
 */
export const caseLoads = (frame: Frame, loadCase: LoadCase, rule: WeightRule = 'consistent'): CaseLoads => {
  const issues: Issue[] = [];
  const at = `model.loadCases[${loadCase.id}]`;
  const loads = new Float64Array(6 * frame.clusters.length);
  const put = (cluster: string, first: number, v: Vec3): void => {
    const c = frame.clusterIndex.get(cluster);
    if (c === undefined) {
      issues.push(issue('unknown-cluster', `${at}.loads`, { cluster }, 'name-a-cluster-of-the-model'));
      return;
    }
    for (let d = 0; d < 3; d++) loads[6 * c + first + d]! += v[d]!;
  };
  for (const load of loadCase.loads) {
    if (load.forceLbf) put(load.cluster, 0, load.forceLbf);
    if (load.momentInLbf) put(load.cluster, 3, load.momentInLbf);
  }
  for (const { cluster, weightLbf } of loadCase.weights ?? [])
    put(cluster, 0, scale(loadCase.gravity, weightLbf));
  const ownWeight = memberWeights(frame, loadCase.gravity, rule);
  frame.members.forEach((m, index) => {
    for (let d = 0; d < 6; d++) {
      loads[6 * m.i + d]! += ownWeight[12 * index + d]!;
      loads[6 * m.j + d]! += ownWeight[12 * index + 6 + d]!;
    }
  });
  return { loads, ownWeight, issues };
};

/** Own weight of every member at its two ends, 12 numbers a member: force and moment at i, then at j. */
const memberWeights = (frame: Frame, gravity: Vec3, rule: WeightRule): Float64Array => {
  const all = new Float64Array(12 * frame.members.length);
  frame.members.forEach((m, index) => {
    all.set(endWeights(m, scale(gravity, m.weightLbPerIn), rule), 12 * index);
  });
  return all;
};

/**
 * Loads at the ends of a member from a load w per inch along it, equal and opposite to its fixed-end forces.
 *
 *   welded    wL/2 at each end, ±(L²/12) e×w          stretch alone, or lumped   wL/2 at each end
 *   one ball  across the tube 5wL/8 and (L²/8) e×w at the welded end, 3wL/8 at the ball
 *
 * @param w  load per inch, lbf/in, aircraft axes
 * Source: fixed-end forces of beams, any structures text; in vectors as methods of this project give them.
 */
export const endWeights = (m: FrameMember, w: Vec3, rule: WeightRule): Float64Array => {
  const l = m.lengthIn;
  const half = scale(w, l / 2);
  const turning = cross(m.e, w);
  if (rule === 'lumped' || (!holdsTurning(m, 'i') && !holdsTurning(m, 'j')))
    return Float64Array.of(...half, 0, 0, 0, ...half, 0, 0, 0);
  if (m.ball === undefined) {
    const moment = scale(turning, (l * l) / 12);
    return Float64Array.of(...half, ...moment, ...half, ...scale(moment, -1));
  }
  const across = sub(w, scale(m.e, dot(m.e, w)));
  const shift = scale(across, l / 8);
  const moment = scale(turning, (l * l) / 8);
  const more = [half[0] + shift[0], half[1] + shift[1], half[2] + shift[2]];
  const less = sub(half, shift);
  return m.ball === 'j'
    ? Float64Array.of(...more, ...moment, ...less, 0, 0, 0)
    : Float64Array.of(...less, 0, 0, 0, ...more, ...scale(moment, -1));
};
