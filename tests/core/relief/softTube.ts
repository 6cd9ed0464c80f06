import { inverse, Matrix } from 'ml-matrix';
import type { Misfit } from '../../../src/core/lockedIn/misfit.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { straightStiffness, turnOf } from './oracle.ts';

/**
 * A bowed tube's 12 × 12 stiffness in its own axes, from the textbook force method: the flexibility of the cantilever
 * fixed at i for the six forces at j, by numerical integration along the bowed axis, inverted, and carried to end i by
 * equilibrium. Shares nothing with `bowedTube.ts` but the shape of the bow.
 * Source: Przemieniecki 1968, section 5.11 (flexibility of curved bars); Simpson's rule, 400 steps.
 */
export const softTube = (
  truss: Truss,
  id: string,
  offset: (share: number) => readonly [number, number, number],
): Matrix => {
  const m = truss.members.find((x) => x.id === id)!;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const t = turnOf(at.get(m.from)!, at.get(m.to)!);
  const { elasticPsi: e, areaIn2: area, inertiaIn4: inertia, shearPsi: g, torsionIn4: j } = m.section;
  const l = m.lengthIn;
  const f = Matrix.zeros(6, 6);
  const steps = 400;
  for (let k = 0; k <= steps; k++) {
    const share = k / steps;
    const weight = ((k === 0 || k === steps ? 1 : k % 2 ? 4 : 2) * l) / (3 * steps);
    const o = t
      .subMatrix(0, 2, 0, 2)
      .mmul(Matrix.columnVector([...offset(share)]))
      .to1DArray();
    // Bending moments at the section from forces at j: M = m + r × F, r from the section to j. Forces follow the chord.
    const r = [l - share * l, -o[1]!, -o[2]!];
    const my = [r[2]!, 0, -r[0]!, 0, 1, 0];
    const mz = [-r[1]!, r[0]!, 0, 0, 0, 1];
    for (let p = 0; p < 6; p++)
      for (let q = 0; q < 6; q++)
        f.set(p, q, f.get(p, q) + (weight * (my[p]! * my[q]! + mz[p]! * mz[q]!)) / (e * inertia));
    f.set(0, 0, f.get(0, 0) + weight / (e * area));
    f.set(3, 3, f.get(3, 3) + weight / (g * j));
  }
  const kjj = inverse(f);
  // Forces at i balance those at j: F_i = −F_j, m_i = −m_j − L x × F_j.
  const h = Matrix.zeros(6, 6);
  for (let d = 0; d < 6; d++) h.set(d, d, -1);
  h.set(4, 2, l);
  h.set(5, 1, -l);
  const k = Matrix.zeros(12, 12);
  const kij = h.mmul(kjj);
  const kii = kij.mmul(h.transpose());
  for (let p = 0; p < 6; p++)
    for (let q = 0; q < 6; q++) {
      k.set(p, q, kii.get(p, q));
      k.set(p, q + 6, kij.get(p, q));
      k.set(p + 6, q, kij.get(q, p));
      k.set(p + 6, q + 6, kjj.get(p, q));
    }
  return k;
};

/** Free end displacements of a bent tube, 12, aircraft axes: both ends turned, the far end drawn in. */
export const freeEnds = (truss: Truss, misfit: Misfit, full: boolean): number[] => {
  const m = truss.members.find((x) => x.id === misfit.member)!;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const [a, b] = [at.get(m.from)!, at.get(m.to)!];
  const zero = [0, 0, 0];
  return [
    ...zero,
    ...(full ? misfit.turnFrom : zero),
    ...[0, 1, 2].map((d) => (-misfit.shortIn * (b[d]! - a[d]!)) / m.lengthIn),
    ...(full ? misfit.turnTo : zero),
  ];
};

export const straightLocal = (truss: Truss, id: string): Matrix => {
  const m = truss.members.find((x) => x.id === id)!;
  const { elasticPsi: e, areaIn2, inertiaIn4, shearPsi, torsionIn4 } = m.section;
  return straightStiffness(e * areaIn2, e * inertiaIn4, shearPsi * torsionIn4, m.lengthIn);
};
