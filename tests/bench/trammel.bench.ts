import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Reading } from '../../src/core/job/jobSchema.ts';
import { planOf } from '../../src/core/trammel/plan.ts';
import { trammel } from '../../src/core/trammel/trammel.ts';
import { axisReading, bowOn, box } from '../core/trammel/kit.ts';

/** Ratios within one run. One adjustment with all verdicts, residuals and swings against one dense Cholesky of its size. */
export const run = async (): Promise<string[]> => {
  const lines: string[] = [];
  const took: { clusters: number; adjust: number; plan: number }[] = [];
  for (const clusters of [44, 100, 200, 500]) {
    const { model, truss } = box(clusters / 4 - 1);
    const findings = [bowOn('f', 'U3L-U4L')];
    const planned = planOf(truss, findings, []);
    const none = trammel(truss, model, [], findings, [], undefined, planned);
    const readings = none.targets
      .filter((t) => Math.abs(Number(t.from.slice(1, -1)) - Number(t.to.slice(1, -1))) <= 1)
      .map(
        (t, k): Reading => axisReading(`r${k}`, t.from, t.to, t.targetIn.value + (k % 7 === 3 ? 1 / 32 : 0)),
      );
    const repeats = clusters > 150 ? 2 : 5;
    const adjust = best(repeats, () => {
      trammel(truss, model, readings, findings, [], undefined, planned);
    });
    const size = 3 * clusters;
    const normal = Matrix.eye(size, size).mul(4);
    for (let i = 1; i < size; i++) {
      normal.set(i, i - 1, -1);
      normal.set(i - 1, i, -1);
    }
    const right = Matrix.columnVector(Array.from({ length: size }, (_, k) => k % 5));
    const dense = best(repeats, () => {
      new CholeskyDecomposition(normal).solve(right);
    });
    const plan = best(1, () => {
      planOf(truss, findings, []);
    });
    took.push({ clusters, adjust, plan });
    lines.push(
      `${clusters} clusters, ${readings.length} readings: adjust, verdicts and swings in ${(adjust / dense).toFixed(1)} × one dense ` +
        `Cholesky and solve of ml-matrix; plan of the bays concerned and of the whole in ${(plan / adjust).toFixed(1)} × that`,
    );
  }
  const [first] = took;
  for (const t of took.slice(1))
    lines.push(
      `growth ${first!.clusters} → ${t.clusters} clusters (${(t.clusters / first!.clusters).toFixed(1)} ×): ` +
        `adjust ${(t.adjust / first!.adjust).toFixed(1)} ×, plan ${(t.plan / first!.plan).toFixed(1)} ×`,
    );
  return lines;
};

const best = (repeats: number, work: () => void): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < repeats; k++) {
    const from = performance.now();
    work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
};
