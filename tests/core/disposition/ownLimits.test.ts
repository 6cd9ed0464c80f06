import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { expectNear } from '../../kit/near.ts';
import { disposed, finding, LONG, manual, mid, rowFor } from './shop.ts';

const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.06, stdIn: 0.01 });
const check = (f: Finding, own: readonly ReturnType<typeof manual>[]) =>
  rowFor({ findings: [f], manual: own }).limits[0]!;

describe('limits of the user', () => {
  it.each([
    ['bow', bow],
    ['oval', finding('f1', { damage: 'oval', place: mid, largestIn: 1.02, smallestIn: 0.98 })],
    ['thinned', finding('f1', { damage: 'thinned', place: mid, wallLeftIn: 0.02 })],
    ['dent', finding('f1', { damage: 'dent', place: mid, depthIn: 0.01 })],
  ])('are needed for any verdict on a %s: none is published', (_, f) => {
    expect(check(f, [])).toMatchObject({ limit: null, verdict: 'noLimit' });
  });

  it.each([
    // .06 ± 2 × .01 against each limit.
    [0.08, 'in', 'inside'],
    [0.079, 'in', 'cannotTell'],
    [0.041, 'in', 'cannotTell'],
    [0.04, 'in', 'outside'],
    // The same over the 40 in member: .08/40 = .2 %.
    [0.002, '1', 'inside'],
    [0.2, '%', 'inside'],
    [0.1, '%', 'outside'],
  ] as const)('of %s %s put a bow of .06 ± .01 %s', (value, unit, verdict) => {
    expect(check(bow, [manual('limit:bow', { value, unit })]).verdict).toBe(verdict);
  });

  it('of one member outrank the shop’s, and come with their record', () => {
    const own = [manual(`limit:bow:${LONG}`, { valueIn: 0.2 }), manual('limit:bow', { valueIn: 0.01 })];
    expect(check(bow, own)).toMatchObject({
      verdict: 'inside',
      limit: { value: 0.2, unit: 'in', basis: { kind: 'manual', ref: own[0]!.id } },
    });
  });

  it('compare ovality, wall and dent depth with what the trade divides them by', () => {
    // Source: ovality 100 (Dmax − Dmin)/D; wall lost over wall; dent depth over D (trade-facts 3.5), tube 1 in × .035.
    const per = (f: Finding, topic: string) =>
      check(f, [manual(topic, { value: 5, unit: '%' })]).measured!.value;
    const t = { abs: 1e-9, because: 'decimal arithmetic' };
    expectNear(
      per(finding('f1', { damage: 'oval', place: mid, largestIn: 1.03, smallestIn: 0.97 }), 'limit:ovality'),
      6,
      t,
    );
    expectNear(
      per(finding('f1', { damage: 'thinned', place: mid, wallLeftIn: 0.028 }), 'limit:wallLoss'),
      20,
      t,
    );
    expectNear(per(finding('f1', { damage: 'dent', place: mid, depthIn: 0.04 }), 'limit:dentDepth'), 4, t);
  });

  it('say when the size was not measured', () => {
    expect(check(finding('f1', { damage: 'bow' }), [manual('limit:bow', { valueIn: 0.1 })])).toMatchObject({
      measured: null,
      verdict: 'notMeasured',
    });
  });

  it('without a value are an issue', () => {
    const { issues } = disposed({
      manual: [
        manual('limit:bow'),
        manual('limit:ovality', { value: 3, unit: 'psi' }),
        manual('limit:bow', { valueIn: 0.1 }, 'ok'),
      ],
    });
    expect(issues.map((i) => [i.code, i.facts.topic])).toEqual([
      ['limit-without-value', 'limit:bow'],
      ['limit-without-value', 'limit:ovality'],
    ]);
  });
});
