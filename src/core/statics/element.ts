import { cross, dot, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Member } from '../truss/result.ts';
import type { FrameMember } from './frame.ts';

/**
 * A member of the truss as the frame sees it: a straight round tube in six natural modes.
 *
 *   D = EA/L, GJ/L, EI/L, EI/L, 3EI/L, 3EI/L
 *
 * A ball end turns each plane's two bending modes into one, 3EI/4L, and drops twist; two ball ends, or a
 * pinned model, leave stretch alone.
 *
 * @param a  place of the end `from`, in, and `b` of the end `to`; not the same point
 * Source: Przemieniecki, Theory of Matrix Structural Analysis (1968) ch. 4–5; Argyris' natural modes.
 */
export const frameMember = (
  m: Pick<Member, 'id' | 'section' | 'ends'>,
  i: number,
  j: number,
  a: Vec3,
  b: Vec3,
  joints: 'welded' | 'pinned',
): FrameMember => {
  const along = sub(b, a);
  const e = unit(along);
  const lengthIn = dot(along, e);
  const y = acrossTube(e);
  const z = cross(e, y);
  const { areaIn2, inertiaIn4, torsionIn4, elasticPsi, shearPsi, densityLbIn3 } = m.section;
  const stretch = (elasticPsi * areaIn2) / lengthIn;
  const bending = (elasticPsi * inertiaIn4) / lengthIn;
  const twist = (shearPsi * torsionIn4) / lengthIn;
  const balls = joints === 'pinned' ? [true, true] : m.ends.map((end) => end === 'ball');
  const common = { id: m.id, i, j, lengthIn, e, y, z, weightLbPerIn: densityLbIn3 * areaIn2 };
  if (balls[0] && balls[1]) return { ...common, stiffness: Float64Array.of(stretch, 0, 0, 0, 0, 0) };
  if (balls[0] || balls[1])
    return {
      ...common,
      ball: balls[0] ? 'i' : 'j',
      stiffness: Float64Array.of(stretch, 0, 0, 0, 0.75 * bending, 0.75 * bending),
    };
  return {
    ...common,
    stiffness: Float64Array.of(stretch, twist, bending, bending, 3 * bending, 3 * bending),
  };
};

/** Does the member hold moments at its end? A member of stretch alone holds none. */
export const holdsTurning = (m: FrameMember, end: 'i' | 'j'): boolean =>
  m.stiffness[4]! > 0 && m.ball !== end;

/** A unit vector across e, from the aircraft axis that e leans to least. */
const acrossTube = (e: Vec3): Vec3 => {
  const [x, y, z] = e.map(Math.abs) as [number, number, number];
  const axis: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  return unit(sub(axis, scale(e, dot(axis, e))));
};
