/** A 3 × 3 tile less the dot products of three rows with three rows: nine sums stay in registers. */
export const subtractDots = (
  to: Float64Array,
  at: number,
  step: number,
  a: Float64Array,
  aAt: number,
  b: Float64Array,
  bAt: number,
  stride: number,
  terms: number,
): void => {
  let s00 = 0;
  let s01 = 0;
  let s02 = 0;
  let s10 = 0;
  let s11 = 0;
  let s12 = 0;
  let s20 = 0;
  let s21 = 0;
  let s22 = 0;
  const a1 = aAt + stride;
  const a2 = a1 + stride;
  const b1 = bAt + stride;
  const b2 = b1 + stride;
  for (let p = 0; p < terms; p++) {
    const x0 = a[aAt + p]!;
    const x1 = a[a1 + p]!;
    const x2 = a[a2 + p]!;
    const y0 = b[bAt + p]!;
    const y1 = b[b1 + p]!;
    const y2 = b[b2 + p]!;
    s00 += x0 * y0;
    s01 += x0 * y1;
    s02 += x0 * y2;
    s10 += x1 * y0;
    s11 += x1 * y1;
    s12 += x1 * y2;
    s20 += x2 * y0;
    s21 += x2 * y1;
    s22 += x2 * y2;
  }
  to[at]! -= s00;
  to[at + 1]! -= s01;
  to[at + 2]! -= s02;
  const at1 = at + step;
  to[at1]! -= s10;
  to[at1 + 1]! -= s11;
  to[at1 + 2]! -= s12;
  const at2 = at1 + step;
  to[at2]! -= s20;
  to[at2 + 1]! -= s21;
  to[at2 + 2]! -= s22;
};
