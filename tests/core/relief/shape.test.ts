import type { Matrix } from 'ml-matrix';
import { expect, it } from 'vitest';
import { relief } from '../../../src/core/relief/relief.ts';
import { clockDirection, clockFace } from '../../../src/core/truss/place.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { work } from './job.ts';
import { naive } from './oracle.ts';
import { freeEnds, softTube } from './softTube.ts';
import { bow, boxModel, fixedOf, heldAt } from './trusses.ts';

const model = boxModel({ bays: 4, sides: ['crossed'] });
const truss = expandTruss(model);
const support = heldAt(
  new Map([
    ['L1L', ['x', 'y', 'z']],
    ['L1R', ['x', 'y', 'z']],
    ['U1L', ['y']],
    ['L5L', ['y', 'z']],
    ['L5R', ['y', 'z']],
  ]),
);
const findings = [bow('L2L-L3L', 0.3, { clock: 12, shape: 'smooth' })];
const { frame, coverage, locked, solved } = work({ truss, model, support, findings }, []);
const ask = (shown: readonly string[]) =>
  relief(truss, model, support, frame, coverage, locked, solved, ['L2L-L3L', 'U2L-U3L'], shown).targets;

it('every cluster’s move is given for a target asked for and for no other, and leads the few that move most', () => {
  const [asked, other] = ask(['L2L-L3L']);
  const all = ({ candidates, soundTubes }: NonNullable<typeof asked>) => [...candidates, ...soundTubes];
  for (const cut of all(other!)) expect(cut.shape).toBeUndefined();
  for (const cut of all(asked!).filter(({ verdict }) => verdict !== 'refused')) {
    expect(cut.shape!.map(({ id }) => id)).toEqual(truss.clusters.map(({ id }) => id));
    const sizes = cut.shape!.map(({ moveIn }) => Math.hypot(...moveIn)).sort((a, b) => b - a);
    expect(cut.moves.map(({ moveIn }) => Math.hypot(...moveIn))).toEqual(sizes.slice(0, 3));
  }
});

it('the shape is what a frame factored again without the tube moves by, springing open and own weight', () => {
  const misfit = locked.misfits[0]!;
  const bent = truss.members.find(({ id }) => id === misfit.member)!;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const n = clockDirection(clockFace([at.get(bent.from)!, at.get(bent.to)!], bent), 12);
  const soft = new Map<string, Matrix>([
    [
      bent.id,
      softTube(truss, bent.id, (s) => {
        const y = misfit.depthIn * Math.sin(Math.PI * s);
        return [n[0] * y, n[1] * y, n[2] * y];
      }),
    ],
  ]);
  const index = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const loads = new Array<number>(truss.clusters.length * 6).fill(0);
  for (const m of truss.members)
    for (const end of [m.from, m.to])
      loads[index.get(end)! * 6 + 2]! -= (m.section.densityLbIn3 * m.section.areaIn2 * m.lengthIn) / 2;
  const free = new Map([[bent.id, freeEnds(truss, misfit, false)]]);
  const moves = (gone: readonly string[]) =>
    naive({ truss, fixed: fixedOf(support), soft, free, loads, gone: new Set(gone) }).moves;
  const before = moves([]);
  const [target] = ask(['L2L-L3L']);
  const rows = [...target!.candidates, ...target!.soundTubes].filter(
    ({ cuts, verdict, mu }) => cuts.length === 1 && verdict !== 'refused' && mu > 1e-3,
  );
  expect(rows.length).toBeGreaterThan(3);
  for (const cut of rows) {
    const after = moves(cut.cuts);
    for (const { id, moveIn } of cut.shape!)
      moveIn.forEach((v, d) => {
        const p = index.get(id)! * 6 + d;
        expectNear(v, after[p]! - before[p]!, {
          abs: 1e-9,
          because: 'inches; two factorings of a frame of condition 1e4, the soft tube by quadrature',
        });
      });
  }
});
