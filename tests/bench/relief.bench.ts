import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { redistribution } from '../../src/core/loadPath/redistribution.ts';
import { changedFrame } from '../../src/core/lockedIn/changedFrame.ts';
import { addEndForces } from '../../src/core/lockedIn/lockedState.ts';
import {
  coupleTo,
  couplingBlock,
  cutsOf,
  lengthRelief,
  letGo,
  strainAfter,
} from '../../src/core/relief/release.ts';
import { assemble, type BlockMatrix } from '../../src/core/statics/assemble.ts';
import { backsolve } from '../../src/core/statics/backsolve.ts';
import { factorize } from '../../src/core/statics/factor.ts';
import { deformations, type Frame, modeMatrix } from '../../src/core/statics/frame.ts';
import { isFrame, prepareFrame } from '../../src/core/statics/prepareFrame.ts';
import { findFronts } from '../../src/core/statics/symbolic.ts';
import type { Truss } from '../../src/core/truss/result.ts';
import { boxTruss } from '../core/statics/boxTruss.ts';

/** Relief and load path as ratios within one run; the targets stand in methods.md. Nothing is asserted. */
export const run = async (): Promise<string[]> => {
  const lines: string[] = [];
  const rank: number[] = [];
  for (const [name, bays, repeats, naiveShare] of [
    ['160', 13, 40, 1],
    ['2,000', 166, 6, 0.05],
    ['20,000', 1666, 2, 0],
  ] as const) {
    const truss = boxTruss(bays);
    const once = best(repeats, () => factorAndSolve(truss));
    const all = best(repeats, () => rankAll(prepared(truss), Math.floor(truss.members.length / 2)));
    rank.push(all);
    lines.push(
      `${name}: all cut candidates of one target, factor included, over one factor + solve: ${(all / once).toFixed(1)}` +
        (naiveShare > 0
          ? `; factoring again for each takes ${(naiveLoop(truss, naiveShare, Math.max(1, repeats / 10)) / rankOnly(truss, repeats)).toFixed(0)} × as long as the ranking without its factor`
          : ''),
    );
    if (naiveShare > 0) {
      const matrix = best(Math.max(2, repeats / 4), () => {
        const frame = prepared(truss);
        return redistribution(
          frame,
          frame.members.map((_, k) => k),
        ).length;
      });
      const scipy = scipyLoadPath(prepared(truss), Math.max(1, repeats / 6));
      lines.push(
        `${name}: full load-path matrix over one factor + solve: ${(matrix / once).toFixed(0)}; over SciPy: ${scipy === null ? 'no SciPy here' : (matrix / scipy).toFixed(2)}`,
      );
    }
  }
  lines.push(`ranking grows × ${(rank[2]! / rank[1]!).toFixed(1)} from 2,000 to 20,000 members`);
  return lines;
};

const best = (repeats: number, work: () => unknown): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let r = 0; r < repeats + 1; r++) {
    const start = performance.now();
    work();
    if (r > 0 || repeats === 1) least = Math.min(least, performance.now() - start);
  }
  return least;
};

const support = (truss: Truss) => ({
  heldAs: 'bench',
  ranked: true,
  joints: 'welded' as const,
  held: truss.clusters.slice(0, 4).map((c) => ({ cluster: c.id, fixed: ['x', 'y', 'z'] as const })),
  braces: [],
  issues: [],
});

const prepared = (truss: Truss): Frame => {
  const frame = prepareFrame(truss, support(truss));
  if (!isFrame(frame)) throw new Error('the benchmark truss moves freely');
  return frame;
};

const factorAndSolve = (truss: Truss): number => {
  const frame = prepared(truss);
  const loads = new Float64Array(frame.held.length).fill(1);
  return frame.solve(loads)[7]!;
};

/** η, force left, energy and kerf for every cut, one state of misfit. */
const rankAll = (frame: Frame, target: number): number => {
  const cuts = cutsOf(changedFrame(frame, [])!);
  const coupled = coupleTo(cuts, target);
  const loads = new Float64Array(frame.held.length);
  const source = frame.members[Math.floor(target / 2)]!;
  addEndForces(source, [-source.stiffness[0]! * 0.01, 0, 0, 0, 0, 0], loads);
  const moves = frame.solve(loads);
  const strains = new Float64Array(frame.members.length * 6);
  frame.members.forEach((m, k) => {
    strains.set(deformations(m, moves), k * 6);
  });
  let sum = 0;
  for (let cut = 0; cut < frame.members.length; cut++) {
    if (cuts.mu[cut]! < 1e-8) continue;
    const a = couplingBlock(cuts, coupled, cut);
    const gone = letGo(cuts, cut, strains);
    sum += lengthRelief(cuts, coupled, cut, a) + strainAfter(coupled, cut, a, gone.z, strains)[0]!;
  }
  return sum;
};

const rankOnly = (truss: Truss, repeats: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let r = 0; r < repeats + 1; r++) {
    // A fresh frame each time, so that the selected inverse is worked out each time.
    const frame = prepared(truss);
    const start = performance.now();
    rankAll(frame, Math.floor(frame.members.length / 2));
    if (r > 0) least = Math.min(least, performance.now() - start);
  }
  return least;
};

/** Our own factor for each cut, symbolic work reused, one misfit solved each time; a share of the cuts, scaled up. */
const naiveLoop = (truss: Truss, share: number, repeats: number): number => {
  const frame = prepared(truss);
  const whole: BlockMatrix = assemble(frame.clusters.length, frame.members);
  const fronts = findFronts(whole);
  const count = Math.max(8, Math.floor(frame.members.length * share));
  const loads = new Float64Array(frame.held.length * 2).fill(1);
  const work = (): number => {
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const cut = Math.floor((k * frame.members.length) / count);
      const weak = frame.members.map((m, c) =>
        c === cut ? { ...m, stiffness: m.stiffness.map((d) => d * 1e-9) } : m,
      );
      const factored = factorize(assemble(frame.clusters.length, weak), fronts, frame.held);
      if (factored.kind === 'singular') continue;
      sum += backsolve(factored.factor, loads, 2)[7]!;
    }
    return sum;
  };
  return (best(repeats, work) * frame.members.length) / count;
};

/** The same matrix in SciPy, milliseconds; null when there is none. */
const scipyLoadPath = (frame: Frame, repeats: number): number | null => {
  const rows: number[] = [];
  const columns: number[] = [];
  const values: number[] = [];
  frame.members.forEach((m, k) => {
    modeMatrix(m).forEach((v, at) => {
      if (v === 0) return;
      const c = at % 12;
      rows.push(6 * k + Math.floor(at / 12));
      columns.push(c < 6 ? m.i * 6 + c : m.j * 6 + c - 6);
      values.push(v);
    });
  });
  const held = [...frame.held.keys()].filter((d) => frame.held[d]);
  const head = Int32Array.from([
    frame.held.length,
    frame.members.length,
    rows.length,
    held.length,
    ...rows,
    ...columns,
    ...held,
  ]);
  const padding = Buffer.alloc((8 - (head.byteLength % 8)) % 8);
  const stiffness = Float64Array.from(frame.members.flatMap((m) => [...m.stiffness]));
  const folder = mkdtempSync(join(tmpdir(), 'relief-bench-'));
  const file = join(folder, 'frame');
  const parts = [head.buffer, padding, Float64Array.from(values).buffer, stiffness.buffer];
  writeFileSync(file, Buffer.concat(parts.map((p) => (Buffer.isBuffer(p) ? p : Buffer.from(p)))));
  try {
    const words = execFileSync('python3', ['tests/bench/scipyLoadPath.py', file, `${Math.ceil(repeats)}`], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return 1000 * Number(words.trim().split(/\s+/)[0]);
  } catch {
    return null;
  } finally {
    rmSync(folder, { recursive: true });
  }
};
