/**
 * Writes the matrix of a unit cylinder (radius 1, along y from −½ to ½) so that it runs between two points.
 *
 * @param out   column-major 4 × 4 matrices, one after another
 * @param at    which matrix
 * @param ends  six numbers a tube, inches
 * @param from  share of the length where it starts, `to` where it ends
 */
export const writeTube = (
  out: Float32Array,
  at: number,
  ends: Float64Array,
  tube: number,
  radius: number,
  from = 0,
  to = 1,
): void => {
  const e = tube * 6;
  const [x0, y0, z0] = [ends[e]!, ends[e + 1]!, ends[e + 2]!];
  const [dx, dy, dz] = [ends[e + 3]! - x0, ends[e + 4]! - y0, ends[e + 5]! - z0];
  const long = Math.hypot(dx, dy, dz) || 1e-9;
  const [ux, uy, uz] = [dx / long, dy / long, dz / long];
  // any direction square to the tube; the level one where there is one
  const flat = Math.hypot(ux, uy);
  const [px, py] = flat > 1e-6 ? [-uy / flat, ux / flat] : [1, 0];
  const o = at * 16;
  out[o] = px * radius;
  out[o + 1] = py * radius;
  out[o + 2] = 0;
  out[o + 3] = 0;
  out[o + 4] = dx * (to - from);
  out[o + 5] = dy * (to - from);
  out[o + 6] = dz * (to - from);
  out[o + 7] = 0;
  // p × u keeps the set right-handed, so that front faces stay front faces
  out[o + 8] = py * uz * radius;
  out[o + 9] = -px * uz * radius;
  out[o + 10] = (px * uy - py * ux) * radius;
  out[o + 11] = 0;
  const mid = (from + to) / 2;
  out[o + 12] = x0 + dx * mid;
  out[o + 13] = y0 + dy * mid;
  out[o + 14] = z0 + dz * mid;
  out[o + 15] = 1;
};

/** Writes the matrix of a unit ball. */
export const writeBall = (
  out: Float32Array,
  at: number,
  centres: Float64Array,
  cluster: number,
  radius: number,
): void => {
  const o = at * 16;
  out.fill(0, o, o + 16);
  out[o] = out[o + 5] = out[o + 10] = radius;
  for (let k = 0; k < 3; k++) out[o + 12 + k] = centres[cluster * 3 + k]!;
  out[o + 15] = 1;
};
