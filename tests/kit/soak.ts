/** Runs of a random test: the stated count with `SOAK=1`, a twentieth of it (at least 5) otherwise. */
export const soak = (count: number): number =>
  process.env.SOAK === '1' ? count : Math.max(5, Math.ceil(count / 20));
