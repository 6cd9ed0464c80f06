import { describe, expect, it } from 'vitest';
import { fingerPlateFor } from '../../../src/core/disposition/joint.ts';
import { weldToe } from '../../../src/core/disposition/weldToe.ts';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';
import { answer, box, finding, LONG, manual, mid, option, rowFor, ruled } from './shop.ts';

describe('a finger plate (4-91c)', () => {
  it('is as thick as the heaviest tube damaged, with fingers of 1.5 D of each', () => {
    // Source: oracle 26 of trade-facts, AC 43.13-1B 4-91c.
    const plate = fingerPlateFor([
      { odIn: 1, wallIn: 0.049 },
      { odIn: 0.75, wallIn: 0.035 },
      { odIn: 0.625, wallIn: 0.035 },
    ]);
    expect(plate.thicknessIn.value).toBe(0.049);
    expect(plate.fingersIn.map((f) => f.value)).toEqual([1.5, 1.125, 0.9375]);
  });

  const atEnd = (atIn: number): Finding =>
    finding('f1', { damage: 'dent', place: { from: 'U2R', atIn }, depthIn: 0.1, alongIn: 0.5 });
  it('applies to a dent that reaches the cluster’s weld, not to one in the bay', () => {
    const toe = [manual(`toe:${LONG}:U2R`, { valueIn: 1 })];
    expect(answer({ findings: [atEnd(1.25)], manual: toe }, 'fingerPlate')).toBe('applies');
    expect(answer({ findings: [atEnd(1.26)], manual: toe }, 'fingerPlate')).toBe('doesNotApply');
    expect(answer({ findings: [finding('f1', { damage: 'dent' })] }, 'fingerPlate')).toBe('cannotSay');
  });

  it('gives way to a rebuilt joint where the cluster is cracked or crushed', () => {
    const dent = finding('f1', { damage: 'dent', of: 'U2R', depthIn: 0.1 });
    const crack = finding('f2', { damage: 'crack', of: 'U2R', crackIn: 0.3 });
    expect(answer({ findings: [dent] }, 'fingerPlate', 'U2R')).toBe('applies');
    expect(ruled({ findings: [dent, crack] }, 'fingerPlate', 'U2R')[0]).toBe('joint-crushed');
    expect(answer({ findings: [dent, crack] }, 'rebuild', 'U2R')).toBe('applies');
  });

  it('counts a tube’s dent at the cluster with the cluster’s own findings', () => {
    const own = finding('f2', { damage: 'dent', of: 'U2R', depthIn: 0.1 });
    const row = rowFor({ findings: [atEnd(0.5), own] }, 'U2R');
    expect(row.findings).toEqual(['f1', 'f2']);
    expect(option(row, 'fingerPlate').reasons[0]?.facts.tubes).toEqual([LONG]);
  });

  it('leaves damage in the bay, and says so', () => {
    const bow = finding('f2', { damage: 'bow', place: mid, depthIn: 0.2 });
    expect(ruled({ findings: [atEnd(0.5), bow] }, 'fingerPlate')[0]).toBe('judged-together');
    expect(ruled({ findings: [atEnd(0.5), bow] }, 'rebuild')[0]).toBe('judged-together');
  });

  it('points to the fitting that sits there', () => {
    const model = box(undefined, { clusters: [{ id: 'U2R', at: [40, 12, 24], fitting: 'wing strut' }] });
    expect(option(rowFor({ findings: [atEnd(0.5)], model }), 'fingerPlate').conditions).toContain(
      'fitting-there',
    );
  });
});

describe('the weld toe', () => {
  const truss = expandTruss(box({ odIn: 1, wallIn: 0.035 }));
  const member = (id: string) => truss.members.find((m) => m.id === id)!;
  it('is where the tube leaves the one that leans on it nearest', () => {
    const { value } = weldToe(truss, member('U2R-L2R'), 'U2R');
    // Largest over the tubes there: the side diagonal L1R-U2R lies at atan(40/24) = 59.04° from the vertical:
    // (.5 + .5 cos 59.04°)/sin 59.04°.
    const angle = Math.atan2(40, 24);
    expectNear(value, (0.5 + 0.5 * Math.cos(angle)) / Math.sin(angle), {
      rel: 1e-12,
      because: 'same closed form by hand',
    });
  });
  it('is a point of both tubes’ surfaces', () => {
    // Two cylinders of radius r whose axes meet at θ: at distance x along one, its near generator is r from its own axis
    // and x sin θ − r cos θ from the other's, which is R at the toe.
    const angle = Math.atan2(40, 24);
    const x = weldToe(truss, member('U2R-L2R'), 'U2R').value;
    expectNear(x * Math.sin(angle) - 0.5 * Math.cos(angle), 0.5, { abs: 1e-12, because: 'geometry' });
  });
  it('gives way to a measured one', () => {
    const own = manual(`toe:${LONG}:U1R`, { valueIn: 0.875 });
    expect(weldToe(truss, member(LONG), 'U1R', [own])).toMatchObject({
      value: 0.875,
      basis: { kind: 'manual', ref: own.id },
    });
  });
});
