import { describe, expect, it } from 'vitest';
import { type Finding, findingSchema } from '../../../src/core/job/jobSchema.ts';
import {
  measured,
  missingSizes,
  shareOfCircumference,
  sharesOf,
} from '../../../src/core/walkRound/findings.ts';
import { damageLimits } from '../../../src/core/walkRound/limits.ts';
import { expectNear } from '../../kit/near.ts';

const finding = (damage: Finding['damage'], more: object = {}): Finding =>
  ({
    kind: 'finding',
    damage,
    of: 'U1L-U2L',
    origin: 'unknown',
    id: 'f',
    by: 'Ana',
    device: 't',
    at: '2026-03-01T09:00:00Z',
    ...more,
  }) as Finding;
const inch = { odIn: 1, wallIn: 0.035, lengthIn: 36 };
const share = (of: string, given: Finding) => sharesOf(given, inch).find((s) => s.of === of)?.figure;

describe('missingSizes', () => {
  it('knows every kind of damage', () => {
    const kinds = findingSchema._zod.def.options.map((option) => option.shape.damage._zod.def.values[0]);
    expect(Object.keys(measured).sort()).toEqual([...kinds].sort());
  });

  it('asks for the size of a tag, and for less as more is measured', () => {
    expect(missingSizes(finding('bow'), 'member')).toEqual(['depthIn', 'place', 'clock']);
    expect(missingSizes(finding('bow', { depthIn: 0, clock: 0 }), 'member')).toEqual(['place']);
    expect(missingSizes(finding('dent', { depthIn: 0.1, alongIn: 1, widthIn: 0.5 }), 'cluster')).toEqual([
      'widthBy',
    ]);
    expect(missingSizes(finding('other', { what: '' }), 'cluster')).toEqual(['what']);
  });

  it('takes the gap under a template in place of two diameters', () => {
    expect(missingSizes(finding('oval', { largestIn: 1.02 }), 'cluster')).toEqual(['smallestIn']);
    expect(missingSizes(finding('oval', { templateGapIn: 0.02 }), 'cluster')).toEqual([]);
  });
});

describe('sharesOf', () => {
  it('tells a quarter of the circumference by chord from one by arc', () => {
    // Circle of diameter 1: a quarter is a chord of sin 45° and an arc of π/4 = 0.78540.
    const third = { abs: 5e-6, because: 'five places given' };
    expectNear(shareOfCircumference(Math.SQRT1_2, 1, 'across') ?? 0, 0.25, third);
    expectNear(shareOfCircumference(0.7854, 1, 'around') ?? 0, 0.25, third);
    // Chord 0.700 is 0.247 of the circumference, 0.720 is 0.256 (trade facts, test oracle 36).
    const place = { abs: 5e-4, because: 'three places given' };
    expectNear(
      share('widthOfCircumference', finding('dent', { widthIn: 0.7, widthBy: 'across' }))?.value ?? 0,
      0.247,
      place,
    );
    expectNear(
      share('widthOfCircumference', finding('dent', { widthIn: 0.72, widthBy: 'across' }))?.value ?? 0,
      0.256,
      place,
    );
  });

  it('gives a range, not a number, for a width that is not said to be across or around', () => {
    const figure = share('widthOfCircumference', finding('hole', { widthIn: 0.7 }));
    expectNear(figure?.low ?? 0, 0.2228, { abs: 5e-5, because: '0.7/π to four places' });
    expectNear(figure?.high ?? 0, 0.2468, { abs: 5e-5, because: 'asin(0.7)/π to four places' });
    expect(figure?.assumed.length).toBe(1);
  });

  it('gives no share of a width that the tube does not have', () => {
    expect(shareOfCircumference(1.01, 1, 'across')).toBeNull();
    expect(shareOfCircumference(3.15, 1, 'around')).toBeNull();
    expect(sharesOf(finding('dent', { widthIn: 1.01, widthBy: 'across' }), inch)).toEqual([]);
    expect(share('widthOfCircumference', finding('hole', { widthIn: 1.5 }))).not.toHaveProperty('high');
  });

  it('works out ovality, wall loss, and depths against diameter and chord', () => {
    const exact = { rel: 1e-12, because: 'one or two roundings' };
    // 100 (1.03 − 0.98)/1 = 5 %; 1 − 0.028/0.035 = 0.2; 0.25/36; 0.06/1.
    expectNear(
      share('ovality', finding('oval', { largestIn: 1.03, smallestIn: 0.98 }))?.value ?? 0,
      5,
      exact,
    );
    expect(share('ovality', finding('oval', { largestIn: 1.03, smallestIn: 0.98 }))?.unit).toBe('%');
    expectNear(share('wallLost', finding('thinned', { wallLeftIn: 0.028 }))?.value ?? 0, 0.2, exact);
    expectNear(share('depthOfChord', finding('bow', { depthIn: 0.25 }))?.value ?? 0, 0.25 / 36, exact);
    expectNear(
      share('depthOfChord', finding('kink', { depthIn: 0.25, chordIn: 10 }))?.value ?? 0,
      0.025,
      exact,
    );
    expectNear(share('depthOfDiameter', finding('dent', { depthIn: 0.06 }))?.value ?? 0, 0.06, exact);
  });

  it('says nothing of a size that was not measured', () => {
    for (const damage of Object.keys(measured) as Finding['damage'][])
      expect(sharesOf(finding(damage), inch)).toEqual([]);
  });

  it('names the finding and the formula as its basis', () => {
    expect(share('depthOfDiameter', finding('dent', { depthIn: 0.06 }))?.basis).toEqual({
      kind: 'computed',
      ref: 'depth/D; finding f',
    });
  });
});

describe('damageLimits', () => {
  it('says the numbers of AC 43.13-1B 4-94 and 4-91d, and no number where none is published', () => {
    const value = (id: string) => damageLimits.find((row) => row.id === id)?.value;
    // AC 43.13-1B 4-94a, 4-94b: 1/10 of the diameter deep, 1/4 of the circumference wide, one diameter long.
    expect(['patch-dent-depth', 'patch-dent-around', 'patch-dent-length'].map(value)).toEqual([0.1, 0.25, 1]);
    expect(['patch-hole-around', 'patch-hole-length'].map(value)).toEqual([0.25, 1]);
    // A No. 40 drill is 0.0980 in (ANSI/ASME B94.11M).
    expect(value('stop-hole')).toBe(0.098);
    expect(['dent-left', 'bow', 'oval', 'wall'].map(value)).toEqual([null, null, null, null]);
  });

  it('has a source and a place in every row, and no id twice', () => {
    for (const row of damageLimits) expect(row.source.length > 0 && row.place.length > 0, row.id).toBe(true);
    expect(new Set(damageLimits.map((row) => row.id)).size).toBe(damageLimits.length);
  });
});
