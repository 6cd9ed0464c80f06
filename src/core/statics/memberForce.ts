import { cross, dot, type Vec3 } from '../base/vec3.ts';
import type { Section } from '../truss/result.ts';
import { deformations, endForces, type FrameMember } from './frame.ts';
import type { MemberForce } from './result.ts';

/** Places along a member where its stress is worked out; the ends govern unless its own weight bends it. */
const STATIONS = 8;

/**
 * End forces of one member: what the clusters put on its ends, fixed-end forces of its own weight taken off again.
 *
 *   q = D B u,  end forces Bᵀq − f⁰,  σ = max over the length of |N|/A + M c/I
 *
 * `axialLbf` is the force at mid-length.
 * @param moves      of the whole frame, in and rad
 * @param ownWeight  the 12 numbers that its weight put on the clusters (`endWeights`)
 * @param loadPerIn  its weight per inch, aircraft axes
 */
export const memberForce = (
  m: FrameMember,
  section: Section,
  moves: Float64Array,
  ownWeight: Float64Array,
  loadPerIn: Vec3,
): MemberForce => {
  const q = deformations(m, moves).map((v, mode) => v * m.stiffness[mode]!);
  const ends = endForces(m, q).map((f, d) => f - ownWeight[d]!);
  const at = (d: number): Vec3 => [ends[d]!, ends[d + 1]!, ends[d + 2]!];
  const [forceFrom, momentFrom, momentTo] = [at(0), at(3), at(9)];
  let stressPsi = 0;
  for (let k = 0; k <= STATIONS; k++) {
    const x = (m.lengthIn * k) / STATIONS;
    const axial = -dot(forceFrom, m.e) - dot(loadPerIn, m.e) * x;
    const swing = cross(m.e, forceFrom);
    const sag = cross(m.e, loadPerIn);
    const moment: Vec3 = [0, 1, 2].map(
      (d) => -momentFrom[d]! + x * swing[d]! + ((x * x) / 2) * sag[d]!,
    ) as unknown as Vec3;
    const bending = Math.hypot(dot(moment, m.y), dot(moment, m.z));
    const fibre = section.inertiaIn4 > 0 ? (bending * section.odIn) / (2 * section.inertiaIn4) : 0;
    stressPsi = Math.max(stressPsi, Math.abs(axial) / section.areaIn2 + fibre);
  }
  return {
    id: m.id,
    axialLbf: q[0]!,
    torqueInLbf: q[1]!,
    momentFromInLbf: momentFrom,
    momentToInLbf: momentTo,
    stressPsi,
  };
};
