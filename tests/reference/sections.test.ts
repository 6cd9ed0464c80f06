import { describe, it } from 'vitest';
import { mmToIn } from '../../src/core/base/units.ts';
import { materialOf, roundSection } from '../../src/core/truss/stock.ts';
import { expectNear } from '../kit/near.ts';

// Source: hot-finished circular hollow sections to EN 10210-2, as printed in the UK steel section tables
// (read in github.com/waynemaranga/steelsnakes, src/steelsnakes/UK/data/HFCHS.json, commit 0e3f31a):
// D and t mm, mass kg/m, A cm², I cm⁴, torsion constant cm⁴, each printed to three figures.
const printed: readonly (readonly [number, number, number, number, number, number])[] = [
  [42.4, 3.2, 3.09, 3.94, 7.62, 15.2],
  [42.4, 5.0, 4.61, 5.87, 10.5, 20.9],
  [48.3, 3.2, 3.56, 4.53, 11.6, 23.2],
  [48.3, 6.3, 6.53, 8.31, 18.7, 37.5],
  [60.3, 3.2, 4.51, 5.74, 23.5, 46.9],
  [60.3, 5.0, 6.82, 8.69, 33.5, 67.0],
  [76.1, 3.2, 5.75, 7.33, 48.8, 97.6],
  [76.1, 8.0, 13.4, 17.1, 101, 201],
  [88.9, 4.0, 8.38, 10.7, 96.3, 193],
  [88.9, 10.0, 19.5, 24.8, 196, 392],
  [114.3, 6.3, 16.8, 21.4, 313, 625],
  [168.3, 12.5, 48.0, 61.2, 1870, 3740],
];

/** Half a unit of the third figure: all that three printed figures can tell. */
const halfThirdFigure = (value: number): number => 0.5 * 10 ** (Math.floor(Math.log10(value)) - 2);
const because = 'printed to three figures';
const CM_PER_IN = 2.54;

describe('section properties against the EN 10210-2 table', () => {
  for (const [odMm, wallMm, massKgM, areaCm2, inertiaCm4, torsionCm4] of printed)
    it(`a ${odMm} × ${wallMm} tube has the printed area, second moments and mass`, () => {
      const got = roundSection({ odIn: mmToIn(odMm), wallIn: mmToIn(wallMm) })!;
      expectNear(got.areaIn2 * CM_PER_IN ** 2, areaCm2, { abs: halfThirdFigure(areaCm2), because });
      expectNear(got.inertiaIn4 * CM_PER_IN ** 4, inertiaCm4, { abs: halfThirdFigure(inertiaCm4), because });
      expectNear(got.torsionIn4 * CM_PER_IN ** 4, torsionCm4, { abs: halfThirdFigure(torsionCm4), because });
      // EN 10210-2 reckons mass with 7.85 kg/dm³: 0.785 kg/m per cm².
      expectNear(got.areaIn2 * CM_PER_IN ** 2 * 0.785, massKgM, { abs: halfThirdFigure(massKgM), because });
    });

  it('the density kept for 4130 is that of steel', () => {
    // 7.85 kg/dm³ in lb/in³: 1 lb = 0.45359237 kg and 1 in = 2.54 cm, both exact.
    const lbIn3 = (0.00785 / 0.45359237) * 2.54 ** 3;
    expectNear(materialOf('4130N')!.densityLbIn3, lbIn3, { rel: 0.003, because: '0.283 is itself rounded' });
  });
});
