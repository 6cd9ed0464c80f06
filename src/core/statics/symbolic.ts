import { type ClusterGraph, minimumDegree } from './ordering.ts';

/**
 * The fronts of a multifrontal factor, one for each run of clusters eliminated together.
 * A *position* is a cluster's place in the order of elimination; front f eliminates positions
 * `first[f] … first[f + 1])` and reaches the later positions `rows[rowStart[f] … rowStart[f + 1])`.
 */
export interface Fronts {
  readonly n: number;
  readonly count: number;
  /** Position of each cluster, and the cluster at each position. */
  readonly place: Int32Array;
  readonly cluster: Int32Array;
  readonly first: Int32Array;
  readonly rowStart: Int32Array;
  readonly rows: Int32Array;
  /** Where each of `rows` stands in the list (eliminated, then reached) of the parent front. */
  readonly inParent: Int32Array;
  /** Parent front, −1 at a root; children come before their parent. */
  readonly parent: Int32Array;
  /** Front that eliminates each position. */
  readonly frontOf: Int32Array;
}

/** Zeros that a merged front may store, as a share of its panel; measured on box trusses. */
const ZERO_SHARE = 0.2;
/** Fronts that eliminate no more clusters than this are merged whatever the zeros. */
const SMALL_FRONT = 2;

/**
 * Orders the clusters and works out which blocks of the factor are not zero; once for each structure.
 * Elimination tree and column structures as in Liu, "The role of elimination trees in sparse factorization",
 * SIAM J. Matrix Anal. Appl. 11 (1990) 134; relaxed supernodes as in Ashcraft & Grimes, ACM TOMS 15 (1989) 291.
 * Source: from memory.
 */
export const findFronts = (graph: ClusterGraph): Fronts => {
  const { n } = graph;
  const guess = minimumDegree(graph);
  const firstTree = eliminationTree(graph, inverse(guess), guess);
  const cluster = Int32Array.from(postorder(firstTree), (k) => guess[k]!);
  const place = inverse(cluster);
  const parent = eliminationTree(graph, place, cluster);
  const columns = columnStructures(graph, place, cluster, parent);

  // Runs of columns with one structure.
  const first: number[] = [];
  const reach: Int32Array[] = [];
  columns.forEach((rows, k) => {
    const last = reach.at(-1);
    if (last !== undefined && last[0] === k && last.length === rows.length + 1) reach.pop();
    else first.push(k);
    reach.push(rows);
  });
  // A front that stands right before its parent joins it when the two together store few zeros, old ones counted.
  const joined: { begin: number; rows: Int32Array; filled: number }[] = [];
  first.forEach((begin, f) => {
    const end = first[f + 1] ?? n;
    const rows = reach[f]!;
    let top = { begin, rows, filled: panelBlocks(end - begin, rows.length) };
    for (let below = joined.at(-1); below && below.rows[0] === top.begin; below = joined.at(-1)) {
      const size = panelBlocks(end - below.begin, rows.length);
      const filled = below.filled + top.filled;
      if (end - below.begin > SMALL_FRONT && size - filled > ZERO_SHARE * size) break;
      joined.pop();
      top = { begin: below.begin, rows, filled };
    }
    joined.push(top);
  });
  return linkFronts(
    n,
    place,
    cluster,
    joined.map((front) => front.begin),
    joined.map((front) => front.rows),
  );
};

/** Blocks of the lower triangle and the rows below it. */
const panelBlocks = (width: number, rows: number): number => (width * (width + 1)) / 2 + width * rows;

const inverse = (order: Int32Array): Int32Array => {
  const place = new Int32Array(order.length);
  order.forEach((c, k) => {
    place[c] = k;
  });
  return place;
};

const eliminationTree = (graph: ClusterGraph, place: Int32Array, cluster: Int32Array): Int32Array => {
  const { n, start, neighbour } = graph;
  const parent = new Int32Array(n).fill(-1);
  const ancestor = new Int32Array(n).fill(-1);
  for (let k = 0; k < n; k++) {
    const c = cluster[k]!;
    for (let at = start[c]!; at < start[c + 1]!; at++) {
      let i = place[neighbour[at]!]!;
      while (i >= 0 && i < k) {
        const up = ancestor[i]!;
        ancestor[i] = k;
        if (up < 0) parent[i] = k;
        i = up;
      }
    }
  }
  return parent;
};

/** Children before parents, subtrees together, in order of their number. */
const postorder = (parent: Int32Array): Int32Array => {
  const n = parent.length;
  const head = new Int32Array(n + 1).fill(-1);
  const next = new Int32Array(n);
  for (let k = n - 1; k >= 0; k--) {
    const p = parent[k]! < 0 ? n : parent[k]!;
    next[k] = head[p]!;
    head[p] = k;
  }
  const order = new Int32Array(n);
  let placed = 0;
  const stack = [n];
  while (stack.length > 0) {
    const top = stack[stack.length - 1]!;
    const child = head[top]!;
    if (child >= 0) {
      head[top] = next[child]!;
      stack.push(child);
    } else {
      stack.pop();
      if (top < n) order[placed++] = top;
    }
  }
  return order;
};

const columnStructures = (
  graph: ClusterGraph,
  place: Int32Array,
  cluster: Int32Array,
  parent: Int32Array,
): Int32Array[] => {
  const { n, start, neighbour } = graph;
  const columns: Int32Array[] = [];
  const children: number[][] = Array.from({ length: n }, () => []);
  const mark = new Int32Array(n).fill(-1);
  for (let k = 0; k < n; k++) {
    const rows: number[] = [];
    const take = (i: number): void => {
      if (i <= k || mark[i] === k) return;
      mark[i] = k;
      rows.push(i);
    };
    const c = cluster[k]!;
    for (let at = start[c]!; at < start[c + 1]!; at++) take(place[neighbour[at]!]!);
    for (const child of children[k]!) for (const i of columns[child]!) take(i);
    columns.push(Int32Array.from(rows).sort());
    if (parent[k]! >= 0) children[parent[k]!]!.push(k);
  }
  return columns;
};

const linkFronts = (
  n: number,
  place: Int32Array,
  cluster: Int32Array,
  starts: readonly number[],
  reach: readonly Int32Array[],
): Fronts => {
  const count = starts.length;
  const first = Int32Array.from([...starts, n]);
  const frontOf = new Int32Array(n);
  const rowStart = new Int32Array(count + 1);
  for (let f = 0; f < count; f++) {
    frontOf.fill(f, first[f]!, first[f + 1]!);
    rowStart[f + 1] = rowStart[f]! + reach[f]!.length;
  }
  const rows = new Int32Array(rowStart[count]!);
  const inParent = new Int32Array(rowStart[count]!);
  const parent = new Int32Array(count).fill(-1);
  for (let f = 0; f < count; f++) rows.set(reach[f]!, rowStart[f]!);
  for (let f = 0; f < count; f++) {
    if (rowStart[f] === rowStart[f + 1]) continue;
    const p = frontOf[rows[rowStart[f]!]!]!;
    parent[f] = p;
    const width = first[p + 1]! - first[p]!;
    let at = rowStart[p]!;
    for (let r = rowStart[f]!; r < rowStart[f + 1]!; r++) {
      const i = rows[r]!;
      if (i < first[p + 1]!) inParent[r] = i - first[p]!;
      else {
        while (rows[at]! < i) at++;
        inParent[r] = width + at - rowStart[p]!;
      }
    }
  }
  return { n, count, place, cluster, first, rowStart, rows, inParent, parent, frontOf };
};
