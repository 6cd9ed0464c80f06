import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import type { Reading } from '../../src/core/job/jobSchema.ts';
import { adjust, DATUM_STD_IN, fullWeights, type Network, networkOf } from '../../src/core/trammel/adjust.ts';
import { observe } from '../../src/core/trammel/observations.ts';
import { planOf } from '../../src/core/trammel/plan.ts';
import { trammel } from '../../src/core/trammel/trammel.ts';
import { axisReading, bowOn, box } from '../core/trammel/kit.ts';

/** The network's own normal matrix JᵀWJ + D at the drawing, full and square. */
const normalOf = (net: Network, weights: Float64Array, datum: ReadonlySet<string>): Matrix => {
  const size = net.drawing.length;
  const normal = Matrix.eye(size, size).mul(1e-6);
  net.observations.forEach(({ clusters }, n) => {
    const [i, j] = clusters.map((c) => 3 * net.index.get(c.id)!) as [number, number];
    const d = [0, 1, 2].map((c) => net.drawing[j + c]! - net.drawing[i + c]!);
    const length = Math.hypot(...d);
    const row = [...d.map((v) => -v / length), ...d.map((v) => v / length)];
    const at = [0, 1, 2].map((c) => i + c).concat([0, 1, 2].map((c) => j + c));
    at.forEach((p, k) => {
      at.forEach((q, m) => {
        normal.set(p, q, normal.get(p, q) + weights[n]! * row[k]! * row[m]!);
      });
    });
  });
  for (const id of datum) {
    const k = 3 * net.index.get(id)!;
    for (let c = k; c < k + 3; c++) normal.set(c, c, normal.get(c, c) + DATUM_STD_IN ** -2);
  }
  return normal;
};

/** Ratios within one run, against one dense Cholesky and solve of the same network's normal matrix by ml-matrix. */
export const run = async (): Promise<string[]> => {
  const lines: string[] = [];
  const took: { clusters: number; adjusted: number; stage: number; plan: number; dense: number }[] = [];
  // The first goes unsaid: it warms the engine up.
  for (const [round, clusters] of [44, 44, 100, 200, 500].entries()) {
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
    const { observations } = observe(truss, readings, []);
    const net = networkOf(new Map(truss.clusters.map((c) => [c.id, c.at])), observations);
    const weights = fullWeights(observations);
    const datum = new Set(net.clusters.filter((id) => Number(id.slice(1, -1)) > 4));
    const normal = normalOf(net, weights, datum);
    const right = Matrix.columnVector(Array.from({ length: net.drawing.length }, (_, k) => k % 5));
    const dense = best(repeats, () => {
      new CholeskyDecomposition(normal).solve(right);
    });
    const adjusted = best(repeats, () => {
      adjust(net, { weights, datum });
    });
    const stage = best(repeats, () => {
      trammel(truss, model, readings, findings, [], undefined, planned);
    });
    const plan = best(repeats, () => {
      planOf(truss, findings, []);
    });
    if (round === 0) continue;
    took.push({ clusters, adjusted, stage, plan, dense });
    lines.push(
      `${clusters} clusters, ${readings.length} readings: places, residuals and variances in ${(adjusted / dense).toFixed(2)} × one ` +
        `dense Cholesky and solve of the same normal matrix by ml-matrix; the stage with verdicts, causes, folds, spread and ` +
        `swings in ${(stage / dense).toFixed(2)} ×; plan of the bays concerned and of the whole in ${(plan / dense).toFixed(2)} ×`,
    );
  }
  const [first] = took;
  for (const t of took.slice(1)) {
    const times = (of: 'adjusted' | 'stage' | 'plan' | 'dense'): string => (t[of] / first![of]).toFixed(1);
    lines.push(
      `growth ${first!.clusters} → ${t.clusters} clusters (${(t.clusters / first!.clusters).toFixed(1)} ×): adjust ${times('adjusted')} ×, ` +
        `stage ${times('stage')} ×, plan ${times('plan')} ×, dense ${times('dense')} ×`,
    );
  }
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
