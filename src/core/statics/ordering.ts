/** The graph of clusters: neighbours of cluster c are `neighbour[start[c] … start[c + 1])`. */
export interface ClusterGraph {
  readonly n: number;
  readonly start: Int32Array;
  readonly neighbour: Int32Array;
}

/**
 * Order in which to eliminate the clusters so that the factor stays sparse: approximate minimum degree
 * on the quotient graph, with element absorption, mass elimination and indistinguishable clusters.
 *
 *   d_i = min(n − k, d_i + |L_p \ i|, |A_i \ i| + |L_p \ i| + Σ_e |L_e \ L_p|)
 *
 * @returns cluster indices, first eliminated first; the same graph always gives the same order.
 * Source: Amestoy, Davis & Duff, "An approximate minimum degree ordering algorithm",
 * SIAM J. Matrix Anal. Appl. 17 (1996) 886, from memory.
 */
export const minimumDegree = ({ n, start, neighbour }: ClusterGraph): Int32Array => {
  const near: number[][] = [];
  const elements: number[][] = [];
  const inside: (number[] | undefined)[] = new Array(n);
  const twins: number[][] = [];
  const weight = new Int32Array(n).fill(1);
  const degree = new Int32Array(n);
  const outside = new Int32Array(n);
  const outsideMark = new Int32Array(n);
  const frontMark = new Int32Array(n);
  const gone = new Uint8Array(n);
  for (let v = 0; v < n; v++) {
    near.push(Array.from(neighbour.subarray(start[v]!, start[v + 1]!)));
    elements.push([]);
    twins.push([]);
    degree[v] = near[v]!.length;
  }
  const buckets = degreeBuckets(n);
  for (let v = n - 1; v >= 0; v--) buckets.add(v, degree[v]!);

  const order = new Int32Array(n);
  let placed = 0;
  const place = (v: number): void => {
    order[placed++] = v;
    for (const twin of twins[v]!) place(twin);
  };

  for (let mark = 1; placed < n; mark++) {
    const p = buckets.takeSmallest();
    // The new element: everything p touches, straight or through elements, which it swallows.
    const front: number[] = [];
    let frontWeight = 0;
    gone[p] = 1;
    place(p);
    const take = (v: number): void => {
      if (gone[v] || frontMark[v] === mark) return;
      frontMark[v] = mark;
      front.push(v);
      frontWeight += weight[v]!;
    };
    for (const v of near[p]!) take(v);
    for (const e of elements[p]!) {
      for (const v of inside[e] ?? []) take(v);
      inside[e] = undefined;
    }
    for (const i of front) {
      for (const e of elements[i]!) {
        const members = inside[e];
        if (!members) continue;
        if (outsideMark[e] !== mark) {
          outsideMark[e] = mark;
          outside[e] = members.reduce((sum, v) => (gone[v] ? sum : sum + weight[v]!), 0);
        }
        outside[e] = outside[e]! - weight[i]!;
      }
    }
    const kept: number[] = [];
    const beyond: number[] = [];
    const byHash = new Map<number, number[]>();
    for (const i of front) {
      buckets.remove(i, degree[i]!);
      let d = 0;
      let hash = 0;
      elements[i] = elements[i]!.filter((e) => {
        if (!inside[e]) return false;
        if (outside[e] === 0) inside[e] = undefined;
        if (!inside[e]) return false;
        d += outside[e]!;
        hash += e;
        return true;
      });
      near[i] = near[i]!.filter((v) => {
        if (gone[v] || frontMark[v] === mark) return false;
        d += weight[v]!;
        hash += v;
        return true;
      });
      if (d === 0) {
        // Touches nothing outside the front: it follows p at no cost.
        gone[i] = 1;
        frontWeight -= weight[i]!;
        place(i);
        continue;
      }
      elements[i]!.push(p);
      const same = byHash.get(hash) ?? [];
      const twin = same.find((v) => equal(near[v]!, near[i]!) && equal(elements[v]!, elements[i]!));
      if (twin === undefined) {
        byHash.set(hash, [...same, i]);
        kept.push(i);
        beyond.push(d);
      } else {
        gone[i] = 1;
        weight[twin] = weight[twin]! + weight[i]!;
        twins[twin]!.push(i);
      }
    }
    inside[p] = kept;
    kept.forEach((i, k) => {
      const rest = frontWeight - weight[i]!;
      degree[i] = Math.min(n - placed - weight[i]!, degree[i]! + rest, beyond[k]! + rest);
      buckets.add(i, degree[i]!);
    });
  }
  return order;
};

const equal = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((v, k) => v === b[k]);

/** Clusters by degree, last in first out, so that elimination stays where it is and fronts nest. */
const degreeBuckets = (n: number) => {
  const head = new Int32Array(n + 1).fill(-1);
  const next = new Int32Array(n);
  const previous = new Int32Array(n);
  let smallest = n;
  const remove = (v: number, d: number): void => {
    const before = previous[v]!;
    const after = next[v]!;
    if (before < 0) head[d] = after;
    else next[before] = after;
    if (after >= 0) previous[after] = before;
  };
  return {
    add: (v: number, d: number): void => {
      const first = head[d]!;
      next[v] = first;
      previous[v] = -1;
      if (first >= 0) previous[first] = v;
      head[d] = v;
      smallest = Math.min(smallest, d);
    },
    remove,
    takeSmallest: (): number => {
      while (head[smallest]! < 0) smallest++;
      const v = head[smallest]!;
      remove(v, smallest);
      return v;
    },
  };
};
