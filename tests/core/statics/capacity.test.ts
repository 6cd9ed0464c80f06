import { describe, expect, it } from 'vitest';
import {
  bowedColumnStress,
  capacityLbf,
  columnLineStress,
  johnsonEuler,
  memberCapacity,
  plasticMoment,
  slenderness,
} from '../../../src/core/statics/capacity.ts';
import { columnLines, cripplingLimit, slendernessLimit } from '../../../src/core/statics/columnLines.ts';
import type { Member } from '../../../src/core/truss/result.ts';
import { materialOf } from '../../../src/core/truss/stock.ts';
import { expectNear } from '../../kit/near.ts';
import { trussOf, tube } from './boxTruss.ts';

const line = (material: string) => columnLines.find((l) => l.material === material)!;
const member = (
  odIn: number,
  wallIn: number,
  lengthIn: number,
  fixity: number,
  material = '4130N',
): Member => {
  const section = { ...tube(odIn, wallIn), yieldPsi: materialOf(material)!.yieldPsi };
  const [bar] = trussOf({ a: [0, 0, 0], b: [lengthIn, 0, 0] }, [['a', 'b', section]]).members;
  return { ...bar!, material, fixity };
};
const table = { rel: 0.005, because: 'tolerance of the table of oracles' };

// Expected values: trade-facts section 10, oracles 5 to 15 and 31, worked from the published column table
// (Analysis and Design of Flight Vehicle Structures, part C4).
describe('column formulas', () => {
  it.each([
    ['4130N', 20, 74_858],
    ['4130N', 40, 66_370],
    ['4130N', 60, 55_379],
    ['4130N', 80, 42_363],
    ['4130N', 91.5, 34_075],
    ['4130N', 100, 28_600],
    ['4130N', 120, 19_861],
    ['4130N', 150, 12_711],
    ['1025', 20, 35_531],
    ['1025', 60, 31_781],
    ['1025', 100, 24_280],
    ['ht150', 40, 115_624],
    ['ht180', 40, 134_280],
  ])('gives %s at slenderness %d the stress of the table', (material, s, psi) => {
    expectNear(columnLineStress(line(material), s), psi, { rel: 1e-4, because: 'five printed figures' });
  });

  it('lets every line meet its Euler branch where they join', () => {
    for (const l of columnLines) {
      const s = l.join.value;
      // The table prints the joins of the heat-treated lines to a whole number only.
      expectNear(columnLineStress(l, s), l.euler.value / s ** 2, {
        rel: 0.05,
        because: 'joins printed to a whole number',
      });
    }
    // Oracle 6: 34,075 against 34,160 psi.
    expectNear(columnLineStress(line('4130N'), 91.5), 34_160, { rel: 0.003, because: 'stated agreement' });
  });

  it.each([
    [1, 0.035, 30, 1, '4130N', 3899],
    [1, 0.035, 30, 2, '4130N', 5738],
    [0.75, 0.035, 24, 1, '4130N', 2501],
    [0.75, 0.035, 24, 2, '4130N', 4010],
    [0.625, 0.035, 30, 1, '4130N', 900],
    [0.625, 0.035, 30, 2, '4130N', 1800],
    [1.125, 0.058, 30, 1, '4130N', 8316],
    [1.125, 0.058, 30, 2, '4130N', 11_211],
    [1, 0.035, 30, 2, '1025', 3340],
  ])(
    'lets %d × %d over %d in with c = %d in %s take the load of the table',
    (od, wall, l, c, material, lbf) => {
      expectNear(capacityLbf(member(od, wall, l, c, material), 'compression'), lbf, table);
    },
  );

  it('uses Johnson–Euler for a yield strength that is not the listed one, and says which', () => {
    const own = member(1, 0.035, 30, 1);
    const weak = { ...own, section: { ...own.section, yieldPsi: 50_000 } };
    expect(memberCapacity(own, 'compression').basis.ref).toContain('part C4');
    expect(memberCapacity(weak, 'compression').basis.ref).toBe('Johnson–Euler column');
    // Tangent point of parabola and hyperbola: half the yield strength, whatever the material.
    for (const [yieldPsi, elasticPsi] of [
      [36_000, 28e6],
      [75_000, 29e6],
    ] as const)
      expectNear(
        johnsonEuler(Math.PI * Math.sqrt((2 * elasticPsi) / yieldPsi), yieldPsi, elasticPsi),
        yieldPsi / 2,
        {
          rel: 1e-12,
          because: 'closed form',
        },
      );
  });

  it('never lets a short column take more than yield, and warns beyond the published slenderness and wall', () => {
    const short = member(1, 0.035, 1, 1);
    expectNear(capacityLbf(short, 'compression'), capacityLbf(short, 'tension'), {
      rel: 0,
      because: 'same product',
    });
    const long = memberCapacity(member(0.5, 0.035, 60, 1), 'compression');
    expect(long.assumed.some((a) => a.includes(`above ${slendernessLimit.value}`))).toBe(true);
    const thin = memberCapacity(member(2, 0.035, 20, 1), 'compression');
    expect(thin.assumed.some((a) => a.includes(`1/${cripplingLimit.value}`))).toBe(true);
  });
});

describe('bowed columns and plastic moment', () => {
  // Oracle 31: 1.000 × .035, L 30, bow L/600: 3,327 lb against 3,933 straight Euler.
  it('first yields where the magnified bow says', () => {
    const s = tube(1, 0.035);
    const p = bowedColumnStress(s, 30, 1, 0.05) * s.areaIn2;
    expectNear(p, 3327, { rel: 1e-3, because: 'four printed figures' });
    const euler = (Math.PI ** 2 * s.elasticPsi * s.inertiaIn4) / 900;
    expectNear(euler, 3933, { rel: 1e-3, because: 'four printed figures' });
    // The equation it solves, put in again: P/A + P e c/(I (1 − P/P_E)) = F_y.
    expectNear(p / s.areaIn2 + (p * 0.05 * 0.5) / (s.inertiaIn4 * (1 - p / euler)), 75_000, {
      rel: 1e-9,
      because: 'closed form',
    });
  });

  it('comes to yield or Euler, whichever is less, as the bow vanishes', () => {
    const s = tube(1, 0.035);
    for (const l of [10, 60]) {
      const euler = (Math.PI ** 2 * s.elasticPsi) / slenderness(s, l, 1) ** 2;
      expectNear(bowedColumnStress(s, l, 1, 0), Math.min(euler, 75_000), {
        rel: 1e-9,
        because: 'closed form',
      });
    }
  });

  // Shape factor 16/3π of a solid round, 1.27 of a thin tube (any text on plastic bending).
  it('has the shape factor of a solid round and of a thin tube', () => {
    const factor = (odIn: number, wallIn: number): number => {
      const s = tube(odIn, wallIn);
      return plasticMoment(s) / ((s.yieldPsi * s.inertiaIn4) / (odIn / 2));
    };
    expectNear(factor(1, 0.5), 16 / (3 * Math.PI), { rel: 1e-12, because: 'closed form' });
    expectNear(factor(2, 0.002), 4 / Math.PI, { rel: 0.002, because: 'wall of a thousandth' });
  });
});
