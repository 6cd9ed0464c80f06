/** The free shape of one bent tube between its two ends, arc length kept. */
export interface Bend {
  /** Chord lost, inches. */
  readonly shortIn: number;
  /** Slopes at the two ends if the tube bent only between them. */
  readonly slopeFrom: number;
  readonly slopeTo: number;
  /** ∫y² dx, in³. */
  readonly y2: number;
  /** ∫y(1 − x/L) dx and ∫y x/L dx, in². */
  readonly momentFrom: number;
  readonly momentTo: number;
}

/**
 * Half-sine of depth e over chord L.
 *
 *   δ = π²e²/4L   s = πe/L   ∫y² = e²L/2   ∫y(1 − x/L) = ∫y x/L = eL/π
 *
 * Assumes: small slopes; δ is right to 0.3 % at e/L = 1/40.
 * Source: methods section 3; checked by arc-length quadrature in the tests.
 */
export const halfSine = (e: number, length: number): Bend => ({
  shortIn: (Math.PI * e) ** 2 / (4 * length),
  slopeFrom: (Math.PI * e) / length,
  slopeTo: (Math.PI * e) / length,
  y2: (e * e * length) / 2,
  momentFrom: (e * length) / Math.PI,
  momentTo: (e * length) / Math.PI,
});

/**
 * Kink of depth e at a distance a from one end of chord L, b = L − a.
 *
 *   δ = e²L/2ab   s = e/a, e/b   ∫y² = e²L/3   ∫y(1 − x/L) = e(L + b)/6   ∫y x/L = e(L + a)/6
 *
 * Assumes: straight legs, small slopes; δ is right to 0.3 % at e/L = 1/40.
 * Source: methods section 3; checked by arc-length quadrature in the tests.
 */
export const kinkAt = (e: number, length: number, a: number): Bend => {
  const b = length - a;
  return {
    shortIn: (e * e * length) / (2 * a * b),
    slopeFrom: e / a,
    slopeTo: e / b,
    y2: (e * e * length) / 3,
    momentFrom: (e * (length + b)) / 6,
    momentTo: (e * (length + a)) / 6,
  };
};

/**
 * Depth over the whole tube from a depth over a shorter chord.
 *
 * Smooth: a uniform arc, e (L/g)². Kink at a: both legs straight, the gauge's middle as near to the kink as the tube
 * allows: e (ab/L) / (a'b'/g).
 *
 * Source: trade practice for a three-point gauge (arc); geometry of two straight legs (kink).
 */
export const depthOverTube = (e: number, gauge: number, length: number, kink: number | null): number => {
  if (kink === null) return e * (length / gauge) ** 2;
  const centre = Math.min(Math.max(kink, gauge / 2), length - gauge / 2);
  const a = kink - (centre - gauge / 2);
  const b = gauge - a;
  return (e * ((kink * (length - kink)) / length)) / ((a * b) / gauge);
};
