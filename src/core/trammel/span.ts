import type { Candidate } from './cofactors.ts';

/** Rows less their part within the span of the rows chosen, over the free coordinates only. */
export const makeSpan = (
  rows: readonly Candidate[],
  free: readonly boolean[],
): { left: (c: number) => number; choose: (c: number) => void; basis: readonly Float64Array[] } => {
  const size = free.length;
  const rest = rows.map((row) => {
    const r = new Float64Array(size);
    row.at.forEach((i, p) => {
      if (free[i]) r[i] = row.value[p]!;
    });
    return r;
  });
  const sizeOf = (r: Float64Array): number => Math.sqrt(r.reduce((sum, v) => sum + v * v, 0));
  const now = Float64Array.from(rest, sizeOf);
  const full = Float64Array.from(now, (n) => n || 1);
  const basis: Float64Array[] = [];
  return {
    left: (c) => now[c]! / full[c]!,
    basis,
    choose: (c) => {
      const norm = now[c]!;
      if (norm < 1e-9) return;
      const q = rest[c]!.map((v) => v / norm);
      basis.push(q);
      rest.forEach((r, k) => {
        let along = 0;
        for (let i = 0; i < size; i++) along += r[i]! * q[i]!;
        if (along === 0) return;
        let sum = 0;
        for (let i = 0; i < size; i++) {
          r[i] = r[i]! - along * q[i]!;
          sum += r[i]! ** 2;
        }
        now[k] = Math.sqrt(sum);
      });
    },
  };
};
