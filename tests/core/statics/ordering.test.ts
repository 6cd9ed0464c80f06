import { describe, expect, it, vi } from 'vitest';
import { type ClusterGraph, minimumDegree } from '../../../src/core/statics/ordering.ts';
import { findFronts } from '../../../src/core/statics/symbolic.ts';
import { soak } from '../../kit/soak.ts';
import { seededRandom } from '../../kit/trusses.ts';

// A soak takes minutes on a busy machine.
vi.setConfig({ testTimeout: 600_000 });

const graphOf = (n: number, edges: readonly (readonly [number, number])[]): ClusterGraph => {
  const lists = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of edges) {
    lists[a]!.add(b);
    lists[b]!.add(a);
  }
  const start = new Int32Array(n + 1);
  lists.forEach((list, c) => {
    start[c + 1] = start[c]! + list.size;
  });
  return { n, start, neighbour: Int32Array.from(lists.flatMap((list) => [...list].sort((p, q) => p - q))) };
};

/** Entries of the factor below the diagonal, by eliminating one vertex after the other on plain sets. */
const fill = (graph: ClusterGraph, order: ArrayLike<number>): number => {
  const near = Array.from(
    { length: graph.n },
    (_, c) => new Set(graph.neighbour.subarray(graph.start[c]!, graph.start[c + 1]!)),
  );
  let entries = 0;
  for (let k = 0; k < graph.n; k++) {
    const gone = order[k]!;
    const left = [...near[gone]!];
    entries += left.length;
    for (const p of left) {
      near[p]!.delete(gone);
      for (const q of left) if (p !== q) near[p]!.add(q);
    }
  }
  return entries;
};

const runs = soak(200);

describe('minimumDegree', () => {
  it('makes no fill on a tree', () => {
    const n = 60;
    const random = seededRandom(4);
    const tree = graphOf(
      n,
      Array.from({ length: n - 1 }, (_, k) => [k + 1, Math.floor(random() * (k + 1))] as const),
    );
    // Rose 1970: a tree has a perfect elimination order, leaves first; each vertex but the last has one later neighbour.
    expect(fill(tree, minimumDegree(tree))).toBe(n - 1);
  });

  it(`orders every vertex once, the same way each time, and its fronts hold the whole factor, seeds 1 to ${runs}`, () => {
    for (let seed = 1; seed <= runs; seed++) {
      const random = seededRandom(seed);
      const n = 2 + Math.floor(random() * 60);
      const edges = Array.from(
        { length: Math.floor(random() * 3 * n) },
        () => [Math.floor(random() * n), Math.floor(random() * n)] as const,
      );
      const graph = graphOf(
        n,
        edges.filter(([a, b]) => a !== b),
      );
      const order = minimumDegree(graph);
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, k) => k));
      expect(minimumDegree(graph)).toEqual(order);
      const fronts = findFronts(graph);
      let stored = 0;
      for (let f = 0; f < fronts.count; f++) {
        const width = fronts.first[f + 1]! - fronts.first[f]!;
        stored += (width * (width - 1)) / 2 + width * (fronts.rowStart[f + 1]! - fronts.rowStart[f]!);
      }
      const needed = fill(graph, fronts.cluster);
      expect(stored).toBeGreaterThanOrEqual(needed);
      // Regression: merged fronts once swallowed the whole truss; zeros may be a fifth, small fronts apart.
      expect(stored).toBeLessThanOrEqual(1.25 * needed + 2 * n);
    }
  });
});
