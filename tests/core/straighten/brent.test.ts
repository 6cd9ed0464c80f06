import { describe, expect, it } from 'vitest';
import { brent } from '../../../src/core/straighten/brent.ts';
import { integrate, integrateOver } from '../../../src/core/straighten/gauss.ts';
import { expectNear } from '../../kit/near.ts';

describe('roots', () => {
  // Source: exact roots.
  it.each([
    ['x² − 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ['cos x − x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['a flat one, (x − 1)⁷', (x: number) => (x - 1) ** 7, 0, 3, 1],
    ['one at the end', (x: number) => x, 0, 5, 0],
    ['a step', (x: number) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
  ])('of %s are found', (name, f, a, b, want) => {
    expectNear(brent(f, a, b, 1e-12)!, want, {
      abs: name.includes('⁷') ? 1e-2 : 1e-10,
      because: 'tolerance asked, flatness of x⁷',
    });
  });
  it('are null where the ends do not differ in sign', () => {
    expect(brent((x) => x * x + 1, -1, 1, 1e-9)).toBeNull();
    expect(brent(() => Number.NaN, -1, 1, 1e-9)).toBeNull();
  });
});

describe('quadrature', () => {
  it('meets polynomials, square roots at the ends and breaks', () => {
    const t = { rel: 1e-9, because: '16 points' };
    expectNear(
      integrate((x) => x ** 5, 0, 2),
      64 / 6,
      t,
    );
    expectNear(
      integrate((x) => Math.sqrt(1 - x * x), -1, 1),
      Math.PI / 2,
      t,
    );
    expectNear(
      integrateOver((x) => Math.abs(x - 0.3), 0, 1, [0.3, 7]),
      0.045 + 0.245,
      t,
    );
  });
});
