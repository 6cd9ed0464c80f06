/**
 * A root of f between a and b, where f(a) and f(b) differ in sign.
 *
 * @returns null when they do not
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4.
 */
export const brent = (
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number | null => {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa + fb)) return null;
  let [c, fc] = [a, fa];
  let d = b - a;
  let e = d;
  for (let turn = 0; turn < 200; turn++) {
    if (fb < 0 === fc < 0) {
      [c, fc] = [a, fa];
      d = b - a;
      e = d;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    if (Math.abs(e) < least || Math.abs(fa) <= Math.abs(fb)) {
      d = half;
      e = half;
    } else {
      const s = fb / fa;
      const [q0, r0] = [fa / fc, fb / fc];
      const straight = a === c;
      let p = straight ? 2 * half * s : s * (2 * half * q0 * (q0 - r0) - (b - a) * (r0 - 1));
      let q = straight ? 1 - s : (q0 - 1) * (r0 - 1) * (s - 1);
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(least * q), Math.abs(e * q))) {
        e = d;
        d = p / q;
      } else {
        d = half;
        e = half;
      }
    }
    [a, fa] = [b, fb];
    b += Math.abs(d) > least ? d : Math.sign(half) * least;
    fb = f(b);
  }
  return b;
};
