import type { Vec3 } from '../../../src/core/base/vec3.ts';
import type { Cluster, Member, Truss } from '../../../src/core/truss/result.ts';

const section = (odIn: number): Member['section'] => ({
  odIn,
  wallIn: 0.049,
  areaIn2: 0.1,
  inertiaIn4: 0.01,
  torsionIn4: 0.02,
  elasticPsi: 29e6,
  shearPsi: 11e6,
  yieldPsi: 63e3,
  densityLbIn3: 0.283,
});

/** A tapered box of `stations` rings, written by hand so that the scene is tested without the expansion. */
export const boxTruss = (stations: number): Truss => {
  const clusters: Cluster[] = [];
  const members: Member[] = [];
  const at = new Map<string, Vec3>();
  const tube = (from: string, to: string, odIn: number, role: Member['role']) => {
    const [a, b] = [at.get(from)!, at.get(to)!];
    members.push({
      id: `${from}-${to}`,
      from,
      to,
      role,
      faces: ['left'],
      side: 'L',
      lengthIn: Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]),
      material: '4130N',
      section: section(odIn),
      ends: ['welded', 'welded'],
      fixity: 2,
      bolted: false,
      near: [],
    });
  };
  for (let k = 1; k <= stations; k++)
    for (const height of ['U', 'L'] as const)
      for (const side of ['L', 'R'] as const) {
        const half = 14 - k;
        const place: Vec3 = [20 * k, side === 'L' ? -half : half, height === 'U' ? 30 : 4 + k];
        const id = `${height}${k}${side}`;
        at.set(id, place);
        clusters.push({ id, at: place, station: `${k}`, height, side, from: 'table' });
      }
  for (let k = 1; k <= stations; k++) {
    for (const side of ['L', 'R']) {
      tube(`U${k}${side}`, `L${k}${side}`, 0.625, 'vertical');
      if (k === stations) continue;
      tube(`U${k}${side}`, `U${k + 1}${side}`, 0.875, 'upperLongeron');
      tube(`L${k}${side}`, `L${k + 1}${side}`, 1, 'lowerLongeron');
      tube(`U${k}${side}`, `L${k + 1}${side}`, 0.5, 'sideDiagonal');
    }
    for (const height of ['U', 'L']) tube(`${height}${k}L`, `${height}${k}R`, 0.5, 'crossMember');
  }
  return { clusters, members, bays: [], faces: [], pairs: [], odd: [], issues: [] };
};
