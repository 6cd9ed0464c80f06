import { describe, expect, it } from 'vitest';
import type { Choice } from '../../../src/core/job/jobSchema.ts';
import { answer, box, finding, LONG, manual, mid, option, rowFor, ruled } from './shop.ts';

const welds: readonly Choice[] = ['patch', 'splitSleeve', 'splice', 'replace', 'fingerPlate', 'rebuild'];
const dent = finding('f1', {
  damage: 'dent',
  place: mid,
  depthIn: 0.05,
  alongIn: 0.5,
  widthIn: 0.4,
  widthBy: 'across',
});

describe('parts outside the general weld rules', () => {
  // Source: AC 43.13-1B 4-76, 4-81, 4-85, 4-89, 4-99, 4-102, 4-103; needs.md N24.
  it.each([
    ['heat treated', 'scope-heatTreated'],
    ['brazed repair here', 'scope-brazed'],
    ['cold-worked', 'scope-coldWorked'],
    ['engine mount ring', 'scope-engineMountRing'],
    ['streamline tube', 'scope-streamline'],
    ['something of the owner’s', 'scope-otherScope'],
  ])('close every weld when the user says “%s”', (words, rule) => {
    const own = [manual(`scope:${LONG}`, { words })];
    for (const choice of welds) {
      expect(answer({ findings: [dent], manual: own }, choice)).toBe('doesNotApply');
      expect(ruled({ findings: [dent], manual: own }, choice)).toEqual([rule]);
    }
    expect(answer({ findings: [dent], manual: own }, 'refer')).toBe('applies');
  });

  it('are known by material: heat treated, and unknown, which asks for proof', () => {
    const of = (material: string) =>
      box(undefined, {
        members: [
          {
            from: 'U1R',
            to: 'U2R',
            material,
            section: { elasticPsi: 29e6, shearPsi: 11e6, yieldPsi: 50e3, densityLbIn3: 0.283 },
          },
        ],
      });
    expect(rowFor({ findings: [dent], model: of('ht180') }).scope).toEqual(['heatTreated']);
    const unknown = rowFor({ findings: [dent], model: of('unknown') });
    expect(unknown.scope).toEqual(['unknownMaterial']);
    expect(option(unknown, 'splice').missing).toEqual([{ name: 'material' }]);
    expect(rowFor({ findings: [dent], model: of('1025') }).scope).toEqual([]);
  });

  it('are known by the fitting at a cluster', () => {
    const model = box(undefined, {
      clusters: [{ id: 'U2R', at: [40, 12, 24], fitting: 'Engine-mount ring lug' }],
    });
    const f = finding('f1', { damage: 'dent', of: 'U2R', depthIn: 0.1 });
    expect(rowFor({ findings: [f], model }, 'U2R').scope).toEqual(['engineMountRing']);
  });

  it('leave an axle to be replaced as a part, and nothing else', () => {
    // Source: AC 43.13-1B 4-102d.
    const own = [manual(`scope:${LONG}`, { words: 'axle' })];
    expect(answer({ findings: [dent], manual: own }, 'replace')).toBe('applies');
    expect(answer({ findings: [dent], manual: own }, 'splice')).toBe('doesNotApply');
  });

  it('are opened again by the maker’s own word for that choice', () => {
    const own = [
      manual(`scope:${LONG}`, { words: 'streamline' }),
      manual(`allow:splice:${LONG}`, { words: 'figure 4-44' }),
    ];
    expect(answer({ findings: [dent], manual: own }, 'splice')).toBe('applies');
    expect(answer({ findings: [dent], manual: own }, 'patch')).toBe('doesNotApply');
  });
});

describe('the user’s own data', () => {
  it('outrank the general rules both ways', () => {
    expect(answer({ findings: [dent], manual: [manual('forbid:patch')] }, 'patch')).toBe('doesNotApply');
    const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.2 });
    expect(answer({ findings: [bow], manual: [manual('allow:patch')] }, 'patch')).toBe('applies');
  });
  it('of one member outrank those of all, and later outrank earlier', () => {
    const all = manual('forbid:patch');
    const one = manual(`allow:patch:${LONG}`);
    expect(answer({ findings: [dent], manual: [one, all] }, 'patch')).toBe('applies');
    expect(answer({ findings: [dent], manual: [manual('allow:patch'), all] }, 'patch')).toBe('doesNotApply');
  });
});
