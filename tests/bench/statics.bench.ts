import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { Vec3 } from '../../src/core/base/vec3.ts';
import { assemble, type BlockMatrix, multiplyBlocks } from '../../src/core/statics/assemble.ts';
import { backsolve } from '../../src/core/statics/backsolve.ts';
import { frameMember } from '../../src/core/statics/element.ts';
import { type Factor, factorize } from '../../src/core/statics/factor.ts';
import { selectedInverse } from '../../src/core/statics/selectedInverse.ts';
import { findFronts } from '../../src/core/statics/symbolic.ts';
import type { Truss } from '../../src/core/truss/result.ts';
import { type Bar, boxTruss, trussOf } from '../core/statics/boxTruss.ts';

/** Ratios within one run; the targets stand in methods.md. Nothing is asserted. */
export const run = async (): Promise<string[]> => {
  const lines: string[] = [await memory(systemOf(boxTruss(1666)))];
  const sizes = [
    ['160 long', boxTruss(13), 60],
    ['2,000 long', boxTruss(166), 12],
    ['20,000 long', boxTruss(1666), 4],
    ['2,000 lattice', lattice(6, 6, 7), 12],
    ['20,000 lattice', lattice(14, 14, 15), 1],
  ] as const;
  const own: Timing[] = [];
  for (const [name, truss, repeats] of sizes) {
    const system = systemOf(truss);
    const mine = time(system, repeats);
    own.push(mine);
    const parts = `order ${pct(mine.order, mine.all)}, factor ${pct(mine.factor, mine.all)}, solve ${pct(mine.solve, mine.all)}`;
    const scipy = scipySolve(system, repeats);
    const ratio = scipy
      ? `${(mine.all / scipy.seconds).toFixed(2)} × SuperLU (answers agree to ${difference(scipy.norm, mine.norm)})`
      : 'no SciPy here';
    const more =
      scipy && repeats > 1
        ? `; 100 right-hand sides ${(mine.hundred / scipy.hundred).toFixed(2)} × SuperLU`
        : '';
    lines.push(`${name}, ${truss.members.length} members: ${ratio}; ${parts}${more}`);
    lines.push(
      `  nnz(L) ${(mine.entries / 1e6).toFixed(3)} M doubles${scipy ? ` (SuperLU ${(scipy.entries / 1e6).toFixed(3)})` : ''}, ` +
        `residual ‖Ku−f‖/‖f‖ ${mine.residual.toExponential(1)}` +
        `${scipy ? ` (SuperLU ${scipy.residual.toExponential(1)})` : ''}, over ‖K‖‖u‖+‖f‖ ${mine.backward.toExponential(1)}` +
        (repeats > 1
          ? `, every K⁻¹ end block in ${(mine.selected / (mine.factor + mine.solve)).toFixed(2)} × factor + solve`
          : ''),
    );
  }
  for (const [k, bays, repeats] of [
    [0, 13, 5],
    [1, 166, 1],
  ] as const)
    lines.push(
      `${sizes[k]![0]}: dense ml-matrix LU solve takes ${(timeDense(boxTruss(bays), repeats) / own[k]!.all).toFixed(0)} × as long`,
    );
  lines.push(
    `growth 2,000 → 20,000 long: order ${grow(own, 'order')}, factor ${grow(own, 'factor')}, solve ${grow(own, 'solve')}, ` +
      `selected inverse ${grow(own, 'selected')}`,
  );
  return lines;
};

/**
 * What ordering, factor and solve allocate over the doubles of L: with all the engine has not collected by the end
 * (the peak, as a collection in between only lowers it), and what is held on to.
 */
const memory = async ({ k, held, right }: System): Promise<string> => {
  setFlagsFromString('--expose-gc');
  const gc = runInNewContext('gc') as () => void;
  // array buffers are swept beside the script: a pause and a second round see them gone
  const collect = async (): Promise<void> => {
    for (let round = 0; round < 3; round++) {
      gc();
      await new Promise((done) => setTimeout(done, 100));
    }
  };
  const inUse = (): number => {
    const { heapUsed, external } = process.memoryUsage();
    return heapUsed + external;
  };
  await collect();
  const before = inUse();
  const factored = factorize(k, findFronts(k), held);
  if (factored.kind === 'singular') throw new Error('the benchmark truss moves freely');
  const moves = backsolve(factored.factor, right, 1);
  const all = inUse() - before;
  await collect();
  const kept = inUse() - before;
  const doubles = factored.factor.panels.length;
  const over = (bytes: number): string => `${(bytes / 8 / doubles).toFixed(1)} × nnz(L)`;
  return `20,000 long: peak memory of order + factor + solve ${over(all)} with garbage, kept ${over(kept)} (${(doubles / 1e6).toFixed(2)} M doubles, ${moves.length} moves)`;
};

interface System {
  readonly k: BlockMatrix;
  readonly held: Uint8Array;
  readonly right: Float64Array;
}

interface Timing {
  readonly order: number;
  readonly factor: number;
  readonly solve: number;
  readonly all: number;
  readonly hundred: number;
  readonly selected: number;
  readonly entries: number;
  readonly residual: number;
  /** Normwise backward error, ‖K‖ from below by its largest diagonal: Rigal & Gaches, J. ACM 14 (1967) 543, from memory. */
  readonly backward: number;
  readonly norm: number;
}

const pct = (part: number, all: number): string => `${Math.round((100 * part) / all)} %`;
const difference = (a: number, b: number): string => (Math.abs(a - b) / a).toExponential(0);
const grow = (own: readonly Timing[], part: 'order' | 'factor' | 'solve' | 'selected'): string =>
  `× ${(own[2]![part] / own[1]![part]).toFixed(1)}`;

/** A block of cells, every cell's three edges and a diagonal in each of its three faces: about 6 members a cluster. */
const lattice = (...cells: readonly [number, number, number]): Truss => {
  const places: Record<string, Vec3> = {};
  const bars: Bar[] = [];
  const id = (x: number, y: number, z: number): string => `${x},${y},${z}`;
  const [xs, ys, zs] = cells.map((count) => Array.from({ length: count + 1 }, (_, k) => k)) as [
    number[],
    number[],
    number[],
  ];
  for (const x of xs) for (const y of ys) for (const z of zs) places[id(x, y, z)] = [20 * x, 20 * y, 20 * z];
  for (const x of xs)
    for (const y of ys)
      for (const z of zs)
        for (const [a, b, c] of [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
          [1, 1, 0],
          [0, 1, 1],
          [1, 0, 1],
        ] as const)
          if (places[id(x + a, y + b, z + c)]) bars.push([id(x, y, z), id(x + a, y + b, z + c)]);
  return trussOf(places, bars);
};

const systemOf = (truss: Truss): System => {
  const index = new Map(truss.clusters.map((c, k) => [c.id, k]));
  const members = truss.members.map((m) => {
    const [i, j] = [index.get(m.from)!, index.get(m.to)!];
    return frameMember(m, i, j, truss.clusters[i]!.at, truss.clusters[j]!.at, 'welded');
  });
  const n = truss.clusters.length;
  const held = new Uint8Array(6 * n);
  held.fill(1, 0, 24);
  const right = Float64Array.from(held, (h, d) => (h ? 0 : ((d * 37) % 101) - 50));
  return { k: assemble(n, members), held, right };
};

const time = ({ k, held, right }: System, repeats: number): Timing => {
  const best = { order: 1e9, factor: 1e9, solve: 1e9, all: 1e9 };
  let factor: Factor | undefined;
  let moves = right;
  // The first tenth only warms the engine up, as a model that has just been loaded does.
  for (let r = 0; r < repeats + Math.ceil(repeats / 10); r++) {
    const t0 = performance.now();
    const fronts = findFronts(k);
    const t1 = performance.now();
    const factored = factorize(k, fronts, held);
    if (factored.kind === 'singular') throw new Error('the benchmark truss moves freely');
    const t2 = performance.now();
    moves = backsolve(factored.factor, right, 1);
    const t3 = performance.now();
    factor = factored.factor;
    best.order = Math.min(best.order, t1 - t0);
    best.factor = Math.min(best.factor, t2 - t1);
    best.solve = Math.min(best.solve, t3 - t2);
    best.all = Math.min(best.all, t3 - t0);
  }
  // One step of refinement, as `Frame.solve` takes it.
  const rest = multiplyBlocks(k, moves).map((v, d) => (held[d] ? 0 : right[d]! - v));
  const more = backsolve(factor!, rest, 1);
  moves = moves.map((v, d) => v + more[d]!);
  const back = multiplyBlocks(k, moves);
  let [off, all, norm] = [0, 0, 0];
  right.forEach((f, d) => {
    if (!held[d]) off += (back[d]! - f) ** 2;
    all += f * f;
    norm += moves[d]! ** 2;
  });
  const stiffest = k.diagonal.reduce((most, v, at) => ((at % 36) % 7 === 0 ? Math.max(most, v) : most), 0);
  const many = new Float64Array(100 * right.length);
  for (let c = 0; c < 100; c++) many.set(right, c * right.length);
  // A single repeat is the stress test: only factor and solve are of interest there.
  let [hundred, selected] = [1e9, 1e9];
  for (let r = 0; r < (repeats > 1 ? Math.max(2, repeats / 6) : 0); r++) {
    const t0 = performance.now();
    backsolve(factor!, many, 100);
    const t1 = performance.now();
    selectedInverse(factor!, k, held);
    hundred = Math.min(hundred, t1 - t0);
    selected = Math.min(selected, performance.now() - t1);
  }
  return {
    ...best,
    hundred,
    selected,
    entries: factor!.panels.length,
    residual: Math.sqrt(off / all),
    backward: Math.sqrt(off) / (stiffest * Math.sqrt(norm) + Math.sqrt(all)),
    norm: Math.sqrt(norm),
  };
};

/** The same matrix, held freedoms as unit rows, through a file to SciPy; null when there is none. */
const scipySolve = (
  { k, held, right }: System,
  repeats: number,
): { seconds: number; norm: number; entries: number; hundred: number; residual: number } | null => {
  const size = 6 * k.n;
  const start = [0];
  const indices: number[] = [];
  const data: number[] = [];
  for (let c = 0; c < size; c++) {
    const [cluster, d] = [Math.floor(c / 6), c % 6];
    const put = (r: number, v: number): void => {
      const value = r === c && held[c] ? 1 : held[r] || held[c] ? 0 : v;
      if (value === 0) return;
      indices.push(r);
      data.push(value);
    };
    const blocks = [cluster, ...k.neighbour.subarray(k.start[cluster]!, k.start[cluster + 1]!)];
    blocks.forEach((other, at) => {
      for (let r = 0; r < 6; r++) {
        const block = at === 0 ? 36 * cluster : 36 * k.pair[k.start[cluster]! + at - 1]!;
        const v =
          at === 0
            ? k.diagonal[block + 6 * r + d]!
            : other < cluster
              ? k.across[block + 6 * r + d]!
              : k.across[block + 6 * d + r]!;
        put(6 * other + r, v);
      }
    });
    start.push(indices.length);
  }
  const folder = mkdtempSync(join(tmpdir(), 'statics-bench-'));
  const file = join(folder, 'matrix');
  const head = Int32Array.from([size, indices.length, ...start, ...indices]);
  const padding = Buffer.alloc((8 - (head.byteLength % 8)) % 8);
  writeFileSync(
    file,
    Buffer.concat([
      Buffer.from(head.buffer),
      padding,
      Buffer.from(Float64Array.from(data).buffer),
      Buffer.from(right.buffer),
    ]),
  );
  try {
    const words = execFileSync('python3', ['tests/bench/scipySolve.py', file, `${repeats}`], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const [seconds, norm, entries, hundred, residual] = words.trim().split(/\s+/).map(Number);
    return {
      seconds: 1000 * seconds!,
      norm: norm!,
      entries: entries!,
      hundred: 1000 * hundred!,
      residual: residual!,
    };
  } catch (error) {
    console.warn(String(error).slice(0, 600));
    return null;
  } finally {
    rmSync(folder, { recursive: true });
  }
};

const timeDense = (truss: Truss, repeats: number): number => {
  const { k, held, right } = systemOf(truss);
  const free = Array.from(held, (h, d) => (h ? -1 : d)).filter((d) => d >= 0);
  const columns = free.map((d) => {
    const unitMove = new Float64Array(held.length);
    unitMove[d] = 1;
    const column = multiplyBlocks(k, unitMove);
    return free.map((r) => column[r]!);
  });
  const [matrix, load] = [new Matrix(columns), Matrix.columnVector(free.map((d) => right[d]!))];
  let best = 1e9;
  for (let r = 0; r < repeats; r++) {
    const t0 = performance.now();
    new LuDecomposition(matrix).solve(load);
    best = Math.min(best, performance.now() - t0);
  }
  return best;
};
