import { type Issue, issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { Truss } from '../truss/result.ts';
import { assemble, type BlockMatrix, multiplyBlocks } from './assemble.ts';
import { backsolve } from './backsolve.ts';
import { symmetricEigen } from './dense.ts';
import { frameMember, holdsTurning } from './element.ts';
import { type Factor, factorize } from './factor.ts';
import type { Frame, FrameMember } from './frame.ts';
import { freeShape } from './freeShape.ts';
import type { HeldNow } from './held.ts';
import type { ClusterMove } from './result.ts';
import { selectedInverse } from './selectedInverse.ts';
import { findFronts } from './symbolic.ts';

/** The truss on these supports is a mechanism: the clusters that move, most first. */
export interface MovesFreely {
  readonly kind: 'movesFreely';
  readonly heldAs: string;
  readonly clusters: readonly ClusterMove[];
  readonly issues: readonly Issue[];
}

/** Did the frame stand? */
export const isFrame = (answer: Frame | MovesFreely): answer is Frame => 'solve' in answer;

/**
 * The truss as a factored frame on its supports, or the way it moves freely.
 * Members between one point and itself are left out (the truss lists them as odd). Clusters without a member and
 * turnings that no tube holds are taken out, not called a mechanism. Braces take tension and compression only.
 * Source: McGuire, Gallagher & Ziemian, Matrix Structural Analysis, ch. 4–5.
 */
export const prepareFrame = (truss: Truss, support: HeldNow): Frame | MovesFreely => {
  const clusters = truss.clusters.map((c) => c.id);
  const clusterIndex = new Map(clusters.map((id, k) => [id, k]));
  const members = frameMembers(truss, support, clusterIndex);
  const n = clusters.length;
  const k = assemble(n, members);
  const held = heldFreedoms(n, support, clusterIndex);
  const loose = takeOutLoose(n, members, k, held);
  const factored = factorize(withLooseHeld(k, loose), findFronts(k), held);
  if (factored.kind === 'singular') {
    const moving = freeShape(truss, withLooseHeld(k, loose), held);
    return {
      kind: 'movesFreely',
      heldAs: support.heldAs,
      clusters: moving,
      issues: [
        issue(
          'moves-freely',
          'model',
          { heldAs: support.heldAs, clusters: moving.slice(0, 6).map((c) => c.id) },
          'hold-or-brace-these-clusters',
        ),
      ],
    };
  }
  return {
    heldAs: support.heldAs,
    clusters,
    members,
    memberIndex: new Map(members.map((m, index) => [m.id, index])),
    clusterIndex,
    held,
    loose,
    ...answers(factored.factor, k, held, members),
  };
};

const frameMembers = (truss: Truss, support: HeldNow, index: ReadonlyMap<string, number>): FrameMember[] => {
  return [...truss.members, ...support.braces].flatMap((m) => {
    const i = index.get(m.from);
    const j = index.get(m.to);
    if (i === undefined || j === undefined) return [];
    const a = truss.clusters[i]!.at;
    const b = truss.clusters[j]!.at;
    if (i === j || (a[0] === b[0] && a[1] === b[1] && a[2] === b[2])) return [];
    return [frameMember(m, i, j, a, b, support.joints)];
  });
};

const freedomOf = { x: 0, y: 1, z: 2, rx: 3, ry: 4, rz: 5 } as const;

const heldFreedoms = (n: number, support: HeldNow, index: ReadonlyMap<string, number>): Uint8Array => {
  const held = new Uint8Array(6 * n);
  for (const { cluster, fixed } of support.held) {
    const c = index.get(cluster);
    if (c !== undefined) for (const f of fixed) held[6 * c + freedomOf[f]] = 1;
  }
  return held;
};

/** A turning this far below the cluster's stiffest is held by no tube. */
const LOOSE_SHARE = 1e-11;

/** Marks what no tube holds in `held`; gives the turnings about skew axes, which no single freedom describes. */
const takeOutLoose = (
  n: number,
  members: readonly FrameMember[],
  k: BlockMatrix,
  held: Uint8Array,
): { cluster: number; axis: Vec3 }[] => {
  const touched = new Uint8Array(n);
  const full = new Uint8Array(n);
  for (const m of members) {
    for (const [end, c] of [
      ['i', m.i],
      ['j', m.j],
    ] as const) {
      touched[c] = 1;
      if (m.stiffness[1]! > 0 && holdsTurning(m, end)) full[c] = 1;
    }
  }
  const loose: { cluster: number; axis: Vec3 }[] = [];
  for (let c = 0; c < n; c++) {
    if (full[c]) continue;
    if (!touched[c]) held.fill(1, 6 * c, 6 * c + 6);
    const free = [3, 4, 5].filter((d) => !held[6 * c + d]);
    if (free.length === 0) continue;
    const block = free.map((r) => free.map((s) => k.diagonal[36 * c + 6 * r + s]!));
    const scale = Math.max(...block.map((row, r) => row[r]!));
    if (scale === 0) {
      for (const d of free) held[6 * c + d] = 1;
      continue;
    }
    const { values, vectors } = symmetricEigen(block);
    values.forEach((value, v) => {
      if (value > LOOSE_SHARE * scale) return;
      const axis: [number, number, number] = [0, 0, 0];
      free.forEach((d, at) => {
        axis[d - 3] = vectors[v]![at]!;
      });
      loose.push({ cluster: c, axis });
    });
  }
  return loose;
};

/** A turning that nothing holds is uncoupled, so any stiffness about its axis keeps it at 0 and changes nothing else. */
const withLooseHeld = (k: BlockMatrix, loose: Frame['loose']): BlockMatrix => {
  if (loose.length === 0) return k;
  const diagonal = k.diagonal.slice();
  for (const { cluster, axis } of loose) {
    const at = 36 * cluster;
    const size = Math.max(diagonal[at + 21]!, diagonal[at + 28]!, diagonal[at + 35]!);
    for (let r = 0; r < 3; r++)
      for (let s = 0; s < 3; s++) diagonal[at + 6 * (r + 3) + s + 3]! += size * axis[r]! * axis[s]!;
  }
  return { ...k, diagonal };
};

/** A relative residual above this is worth a step of refinement; the target is 1e-10 (methods, Targets). */
const REFINE_ABOVE = 1e-12;

/** Puts f − K u in the place of K u, 0 at held freedoms; gives the largest ‖f − K u‖ / ‖f‖ of the columns. */
const restOf = (f: Float64Array, carried: Float64Array, held: Uint8Array): number => {
  let worst = 0;
  for (let base = 0; base < f.length; base += held.length) {
    let [rest, all] = [0, 0];
    for (let d = 0; d < held.length; d++) {
      const load = f[base + d]!;
      const r = held[d] ? 0 : load - carried[base + d]!;
      carried[base + d] = r;
      rest += r * r;
      all += load * load;
    }
    if (rest > 0) worst = Math.max(worst, all > 0 ? Math.sqrt(rest / all) : 1);
  }
  return worst;
};

/** What a factored frame can be asked. K⁻¹ on its pattern is worked out at the first question that needs it. */
const answers = (factor: Factor, k: BlockMatrix, held: Uint8Array, members: readonly FrameMember[]) => {
  const size = 6 * k.n;
  const freed = (x: Float64Array): Float64Array => {
    const out = new Float64Array(x.length);
    for (let base = 0; base < x.length; base += size)
      for (let d = 0; d < size; d++) if (!held[d]) out[base + d] = x[base + d]!;
    return out;
  };
  const solve: Frame['solve'] = (loads, columns = 1) => {
    const f = freed(loads);
    const u = backsolve(factor, f, columns);
    const r = multiplyBlocks(k, u, columns);
    const off = restOf(f, r, held);
    if (off <= REFINE_ABOVE) return u;
    const du = backsolve(factor, r, columns);
    for (let at = 0; at < u.length; at++) u[at]! += du[at]!;
    return u;
  };
  let known: ReturnType<typeof selectedInverse> | undefined;
  const inverse = () => {
    known ??= selectedInverse(factor, k, held);
    return known;
  };
  return {
    solve,
    multiply: (moves: Float64Array) => multiplyBlocks(k, moves),
    endsInverse: (index: number): Float64Array => {
      const { diagonal, across } = inverse();
      const m = members[index]!;
      let at = k.start[m.i]!;
      while (k.neighbour[at] !== m.j) at++;
      const block = 36 * k.pair[at]!;
      const [rs, cs] = m.i < m.j ? [6, 1] : [1, 6];
      const out = new Float64Array(144);
      for (let r = 0; r < 6; r++)
        for (let s = 0; s < 6; s++) {
          const v = across[block + rs * r + cs * s]!;
          out[12 * r + s] = diagonal[36 * m.i + 6 * r + s]!;
          out[12 * (r + 6) + s + 6] = diagonal[36 * m.j + 6 * r + s]!;
          out[12 * r + s + 6] = v;
          out[12 * (s + 6) + r] = v;
        }
      return out;
    },
    get condition(): number {
      let stiffest = 0;
      let softest = 0;
      for (let at = 0; at < size; at++) {
        if (held[at]) continue;
        const d = 36 * Math.floor(at / 6) + 7 * (at % 6);
        stiffest = Math.max(stiffest, k.diagonal[d]!);
        softest = Math.max(softest, inverse().diagonal[d]!);
      }
      return stiffest * softest;
    },
  };
};
