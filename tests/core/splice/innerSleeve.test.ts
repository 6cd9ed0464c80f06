import { describe, expect, it } from 'vitest';
import { cutAt } from '../../../src/core/splice/cut.ts';
import type { EndCut } from '../../../src/core/splice/endCut.ts';
import type { Piece, Plan } from '../../../src/core/splice/result.ts';
import { expectNear } from '../../kit/near.ts';
import { seededRandom } from '../../kit/trusses.ts';
import { bench, designOf, manual } from './bench.ts';

const EXACT = { abs: 1e-9, because: 'sums of a dozen terms in double precision' };

const planOf = (piece: Piece): Plan => {
  const { plan, failing } = designOf(piece, 'innerSleeve');
  if (!plan) throw new Error(`does not fit: ${JSON.stringify(failing)}`);
  return plan;
};

describe('the inner-sleeve splice', () => {
  it('is stub, gap, section, gap and stub, which make the true length on every line of the tube (seed 11)', () => {
    const random = seededRandom(11);
    for (let n = 0; n < 40; n++) {
      const odIn = [0.5, 0.625, 0.75, 1, 1.125][Math.floor(random() * 5)]!;
      const length = 30 + 20 * random();
      const from = 13 + random();
      const piece = bench({
        tube: { odIn, wallIn: 0.035 },
        betweenClustersIn: length,
        damageFromIn: from,
        damageToIn: from + 2 * random(),
        clock: 12 * random(),
      });
      const { stubs, parts } = planOf(piece);
      const section = parts.find((p) => p.kind === 'section')!;
      for (let clock = 0; clock < 12; clock += 0.7) {
        const at = (cut: EndCut): number => cutAt(cut, odIn / 2, clock);
        const [a, b, c, d] = [stubs![0].cut, section.ends[0], section.ends[1], stubs![1].cut].map(at) as [
          number,
          number,
          number,
          number,
        ];
        // AC 43.13-1B 4-95a: 1/8 in at each end; along the tube
        expectNear(b - a, 0.125, EXACT);
        expectNear(d - c, 0.125, EXACT);
        expectNear(a + 0.125 + (c - b) + 0.125 + (length - d), length, EXACT);
      }
    }
  });

  it('turned end for end is the same splice turned end for end', () => {
    const [from, to, length] = [11, 13.5, 31];
    const one = designOf(
      bench({ betweenClustersIn: length, damageFromIn: from, damageToIn: to, clock: 5, toesIn: [0.5, 1] }),
      'innerSleeve',
    ).plan!;
    const other = designOf(
      bench({
        betweenClustersIn: length,
        damageFromIn: length - to,
        damageToIn: length - from,
        clock: 5,
        toesIn: [1, 0.5],
      }),
      'innerSleeve',
    ).plan!;
    for (let clock = 0; clock < 12; clock += 0.5) {
      expectNear(
        cutAt(one.stubs![0].cut, 0.5, clock),
        length - cutAt(other.stubs![1].cut, 0.5, clock),
        EXACT,
      );
      expectNear(
        cutAt(one.stubs![1].cut, 0.5, clock),
        length - cutAt(other.stubs![0].cut, 0.5, clock),
        EXACT,
      );
    }
    const places = (plan: Plan, turned: boolean): readonly string[] =>
      plan
        .rosettes!.places.map(
          (r) => `${(turned ? length - r.atIn.value : r.atIn.value).toFixed(9)} ${r.clock}`,
        )
        .sort();
    expect(places(one, false)).toEqual(places(other, true));
  });

  it('lies with its longest line on the side of the damage, and all damage between the cuts', () => {
    const piece = bench({ clock: 4 });
    const { stubs, parts } = planOf(piece);
    const section = parts.find((p) => p.kind === 'section')!;
    const lengthAt = (clock: number): number =>
      cutAt(section.ends[1], 0.5, clock) - cutAt(section.ends[0], 0.5, clock);
    expectNear(lengthAt(4), section.longIn.value, EXACT);
    expectNear(lengthAt(10), section.shortIn.value, EXACT);
    for (let clock = 0; clock < 12; clock++) {
      expect(cutAt(stubs![0].cut, 0.5, clock)).toBeLessThanOrEqual(14 + 1e-9);
      expect(cutAt(stubs![1].cut, 0.5, clock)).toBeGreaterThanOrEqual(16 - 1e-9);
    }
  });

  it('keeps the two sleeves from meeting inside a section that the damage would make too short', () => {
    const { parts } = planOf(bench({ damageFromIn: 14.9, damageToIn: 15.1 }));
    const [a, b] = parts.filter((p) => p.kind === 'sleeve') as [Plan['parts'][number], Plan['parts'][number]];
    expect(cutAt(a.ends[1], 0.5, 0)).toBeLessThanOrEqual(cutAt(b.ends[0], 0.5, 0) + 1e-9);
  });

  it('has every rosette at least half a diameter of tube beyond its edge, to both ends (4-84)', () => {
    const { rosettes } = planOf(bench());
    expect(rosettes!.places).toHaveLength(16);
    for (const r of rosettes!.places) {
      expect(r.toInnerEndIn.value).toBeGreaterThanOrEqual(0.5);
      expect(r.toOuterEndIn.value).toBeGreaterThanOrEqual(0.5);
    }
  });

  it('does not fit where a sleeve cannot run back, with the length that fails, and gives no part', () => {
    const design = designOf(bench({ betweenClustersIn: 14, damageFromIn: 6, damageToIn: 8 }), 'innerSleeve');
    expect(design.fits).toBe('doesNotFit');
    expect(design.plan).toBeNull();
    const run = design.failing.find((f) => f.rule === 'run-back')!;
    // 5.12: 1.732 + .125 + 3.000
    expectNear(run.needIn.value, 4.857, { abs: 5e-4, because: 'the worked sum is given to 1/1000' });
    expect(run.haveIn.value).toBeLessThan(run.needIn.value);
  });

  it('takes another section to run a sleeve back into when the stubs are short', () => {
    // stubs of 3.3 in hold 1.5 D past the cut's heel, and no sleeve; a section of 10 in holds both
    const plan = planOf(bench({ betweenClustersIn: 20, damageFromIn: 5.1, damageToIn: 14.9 }));
    expect(plan.insertion.map((i) => i.into)).toEqual(['section', 'section']);
  });

  it('cuts where the user sets it, and says when that leaves damage in', () => {
    const set = designOf(bench(), 'innerSleeve', { cutsIn: [13, 17.5] });
    expectNear(set.plan!.stubs![0].longIn.value, 13, EXACT);
    expectNear(30 - set.plan!.stubs![1].longIn.value, 17.5, EXACT);
    const wrong = designOf(bench(), 'innerSleeve', { cutsIn: [14.5, 17.5] });
    expect(wrong.fits).toBe('doesNotFit');
    expect(wrong.failing.map((f) => f.rule)).toContain('damage-cut-out');
  });

  it('shows the gap read the other way, square to the 30° cut, as twice the length along the tube', () => {
    const plan = planOf(bench());
    // trade-facts 5.12: .125/sin 30° = .250
    expectNear(plan.gapOtherIn.value, 0.25, EXACT);
  });

  it('cannot say without the length of the damage', () => {
    const piece = { ...bench(), damage: { ...bench().damage!, lengthKnown: false } };
    const design = designOf(piece, 'innerSleeve');
    expect([design.fits, design.missing]).toEqual(['cannotSay', ['alongIn']]);
    const none = designOf({ ...bench(), damage: null }, 'innerSleeve');
    expect([none.fits, none.missing]).toEqual(['cannotSay', ['damage']]);
  });

  it('takes the length of the user’s sleeve table where it gives one, and shows where the rule asks for more', () => {
    const small = { odIn: 0.375, wallIn: 0.028 };
    const piece = bench({ tube: small });
    const table = [manual('sleeve:3/8 x .028', { words: '5/16 x .035', value: 5, unit: '1' })];
    const design = designOf(piece, 'innerSleeve', {}, table);
    const sleeve = design.plan!.parts.find((p) => p.kind === 'sleeve')!;
    expectNear(sleeve.axisIn.value, 5 * 0.375, EXACT);
    // 1.732 × 3/8 + 1/8 + 3 × 3/8 = 1.8995 > 1.875
    expect(design.cautions).toContain('table-shorter-than-rule');
    expect(design.fits).toBe('fits');
    const both = design.rules.find((r) => r.rule === 'inner-sleeve-reach' && r.facts.at === 'sleeve')!;
    expect(both.held).toBeNull();
    expectNear(both.facts.needIn as number, 0.375 * Math.sqrt(3) + 0.125 + 1.125, EXACT);
  });
});
