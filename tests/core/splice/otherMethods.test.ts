import { describe, expect, it } from 'vitest';
import { cutAt } from '../../../src/core/splice/cut.ts';
import { benchTube } from '../../../src/core/splice/fishmouth.ts';
import type { Method, Plan } from '../../../src/core/splice/result.ts';
import { methods } from '../../../src/core/splice/result.ts';
import { designsOf } from '../../../src/core/splice/splice.ts';
import { expectNear } from '../../kit/near.ts';
import { bench, designOf, manual } from './bench.ts';

const EXACT = { abs: 1e-9, because: 'sums of a dozen terms in double precision' };
const planOf = (
  method: Method,
  ...[change, wish, table]: [
    Parameters<typeof bench>[0]?,
    Parameters<typeof designOf>[2]?,
    Parameters<typeof designOf>[3]?,
  ]
): Plan => {
  const design = designOf(bench(change), method, wish, table);
  if (!design.plan) throw new Error(`${method} does not fit: ${JSON.stringify(design.failing)}`);
  return design.plan;
};

describe('every method', () => {
  it('stands once, in order, with figures that name what they rest on', () => {
    const designs = designsOf(bench());
    expect(designs.map((d) => d.method)).toEqual([...methods]);
    for (const { plan } of designs)
      for (const part of plan?.parts ?? []) {
        expect(part.longIn.unit).toBe('in');
        expect(part.longIn.basis.ref).not.toBe('');
        expect(part.weightLb.value).toBeGreaterThan(0);
      }
  });

  it('turned end for end weighs, welds and reaches the same', () => {
    const one = designsOf(bench({ damageFromIn: 12, damageToIn: 13, clock: 3 }));
    const other = designsOf(bench({ damageFromIn: 17, damageToIn: 18, clock: 3 }));
    for (const [k, d] of one.entries()) {
      expect(other[k]!.fits).toBe(d.fits);
      if (!d.plan) continue;
      const turned = other[k]!.plan!;
      expectNear(turned.addedLb.value, d.plan.addedLb.value, EXACT);
      expectNear(turned.weldIn.value, d.plan.weldIn.value, EXACT);
      for (const part of d.plan.parts) {
        const twins = turned.parts.filter((p) => Math.abs(p.longIn.value - part.longIn.value) < 1e-9);
        const mirrored = twins.some((p) =>
          [0, 2, 5].every(
            (c) =>
              Math.abs(
                cutAt(part.ends[0], part.tube.odIn / 2, c) + cutAt(p.ends[1], p.tube.odIn / 2, c) - 30,
              ) < 1e-9,
          ),
        );
        expect(mirrored).toBe(true);
      }
    }
  });

  it('is closed, with the reason and without a plan, for heat-treated and unknown tube', () => {
    for (const [material, scope] of [
      ['ht150', 'heatTreated'],
      ['mystery', 'unknownMaterial'],
    ] as const)
      for (const d of designsOf(bench({ material }))) {
        expect([d.fits, d.closed, d.plan]).toEqual([
          d.fits === 'doesNotFit' ? d.fits : 'cannotSay',
          [scope],
          null,
        ]);
      }
  });
});

describe('the outer-sleeve splice', () => {
  it('butts the section square and keeps two beads apart between the sleeves', () => {
    const { parts, stubs } = planOf('outerSleeve');
    const section = parts.find((p) => p.kind === 'section')!;
    expectNear(section.longIn.value, section.shortIn.value, EXACT);
    expectNear(stubs![0].longIn.value + section.longIn.value + stubs![1].longIn.value, 30, EXACT);
    const [a, b] = parts.filter((p) => p.kind === 'sleeve') as [Plan['parts'][number], Plan['parts'][number]];
    expect(
      cutAt(b.ends[0], b.tube.odIn / 2, 12) - cutAt(a.ends[1], a.tube.odIn / 2, 12),
    ).toBeGreaterThanOrEqual(0.25 - 1e-9);
  });
  it('needs a fishmouth’s tips clear of the cluster weld', () => {
    const tight = designOf(bench({ damageFromIn: 2.4, damageToIn: 4 }), 'outerSleeve');
    expect(tight.fits).toBe('doesNotFit');
    // 1.5 D + Dₛ/2 cot 30° of the 1-1/8 sleeve
    expectNear(
      tight.failing.find((f) => f.rule === 'outer-sleeve-reach')!.needIn.value,
      1.5 + 0.5625 * Math.sqrt(3),
      EXACT,
    );
  });
});

describe('the larger tube', () => {
  it('reaches 1.5 D over both stubs at its crotches and waits on the longer one', () => {
    const { parts, insertion } = planOf('largerTube', { damageFromIn: 12, damageToIn: 14 });
    const [tube] = parts;
    expectNear(tube!.shortIn.value, 2 + 3, EXACT);
    expect(insertion[0]!.into).toBe('toStub');
  });
});

describe('the split sleeve', () => {
  it('reaches 1.5 D past the damage on every line', () => {
    const { parts, seamClocks } = planOf('splitSleeve', { clock: 5 });
    for (let clock = 0; clock < 12; clock += 0.25) {
      expect(cutAt(parts[0]!.ends[0], 0.5625, clock)).toBeLessThanOrEqual(14 - 1.5 + 1e-9);
      expect(cutAt(parts[0]!.ends[1], 0.5625, clock)).toBeGreaterThanOrEqual(16 + 1.5 - 1e-9);
    }
    expect(seamClocks).toEqual([8, 2]);
  });
  it('is no answer to a tube that is parted', () => {
    const piece = bench();
    const design = designOf({ ...piece, damage: { ...piece.damage!, parted: true } }, 'splitSleeve');
    expect(design.fits).toBe('doesNotFit');
  });
});

describe('the welded patch', () => {
  const dent = { depthIn: 0.08, aroundIn: 0.7, alongIn: 0.9 };
  it('is not drawn without the overlap, which only the figure gives', () => {
    const design = designOf(bench({ dent }), 'patch');
    expect([design.fits, design.missing, design.plan]).toEqual(['cannotSay', ['patch-overlap'], null]);
  });
  it('has the user’s overlap on all four sides, one gauge thicker', () => {
    const plan = planOf('patch', { dent }, {}, [manual('patch-overlap', { valueIn: 0.5 })]);
    expectNear(plan.parts[0]!.longIn.value, 1.9, EXACT);
    expectNear(plan.parts[0]!.shortIn.value, 1.7, EXACT);
    expectNear(plan.parts[0]!.tube.wallIn, 0.049, EXACT);
  });
});

describe('the whole member', () => {
  it('is coped at both ends to what the bench says it meets, and needs that', () => {
    expect(designOf(bench(), 'fullMember').missing).toEqual(['ends-not-known:A', 'ends-not-known:B']);
    const square = [benchTube('longeron', 1.25, Math.PI / 2)];
    const { parts } = planOf('fullMember', { meets: [square, square] });
    // shortest line touches the main tube at its side: √(R² − r²) from the axis at 3 and 9, R from it at 12 and 6
    expectNear(parts[0]!.shortIn.value, 30 - 2 * 0.625, EXACT);
    expectNear(parts[0]!.longIn.value, 30 - 2 * Math.sqrt(0.625 ** 2 - 0.5 ** 2), EXACT);
  });
});

describe('the tube at hand', () => {
  it('is refused with the number when it is thinner or of another diameter than the old one', () => {
    const thin = designOf(bench(), 'innerSleeve', { section: { tube: { odIn: 1, wallIn: 0.028 } } });
    expect([thin.fits, thin.failing.map((f) => f.rule)]).toEqual(['doesNotFit', ['sleeve-wall']]);
    const other = designOf(bench(), 'innerSleeve', { section: { tube: { odIn: 1.125, wallIn: 0.035 } } });
    expect(other.failing.map((f) => f.rule)).toContain('same-diameter');
  });
  it('is refused in another material', () => {
    const design = designOf(bench(), 'outerSleeve', {
      sleeve: { tube: { odIn: 1.125, wallIn: 0.058 }, material: '1025' },
    });
    expect(design.fits).toBe('doesNotFit');
    expect(design.rules.find((r) => r.rule === 'same-material' && r.held === false)!.facts).toMatchObject({
      got: '1025',
      want: '4130N',
    });
  });
  it('that no stock size answers makes the method not fit, with the nearest slack', () => {
    const design = designOf(
      bench({ tube: { odIn: 2, wallIn: 0.058 }, betweenClustersIn: 60 }),
      'innerSleeve',
    );
    expect(design.fits).toBe('doesNotFit');
    // bore 1.884, next listed 1.750: .134 loose
    const [slack] = design.failing;
    expect(slack!.rule).toBe('sleeve-slack');
    expectNear(slack!.haveIn.value, 0.134, { abs: 1e-9, because: 'exact decimals' });
    expectNear(slack!.needIn.value, 1 / 16, { because: 'the published number' });
  });
});
