/**
 * How far a plane cut runs along the tube on either side of its middle.
 *
 *   h = R cot β          30°: 1.732 R, so 1.732 D from point to heel
 *
 * @param angleRad  β, plane to axis
 * Source: methods.md §9; geometry of a cylinder cut by a plane.
 */
export const halfHeight = (radiusIn: number, angleRad: number): number => radiusIn / Math.tan(angleRad);

/**
 * A plane cut developed: place along the tube at an angle round it, from the cut's middle.
 *
 *   x = h cos φ          φ from the long point
 */
export const scarfCurve = (radiusIn: number, angleRad: number, phi: number): number =>
  halfHeight(radiusIn, angleRad) * Math.cos(phi);

/**
 * A fishmouth developed: two planes that meet across the axis; place along the tube from the crotch.
 *
 *   x = h |cos φ|          φ from a tip
 */
export const fishmouthCurve = (radiusIn: number, angleRad: number, phi: number): number =>
  halfHeight(radiusIn, angleRad) * Math.abs(Math.cos(phi));

/**
 * Length of the edge of a plane cut: the whole ellipse with half axes R and R/sin β. A symmetrical fishmouth has four
 * quarters of the same ellipse.
 *
 *   L = 2π/M (a² − Σ 2ⁿ⁻¹ cₙ²),  M the arithmetic-geometric mean of a and b
 *
 * Source: Abramowitz and Stegun, 17.6 (elliptic integrals by the process of the arithmetic-geometric mean).
 */
export const edgeLength = (radiusIn: number, angleRad: number): number => {
  let a = radiusIn / Math.sin(angleRad);
  let b = radiusIn;
  let sum = a * a - (a * a - b * b) / 2;
  // digits double at every turn: eight are beyond double precision for any cut a saw can make
  for (let n = 1; n <= 8; n++) {
    const c = (a - b) / 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    sum -= 2 ** (n - 1) * c * c;
  }
  return ((2 * Math.PI) / (a + b)) * 2 * sum;
};

/**
 * What the tips of a fishmouth hold beyond its crotch, in³.
 *
 *   V = 4/3 cot β (Rₒ³ − Rᵢ³)
 *
 * Source: ∫∫ cot β r |cos φ| r dr dφ over the ring.
 */
export const tipsVolume = (outerIn: number, innerIn: number, angleRad: number): number =>
  ((4 / 3) * (outerIn ** 3 - innerIn ** 3)) / Math.tan(angleRad);
