import { describe, expect, it } from 'vitest';
import { sawGuide } from '../../src/core/splice/blocks.ts';
import { innerSleeveLength } from '../../src/core/splice/innerSleeve.ts';
import { largerStubs } from '../../src/core/splice/largerTube.ts';
import { nextGauge } from '../../src/core/splice/patchPlate.ts';
import { rosettes } from '../../src/core/splice/rosette.ts';
import { spliceNumber } from '../../src/core/splice/rules.ts';
import { edgeLength, halfHeight, scarfCurve, tipsVolume } from '../../src/core/splice/scarf.ts';
import { slackIn, sleeveFaults } from '../../src/core/splice/sleeve.ts';
import { lapWeldLbf } from '../../src/core/splice/weld.ts';
import { roundSection } from '../../src/core/truss/stock.ts';
import { bench, designOf, manual } from '../core/splice/bench.ts';
import { expectNear } from '../kit/near.ts';

/** AC = FAA AC 43.13-1B with CHG 1; the numbers of its paragraphs are copied into trade-facts.md sections 5 and 10. */
const longeron = { odIn: 1, wallIn: 0.035 };
const THOUSANDTH = { abs: 6e-4, because: 'the sum is given to 1/1000 in' };
const dent = (depthIn: number, aroundIn: number, alongIn: number, odIn = 1) =>
  designOf(bench({ tube: { odIn, wallIn: 0.035 }, dent: { depthIn, aroundIn, alongIn } }), 'patch');

describe('published splice rules, row by row', () => {
  // AC 4-94a: depth 1/10 D, length D, a quarter of the circumference (trade-facts 10, row 16)
  it('4-94: limits of a patch on a 3/4 tube', () => {
    const d = dent(0.075, 0.589, 0.75, 0.75);
    expect(d.failing).toEqual([]);
    for (const [rule, most] of [
      ['patch-dent-depth', 0.075],
      ['patch-dent-length', 0.75],
      ['patch-dent-around', 0.589],
    ] as const)
      expectNear(d.rules.find((r) => r.rule === rule)!.facts.mostIn as number, most, THOUSANDTH);
  });
  // rows 17, 18
  it('4-94: .101 deep or 1.01 long on 1 in is no patch', () => {
    expect(dent(0.101, 0.5, 0.9).failing.map((f) => f.rule)).toEqual(['patch-dent-depth']);
    expect(dent(0.05, 0.5, 1.01).failing.map((f) => f.rule)).toEqual(['patch-dent-length']);
  });
  // AC 4-92, row 19: sleeve end ≥ 1.500 from the dent's edge, ends 30°, short side ≥ 4.000
  it('4-92: split sleeve over a 1 in dent', () => {
    const { plan } = designOf(bench({ damageFromIn: 14.5, damageToIn: 15.5 }), 'splitSleeve');
    const [part] = plan!.parts;
    expectNear(part!.shortIn.value, 4, THOUSANDTH);
    // trade-facts 5.12: long line 7.897; cut parallel 5.949
    expectNear(part!.longIn.value, 7.897, THOUSANDTH);
    expectNear(part!.axisIn.value, 5.949, THOUSANDTH);
    const [end] = part!.ends;
    expectNear(end.kind === 'scarf' ? end.angleRad : 0, Math.PI / 6, { abs: 1e-12, because: '30°' });
  });
  // AC 4-95, row 20
  it('4-95: inner sleeves for 1 × .035', () => {
    const faults = (odIn: number, wallIn = 0.035) => sleeveFaults(longeron, { odIn, wallIn }, 'inside');
    expect(faults(0.875)).toEqual([]);
    expect(faults(0.8125)).toEqual(['over-slack-limit']);
    expect(faults(0.9375)).toEqual(['does-not-enter']);
    expect(faults(0.8675)).toEqual([]);
    expect(faults(0.93)).toEqual([]);
    expect(faults(0.875, 0.028)).toEqual(['wall-below-original']);
    expectNear(slackIn(longeron, { odIn: 0.8125, wallIn: 0.035 }, 'inside'), 0.1175, {
      abs: 1e-9,
      because: 'exact decimals',
    });
  });
  // AC 4-96, row 21
  it('4-96: outer sleeves for 1 × .035', () => {
    const faults = (odIn: number, wallIn: number) => sleeveFaults(longeron, { odIn, wallIn }, 'outside');
    for (const wall of [0.035, 0.049, 0.058]) expect(faults(1.125, wall)).toEqual([]);
    expect(faults(1.125, 0.065)).toEqual(['does-not-enter']);
    expect(faults(1.125, 0.028)).toContain('wall-below-original');
    expect(faults(1.25, 0.083)).toEqual(['over-slack-limit']);
  });
  // AC 4-96a, row 22
  it('4-96a: most gap of an outer splice, both ends together, is 1/32 in', () => {
    const most = designOf(bench(), 'outerSleeve').plan!.gapOtherIn.value;
    expect(0.031 <= most && 0.04 > most).toBe(true);
    expectNear(most, 1 / 32, { because: 'the published number' });
  });
  // AC 4-95a, row 23
  it('4-95a: gap of .125 at each end of an inner splice', () => {
    expectNear(designOf(bench(), 'innerSleeve').plan!.gapIn.value, 0.125, {
      because: 'the published number',
    });
  });
  // AC 4-97, row 24
  it('4-97: stubs of 2.5 and 4.5 D for the larger tube, not 2.4', () => {
    const stubs = (a: number, b: number) =>
      largerStubs(1, [
        { at: 'A', clearIn: a },
        { at: 'B', clearIn: b },
      ]).failing.map((f) => [f.rule, f.at]);
    expect(stubs(2.5, 4.5)).toEqual([]);
    expect(stubs(4.5, 2.5)).toEqual([]);
    expect(stubs(2.4, 4.5)).toEqual([['larger-short-stub', 'A']]);
    expect(stubs(2.5, 4.4)).toEqual([['larger-long-stub', 'B']]);
  });
  // AC 4-84, row 25
  it('4-84: rosette hole .25, edge at least .50, bleed hole .125 on a 1 in tube', () => {
    const lap = { in: 'fromStub', sleeveEndIn: 0, cutAt: () => 1.5, way: 1 } as const;
    const r = rosettes(1, [lap], 12)!;
    expectNear(r.holeIn.value, 0.25, { because: 'exact' });
    expectNear(r.bleedIn.value, 0.125, { because: 'exact' });
    for (const p of r.places)
      expect(Math.min(p.toInnerEndIn.value, p.toOuterEndIn.value)).toBeGreaterThanOrEqual(0.5);
    expect(rosettes(1, [{ ...lap, cutAt: () => 1.24 }], 12)).toBeNull();
  });
  // AC 4-91d: stop holes No. 40, .098 in (trade-facts 5.1)
  it('4-91d: stop hole .098', () => {
    expectNear(spliceNumber('stop-hole'), 0.098, { because: 'No. 40 drill' });
  });
  // AC 4-83, figure 4-27, row 27
  it('4-83: lap weld .050 thick and 1 in long at 43 ksi carries 1 520 lb', () => {
    expectNear(lapWeldLbf(0.05, 1, 43_000), 1520, { rel: 0.001, because: 'given to three digits' });
  });
  // row 36: a chord of .720 across 1.000 is .256 of the circumference, past a quarter; .700 is .247
  it('4-94: a dent of .720 across is wider than a quarter of the circumference, .700 is not', () => {
    const arc = (chord: number): number => 2 * 0.5 * Math.asin(chord);
    expect(dent(0.05, arc(0.72), 0.9).failing.map((f) => f.rule)).toEqual(['patch-dent-around']);
    expect(dent(0.05, arc(0.7), 0.9).failing).toEqual([]);
  });
  // trade-facts 5.12: patch .049 for .035
  it('4-94: one gauge thicker than .035 is .049', () => {
    expect(nextGauge(0.035)).toBe(0.049);
  });
});

describe('the worked example of 1.000 × .035 (trade-facts 5.12)', () => {
  it('inner sleeve 4.857 long, 4.982 if the gap is square to the cut', () => {
    expectNear(innerSleeveLength(1), 4.857, THOUSANDTH);
    const plan = designOf(bench(), 'innerSleeve').plan!;
    expectNear(innerSleeveLength(1) - plan.gapIn.value + plan.gapOtherIn.value, 4.982, THOUSANDTH);
    // .875 OD, .055 loose; .875 × .035 has 87 % of the longeron's area
    const { chosen } = designOf(bench(), 'innerSleeve').sleeve!;
    expect(chosen!.tube).toEqual({ odIn: 0.875, wallIn: 0.035 });
    expect(chosen!.says).toContain('less-area');
    expectNear(roundSection(chosen!.tube)!.areaIn2 / roundSection(longeron)!.areaIn2, 0.87, {
      abs: 0.005,
      because: 'given as 87 %',
    });
  });
  it('outer sleeve 4.949 between tips, 3.000 crotch to crotch', () => {
    const sleeve = designOf(bench(), 'outerSleeve').plan!.parts.find((p) => p.kind === 'sleeve')!;
    expect(sleeve.tube.odIn).toBe(1.125);
    expectNear(sleeve.longIn.value, 4.949, THOUSANDTH);
    expectNear(sleeve.shortIn.value, 3, THOUSANDTH);
  });
  it('outer stock: .058, .049 and .035 walls at 1-1/8, .009, .027 and .055 loose', () => {
    const { others } = designOf(bench(), 'outerSleeve').sleeve!;
    const at = others
      .filter((o) => o.tube.odIn === 1.125)
      .map((o) => [o.tube.wallIn, Number(o.slackIn.value.toFixed(4))]);
    expect(at).toEqual([
      [0.058, 0.009],
      [0.049, 0.027],
      [0.035, 0.055],
    ]);
    const heavy = others.filter((o) => o.tube.odIn === 1.25).map((o) => o.tube.wallIn);
    expect(heavy).toEqual([0.12, 0.095]);
  });
  it('larger tube reaches 2.474 over the stub and needs 4.948 to run back', () => {
    const plan = designOf(bench(), 'largerTube').plan!;
    expectNear((plan.parts[0]!.longIn.value - 2) / 2, 2.474, THOUSANDTH);
    expectNear(plan.insertion[0]!.needIn.value, 4.948, {
      abs: 1.1e-3,
      because: 'twice a number given to 1/1000',
    });
    const tight = designOf(bench({ betweenClustersIn: 9, damageFromIn: 2.5, damageToIn: 4.5 }), 'largerTube');
    expect(tight.failing.map((f) => f.rule)).toEqual(['run-back']);
    expect(tight.rules.filter((r) => /^larger-/.test(r.rule)).every((r) => r.held)).toBe(true);
  });
});

describe('the common-practice example: 1 in × .028 of 4130', () => {
  // issue text: sleeve 7/8 × .035 by a manufacturer-type table, five diameters long; 30° cut; 1/8 gap at each end along
  // the tube. General rule: .069 in slack is over 1/16; 15/16 has .0065 in.
  const tube = { odIn: 1, wallIn: 0.028 };
  const table = [manual('sleeve:1 x .028', { words: '7/8 x .035', value: 5, unit: '1' })];
  const piece = bench({ tube });

  it('takes the table’s sleeve, five diameters long, and shows the rule’s beside it with its reason', () => {
    const { sleeve, plan, fits } = designOf(piece, 'innerSleeve', {}, table);
    expect(fits).toBe('fits');
    expect(sleeve!.chosen).toMatchObject({
      tube: { odIn: 0.875, wallIn: 0.035 },
      by: 'manual',
      record: 'm-sleeve:1 x .028',
    });
    expectNear(sleeve!.chosen!.slackIn.value, 0.069, { abs: 1e-9, because: 'exact decimals' });
    expect(sleeve!.chosen!.says).toContain('over-slack-limit');
    expect(sleeve!.byRule).toMatchObject({ tube: { odIn: 0.9375, wallIn: 0.035 }, by: 'rule' });
    expectNear(sleeve!.byRule!.slackIn.value, 0.0065, { abs: 1e-9, because: 'exact decimals' });
    expect(sleeve!.byRule!.says).toContain('inside-mill-tolerance');
    for (const s of plan!.parts.filter((p) => p.kind === 'sleeve'))
      expectNear(s.axisIn.value, 5, { abs: 1e-9, because: 'five diameters' });
    expect(plan!.gapIn.assumed).toContain('gap-along-the-tube');
  });

  it('without the table takes 15/16 to be tried, and refuses 7/8', () => {
    const { sleeve } = designOf(piece, 'innerSleeve');
    expect(sleeve!.chosen!.tube).toEqual({ odIn: 0.9375, wallIn: 0.035 });
    expect(sleeve!.refused.find((r) => r.tube.odIn === 0.875)!.says).toContain('over-slack-limit');
  });
});

describe('developed cuts', () => {
  // geometry of a cylinder cut by a plane: 30° runs 1.732 D from point to heel (trade-facts 11, trap 5)
  it('a 30° cut runs 1.732 D along the tube, not .577 D', () => {
    expectNear(2 * halfHeight(0.5, Math.PI / 6), Math.sqrt(3), { abs: 1e-12, because: 'cot 30°' });
  });
  it('every point of the developed curve lies on the plane', () => {
    for (let k = 0; k < 24; k++) {
      const phi = (k / 12) * Math.PI;
      // the plane through the axis point at β to the axis: x sin β = y cos β
      const [x, y] = [scarfCurve(0.5, Math.PI / 6, phi), 0.5 * Math.cos(phi)];
      expectNear(x * Math.sin(Math.PI / 6) - y * Math.cos(Math.PI / 6), 0, { abs: 1e-12, because: 'exact' });
    }
  });
  it('the edge of a 45° cut on a 2 in tube is the ellipse of half axes 1 and √2: 7.6404', () => {
    // perimeter 4 a E(1/√2) with E(1/√2) = 1.3506438810 (Abramowitz and Stegun table 17.1)
    expectNear(edgeLength(1, Math.PI / 4), 4 * Math.SQRT2 * 1.350643881, {
      rel: 1e-9,
      because: 'table to ten digits',
    });
  });
  it('a fishmouth’s tips hold what adding thin slices gives', () => {
    const [R, r, beta] = [0.5625, 0.5045, Math.PI / 6];
    let sum = 0;
    const n = 400;
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const rho = r + ((R - r) * (i + 0.5)) / n;
        sum +=
          (Math.abs(Math.cos(((k + 0.5) / n) * 2 * Math.PI)) / Math.tan(beta)) *
          rho *
          rho *
          ((R - r) / n) *
          ((2 * Math.PI) / n);
      }
    expectNear(tipsVolume(R, r, beta), sum, { rel: 1e-4, because: 'slices of a four-hundredth' });
  });
  it('the slot of a saw-guide block rises at 30°', () => {
    const g = sawGuide(0.75);
    expectNear(Math.atan2(g.widthIn.value, g.slotIn[1].value - g.slotIn[0].value), Math.PI / 6, {
      abs: 1e-12,
      because: 'exact',
    });
  });
});

describe('weights', () => {
  // row 1: 1.000 × .035 weighs .3603 lb/ft; row 3: 1.125 × .058 weighs .6603; AC weight row: 8 in of it .44 lb
  it('of sleeve and section are those of the published mass table', () => {
    const parts = designOf(bench(), 'outerSleeve').plan!.parts;
    const section = parts.find((p) => p.kind === 'section')!;
    expectNear(section.weightLb.value, (0.3603 / 12) * section.axisIn.value, {
      rel: 3e-4,
      because: 'the table has four digits',
    });
    const tube = designOf(bench({ damageFromIn: 12.5, damageToIn: 17.5 }), 'largerTube').plan!.parts[0]!;
    // crotch to crotch 8 in, and tips: 2 × 4/3 cot 30° (R³ − r³) × .283
    const tips = 2 * (4 / 3) * Math.sqrt(3) * (0.5625 ** 3 - 0.5045 ** 3) * 0.283;
    expectNear(tube.weightLb.value, 0.44 + tips, {
      abs: 0.001,
      because: 'the table’s .44 lb has two digits',
    });
  });
});
