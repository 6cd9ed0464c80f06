import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/core/job/jobSchema.ts';
import { answer, box, finding, manual, mid, option, rowFor, ruled } from './shop.ts';

/** A dent that meets 4-94a on a tube 1 in in diameter, but for what is overwritten. */
const dent = (more: Partial<Extract<Finding, { damage: 'dent' }>> = {}): Finding =>
  finding('f1', {
    damage: 'dent',
    place: mid,
    depthIn: 0.05,
    alongIn: 0.5,
    widthIn: 0.4,
    widthBy: 'across',
    ...more,
  });

describe('a welded patch (AC 43.13-1B, 4-94)', () => {
  // Source: AC 43.13-1B 4-94a, depth 1/10 D, length D, 1/4 circumference; oracles 16, 17, 18 and 36 of trade-facts.
  it.each([
    [
      'at all three limits on a 3/4 tube',
      { odIn: 0.75, wallIn: 0.035 },
      { depthIn: 0.075, alongIn: 0.75, widthIn: 0.589, widthBy: 'around' },
      'applies',
    ],
    ['.101 deep on 1 in', { odIn: 1, wallIn: 0.035 }, { depthIn: 0.101 }, 'doesNotApply'],
    ['1.01 long on 1 in', { odIn: 1, wallIn: 0.035 }, { alongIn: 1.01 }, 'doesNotApply'],
    ['.720 across on 1 in: share .256', { odIn: 1, wallIn: 0.035 }, { widthIn: 0.72 }, 'doesNotApply'],
    ['.700 across on 1 in: share .247', { odIn: 1, wallIn: 0.035 }, { widthIn: 0.7 }, 'applies'],
    [
      '.786 around on 1 in: more than a quarter',
      { odIn: 1, wallIn: 0.035 },
      { widthIn: 0.786, widthBy: 'around' },
      'doesNotApply',
    ],
    ['.785 around on 1 in', { odIn: 1, wallIn: 0.035 }, { widthIn: 0.785, widthBy: 'around' }, 'applies'],
  ] as const)('of a dent %s', (_, tube, size, want) => {
    expect(answer({ findings: [dent(size)], model: box(tube) }, 'patch')).toBe(want);
  });

  it.each([
    // Source: 4-94b.
    ['1 in long and a quarter round', { alongIn: 1, widthIn: 0.785 }, 'cannotSay'],
    ['.7 wide whichever way it is taken', { alongIn: 1, widthIn: 0.7 }, 'applies'],
    ['1.01 long', { alongIn: 1.01, widthIn: 0.5 }, 'doesNotApply'],
    ['.8 wide whichever way it is taken', { alongIn: 0.5, widthIn: 0.8 }, 'doesNotApply'],
  ] as const)('of a hole %s', (_, size, want) => {
    expect(answer({ findings: [finding('f1', { damage: 'hole', place: mid, ...size })] }, 'patch')).toBe(
      want,
    );
  });

  it('asks how a width was taken where the two ways disagree about a quarter', () => {
    const { widthBy: _, ...unsaid } = dent({ widthIn: 0.75 }) as Extract<Finding, { damage: 'dent' }>;
    const o = option(rowFor({ findings: [unsaid] }), 'patch');
    expect(o.answer).toBe('cannotSay');
    expect(o.missing).toContainEqual({ name: 'widthBy', finding: 'f1' });
  });

  it('names the size that is missing, and does not wait for it when another size forbids', () => {
    const bare = finding('f1', {
      damage: 'dent',
      place: mid,
      depthIn: 0.05,
      widthIn: 0.3,
      widthBy: 'across',
    });
    expect(option(rowFor({ findings: [bare] }), 'patch')).toMatchObject({
      answer: 'cannotSay',
      missing: [{ name: 'alongIn', finding: 'f1' }],
    });
    expect(answer({ findings: [{ ...bare, depthIn: 0.2 } as Finding] }, 'patch')).toBe('doesNotApply');
  });

  it('is closed by a crack, a sharp corner, or any other damage it would leave', () => {
    const crack = finding('f2', {
      damage: 'crack',
      place: { from: 'U1R', atIn: 10 },
      crackIn: 0.2,
      where: 'tube',
    });
    expect(ruled({ findings: [dent(), crack] }, 'patch')[0]).toBe('patch-no-crack');
    expect(ruled({ findings: [dent({ corner: 'sharp' })] }, 'patch')[0]).toBe('patch-no-crack');
    const bow = finding('f2', { damage: 'bow', place: mid, depthIn: 0.2 });
    expect(answer({ findings: [dent(), bow] }, 'patch')).toBe('doesNotApply');
  });

  it('is open again when the other damage is inside the user’s own limit', () => {
    const bow = finding('f2', { damage: 'bow', place: mid, depthIn: 0.02, stdIn: 0.005 });
    const own = [manual('limit:bow', { value: 0.06, unit: 'in' })];
    expect(answer({ findings: [dent(), bow], manual: own }, 'patch')).toBe('applies');
  });

  it('takes two dents close together as one long one, and far apart as two', () => {
    const second = (atIn: number): Finding => ({ ...dent({ place: { from: 'U1R', atIn } }), id: 'f2' });
    expect(answer({ findings: [dent(), second(21.5)] }, 'patch')).toBe('doesNotApply');
    expect(ruled({ findings: [dent(), second(21.5)] }, 'patch')[0]).toBe('dents-side-by-side');
    expect(answer({ findings: [dent(), second(23)] }, 'patch')).toBe('applies');
  });

  it('is not for a dent that reaches the weld of a cluster, and cannot be said right beside one', () => {
    const toe = [manual('toe:U1R-U2R:U1R', { valueIn: 1 })];
    const at = (atIn: number): Finding => dent({ place: { from: 'U1R', atIn } });
    expect(ruled({ findings: [at(1.2)], manual: toe }, 'patch')[0]).toBe('not-in-a-bay');
    // Edge at 1.75, weld at 1: .75 clear, less than 1.5 D.
    expect(answer({ findings: [at(2)], manual: toe }, 'patch')).toBe('cannotSay');
    // Edge at 2.5: 1.5 D clear.
    expect(answer({ findings: [at(2.75)], manual: toe }, 'patch')).toBe('applies');
  });

  it('is never for a cluster', () => {
    const f = finding('f1', { damage: 'dent', of: 'U1R', depthIn: 0.05 });
    expect(answer({ findings: [f] }, 'patch', 'U1R')).toBe('doesNotApply');
  });
});
