import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import {
  answer,
  box,
  closeLook,
  decision,
  finding,
  LONG,
  manual,
  mid,
  option,
  rowFor,
  ruled,
} from './shop.ts';

const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.25, alongIn: 8 });
const crack = finding('f2', {
  damage: 'crack',
  place: { from: 'U1R', atIn: 12 },
  crackIn: 0.25,
  where: 'tube',
});
const only = manual('straighten-only', { words: 'Bends to 1/4 in may be straightened cold' });

describe('straightening by itself', () => {
  // Source: AC 43.13-1B 4-91d pairs straightening with a split sleeve (needs.md N13: "needs other data").
  it('cannot be said by the general rules, and asks for the data by name', () => {
    const o = option(rowFor({ findings: [bow], looks: [closeLook(LONG)] }), 'straighten');
    expect(o.answer).toBe('cannotSay');
    expect(o.reasons[0]?.rule).toBe('straighten-then-sleeve');
    expect(o.missing).toEqual([{ name: 'manual:straighten-only' }]);
  });

  it('applies with the user’s own data, but only after a close look with the finish off', () => {
    expect(option(rowFor({ findings: [bow], manual: [only] }), 'straighten')).toMatchObject({
      answer: 'cannotSay',
      missing: [{ name: 'crackInspection' }],
    });
    expect(answer({ findings: [bow], manual: [only], looks: [closeLook(LONG, 'eye')] }, 'straighten')).toBe(
      'cannotSay',
    );
    const said = option(rowFor({ findings: [bow], manual: [only], looks: [closeLook(LONG)] }), 'straighten');
    expect(said.answer).toBe('applies');
    expect(said.reasons[0]).toMatchObject({ rule: 'manual', facts: { source: 'Invented manual, page 1' } });
  });

  // Source: AC 43.13-1B 4-79 and 4-91d; no data lift it.
  it.each([
    ['straighten-only', {}],
    ['allow:straighten', {}],
    [`allow:straighten:${LONG}`, {}],
  ])('never keeps a cracked tube, whatever %s says', (topic) => {
    const o = option(
      rowFor({ findings: [bow, crack], manual: [manual(topic)], looks: [closeLook(LONG)] }),
      'straighten',
    );
    expect(o.answer).toBe('doesNotApply');
    expect(o.reasons[0]?.rule).toBe('no-crack-kept');
  });

  it.each(['crack', 'break', 'hole'] as const)('never keeps a tube with a %s', (damage) => {
    expect(answer({ findings: [bow, finding('f2', { damage, place: mid })] }, 'straighten')).toBe(
      'doesNotApply',
    );
  });

  it('cuts out a kink by common practice, which the user’s own data may change', () => {
    const kink = finding('f1', { damage: 'kink', place: mid, depthIn: 0.3 });
    expect(ruled({ findings: [kink] }, 'straighten')[0]).toBe('kink-cut-out');
    expect(answer({ findings: [kink], manual: [only], looks: [closeLook(LONG)] }, 'straighten')).toBe(
      'applies',
    );
  });

  it('says that there is nothing to straighten, and what else it would leave', () => {
    const dent = finding('f2', {
      damage: 'dent',
      place: mid,
      depthIn: 0.02,
      alongIn: 0.2,
      widthIn: 0.2,
      widthBy: 'across',
    });
    expect(ruled({ findings: [dent] }, 'straighten')[0]).toBe('nothing-to-straighten');
    expect(ruled({ findings: [bow, dent] }, 'straighten')[0]).toBe('judged-together');
  });

  it('does not mind other damage that is inside the user’s own limit', () => {
    const dent = finding('f2', { damage: 'dent', place: mid, depthIn: 0.02 });
    const own = [manual('limit:dentDepth', { valueIn: 0.05 })];
    expect(answer({ findings: [bow, dent] }, 'straighten')).toBe('doesNotApply');
    expect(answer({ findings: [bow, dent], manual: own }, 'straighten')).toBe('cannotSay');
  });

  it('asks for the depth of a bow that was only tagged', () => {
    const tag = finding('f1', { damage: 'bow' });
    expect(option(rowFor({ findings: [tag] }), 'straighten').missing).toContainEqual({
      name: 'depthIn',
      finding: 'f1',
    });
  });

  it('forbids heat on heat-treated tube', () => {
    const model = box(undefined, { members: [{ from: 'U1R', to: 'U2R', material: 'ht125' }] });
    expect(option(rowFor({ findings: [bow], model }), 'straighten').conditions).toContain('heat-forbidden');
  });

  it('marks the decision as wanting a reason while its basis is missing, not as against the rule', () => {
    const row = rowFor({ findings: [bow], decisions: [decision(LONG, 'straighten')] });
    expect(row.decided).toMatchObject({
      answer: 'cannotSay',
      against: false,
      reasonNeeded: true,
      reasonWritten: false,
    });
  });
});

describe('rounding out by itself', () => {
  const oval = finding('f1', { damage: 'oval', place: mid, largestIn: 1.03, smallestIn: 0.97, alongIn: 1 });
  it('cannot be said for an oval or a dent without the user’s own data', () => {
    expect(answer({ findings: [oval] }, 'roundOut')).toBe('cannotSay');
    expect(ruled({ findings: [oval] }, 'roundOut')).toEqual(['flattening-is-dent']);
    expect(
      answer({ findings: [oval], manual: [manual('round-out-only')], looks: [closeLook(LONG)] }, 'roundOut'),
    ).toBe('applies');
  });
  it('is not for a bow', () => {
    expect(ruled({ findings: [bow] }, 'roundOut')[0]).toBe('nothing-to-round-out');
  });
  it('asks for both diameters', () => {
    const bare = finding('f1', { damage: 'oval', place: mid }) as Finding;
    expect(option(rowFor({ findings: [bare] }), 'roundOut').missing.map((m) => m.name)).toEqual(
      expect.arrayContaining(['largestIn', 'smallestIn']),
    );
  });
});
