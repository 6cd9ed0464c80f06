import { describe, expect, it } from 'vitest';
import type { Room } from '../../../src/core/disposition/result.ts';
import { fits, needs } from '../../../src/core/disposition/room.ts';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { expectNear } from '../../kit/near.ts';
import { answer, finding, LONG, manual, mid, option, rowFor, ruled, SHORT } from './shop.ts';

const crackAt = (atIn: number, crackIn = 0.5): Finding =>
  finding('f1', { damage: 'crack', place: { from: 'U1R', atIn }, crackIn, where: 'tube' });
/** Welds end 1 in from the cluster centres, so that the sums are plain. */
const toes = [manual(`toe:${LONG}:U1R`, { valueIn: 1 }), manual(`toe:${LONG}:U2R`, { valueIn: 1 })];

describe('room beside the damage', () => {
  it('is what the paragraphs ask, on a tube 1 in × .035', () => {
    const need = needs(1, 0.035);
    // Source: trade-facts 4.2 and 5.12, AC 43.13-1B 4-92, 4-95, 4-96, 4-97: 1.5 D and a 30° cut (1.732 diameters);
    // the sleeve taken at its thinnest, 1.070.
    expectNear(need.splitSleeve.tightIn, 1.5 + 1.7320508 * 1.07, {
      abs: 1e-6,
      because: 'seven figures of √3',
    });
    expectNear(need.innerSleeve.tightIn, 3.232, { abs: 5e-4, because: 'three decimals in the source' });
    expectNear(need.outerSleeve.tightIn, 1.5 + 0.8660254 * 1.07, {
      abs: 1e-6,
      because: 'seven figures of √3/2',
    });
    // Oracle 24: stubs 2.5 and 4.5 accepted, 2.4 and 4.5 refused.
    const room = (a: number, b: number): Room => ({
      fromIn: 0,
      toIn: 0,
      sides: [a, b].map((value) => ({
        cluster: 'U1R',
        clearIn: { value, unit: 'in', basis: { kind: 'measured', ref: 't' }, assumed: [] },
      })) as unknown as Room['sides'],
      clearLengthIn: { value: a + b, unit: 'in', basis: { kind: 'measured', ref: 't' }, assumed: [] },
    });
    expect(fits(need.largerTube, room(2.5, 4.5))).toBe(true);
    expect(fits(need.largerTube, room(4.5, 2.5))).toBe(true);
    expect(fits(need.largerTube, room(2.4, 4.5))).toBe(false);
    expect(fits(need.largerTube, room(3, 3))).toBe(false);
  });

  it('is counted from the edge of the damage to the weld, at both ends', () => {
    const { room } = rowFor({ findings: [crackAt(12)], manual: toes });
    expect(room?.sides.map((s) => [s.cluster, s.clearIn.value])).toEqual([
      ['U1R', 10.75],
      ['U2R', 26.75],
    ]);
    expect(room?.clearLengthIn.value).toBe(38);
  });

  it('is the same measured from either end', () => {
    const far = { ...crackAt(12), place: { from: 'U2R', atIn: 28 } } as Finding;
    expect(rowFor({ findings: [far], manual: toes }).room).toEqual(
      rowFor({ findings: [crackAt(12)], manual: toes }).room,
    );
  });
});

describe('a split sleeve (4-91d, 4-92)', () => {
  // Needs 3.353 clear to the weld at 1: the crack's near edge at 4.36 fits, at 4.34 does not.
  it('applies where 1.5 D and its ends find room, and names the failing number where not', () => {
    expect(answer({ findings: [crackAt(4.61)], manual: toes }, 'splitSleeve')).toBe('applies');
    const tight = option(rowFor({ findings: [crackAt(4.59)], manual: toes }), 'splitSleeve');
    expect(tight.answer).toBe('doesNotApply');
    expect(tight.reasons[0]).toMatchObject({ rule: 'split-sleeve-reach', facts: { method: 'splitSleeve' } });
    expectNear(tight.reasons[0]!.facts['clearIn U1R'] as number, 3.34, {
      abs: 1e-9,
      because: 'decimal sums',
    });
  });

  it('stop-drills a crack and straightens a bend first', () => {
    expect(option(rowFor({ findings: [crackAt(20)], manual: toes }), 'splitSleeve').conditions).toContain(
      'stop-hole',
    );
    const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.2, alongIn: 4 });
    expect(option(rowFor({ findings: [bow] }), 'splitSleeve')).toMatchObject({ answer: 'applies' });
    expect(option(rowFor({ findings: [bow] }), 'splitSleeve').conditions).toContain('straighten-then-sleeve');
  });

  it.each([
    ['break', 'sleeve-not-through'],
    ['kink', 'kink-cut-out'],
  ] as const)('is not for a %s', (damage, rule) => {
    expect(ruled({ findings: [finding('f1', { damage, place: mid })] }, 'splitSleeve')[0]).toBe(rule);
  });

  it('cannot be said over lost wall, a place not given, or damage in words', () => {
    const thinned = finding('f1', { damage: 'thinned', place: mid, wallLeftIn: 0.025, alongIn: 1 });
    expect(ruled({ findings: [thinned] }, 'splitSleeve')[0]).toBe('wall-no-rule');
    const lost = finding('f1', { damage: 'dent', depthIn: 0.1 });
    expect(option(rowFor({ findings: [lost] }), 'splitSleeve')).toMatchObject({
      answer: 'cannotSay',
      missing: [{ name: 'place', finding: 'f1' }],
    });
    const words = finding('f1', { damage: 'other', what: 'burnt', place: mid });
    expect(answer({ findings: [words] }, 'splitSleeve')).toBe('cannotSay');
  });

  it('judges findings together: two cracks that each fit may not fit as one length', () => {
    const both = [crackAt(6), { ...crackAt(34.9), id: 'f2' } as Finding];
    expect(answer({ findings: both, manual: toes }, 'splitSleeve')).toBe('applies');
    const wide = [crackAt(4), { ...crackAt(34.9), id: 'f2' } as Finding];
    expect(answer({ findings: wide, manual: toes }, 'splitSleeve')).toBe('doesNotApply');
  });
});

describe('splice or whole tube', () => {
  it('finds room in a long bay, and not in one too short for two splices: then the tube goes cluster to cluster', () => {
    expect(answer({ findings: [crackAt(20)] }, 'splice')).toBe('applies');
    const short = finding('f1', { damage: 'break', of: SHORT, place: { from: 'U2R', atIn: 6 }, gapIn: 7 });
    const row = rowFor({ findings: [short] }, SHORT);
    expect(option(row, 'splice')).toMatchObject({ answer: 'doesNotApply' });
    expect(option(row, 'splice').reasons[0]?.rule).toBe('two-splices-or-whole');
    expect(option(row, 'replace')).toMatchObject({
      answer: 'applies',
      reasons: [{ rule: 'replace', facts: { from: 'U2R', to: 'U3R' } }],
    });
  });

  it('does not reach a crack in the weld of a cluster', () => {
    const weld = finding('f1', {
      damage: 'crack',
      place: { from: 'U1R', atIn: 0.5 },
      crackIn: 0.2,
      where: 'weldToe',
    });
    expect(ruled({ findings: [weld] }, 'splice')[0]).toBe('not-in-a-bay');
    expect(answer({ findings: [weld] }, 'rebuild')).toBe('applies');
  });

  it('asks for sound stubs on a rusted tube', () => {
    const rust = finding('f1', { damage: 'thinned', place: mid, wallLeftIn: 0.02, alongIn: 2 });
    expect(option(rowFor({ findings: [rust] }), 'splice').conditions).toContain('corroded-cut-out');
  });
});
