import { figure } from '../base/figure.ts';
import { cross, dot, sub } from '../base/vec3.ts';
import { extentOf, joined } from '../disposition/extent.ts';
import type { Disposition, Scope } from '../disposition/result.ts';
import { scopeOf } from '../disposition/scope.ts';
import { weldToe } from '../disposition/weldToe.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';
import { clockFace } from '../truss/place.ts';
import type { Member, Truss } from '../truss/result.ts';
import { materialOf } from '../truss/stock.ts';
import { copesAt } from './copes.ts';
import type { CopeTube, Damage, Piece, PieceEnd } from './result.ts';

/** Around the tube: as taped, or from a caliper's chord. `2 R asin(w/2R)` */
const aroundOf = (widthIn: number | undefined, by: string | undefined, odIn: number): number | undefined =>
  widthIn === undefined || by !== 'across' ? widthIn : odIn * Math.asin(Math.min(1, widthIn / odIn));

const dentOf = (findings: readonly Finding[], odIn: number): Damage['dent'] => {
  const [f] = findings;
  if (findings.length !== 1 || !f || (f.damage !== 'dent' && f.damage !== 'hole')) return undefined;
  // a hole has no depth to hold against the limit
  const depthIn = f.damage === 'dent' ? f.depthIn : 0;
  const aroundIn = aroundOf(f.widthIn, f.damage === 'dent' ? f.widthBy : 'across', odIn);
  return {
    ...(depthIn === undefined ? {} : { depthIn }),
    ...(f.alongIn === undefined ? {} : { alongIn: f.alongIn }),
    ...(aroundIn === undefined ? {} : { aroundIn }),
  };
};

/** All findings of a member as one stretch to be cut out or covered; null when none has a place. */
export const damageOf = (member: Member, findings: readonly Finding[]): Damage | null => {
  const extents = findings.flatMap((f) => extentOf(member, f) ?? []);
  if (extents.length === 0) return null;
  const { fromIn, toIn, lengthKnown } = joined(extents);
  const clocks = new Set(findings.flatMap((f) => f.clock ?? []));
  const dent = dentOf(findings, member.section.odIn);
  return {
    fromIn,
    toIn,
    // a finding without a place may lie anywhere
    lengthKnown: lengthKnown && extents.length === findings.length,
    ...(clocks.size === 1 ? { clock: [...clocks][0]! } : {}),
    ...(dent ? { dent } : {}),
    cracked: findings.some((f) => f.damage === 'crack'),
    parted: findings.some((f) => f.damage === 'break'),
  };
};

/** What closes the weld here; empty where the user's own data opens it for this member. */
const scopeHere = (
  member: Member,
  disposition: Disposition | null,
  manual: readonly RecordOf<'manual'>[],
): readonly Scope[] => {
  const row = disposition?.rows.find((r) => r.kind === 'member' && r.id === member.id);
  const opened = row?.options.some(
    (o) => o.choice === row.decided?.choice && o.answer === 'applies' && o.reasons[0]?.rule === 'manual',
  );
  if (opened) return [];
  return row?.scope ?? scopeOf(member.id, [member], undefined, manual);
};

/** A member of the truss as a tube to be mended. */
export const pieceOf = (
  truss: Truss,
  member: Member,
  findings: readonly Finding[],
  disposition: Disposition | null,
  manual: readonly RecordOf<'manual'>[],
): Piece => {
  const at = (id: string) => truss.clusters.find((c) => c.id === id)!.at;
  const axis = [at(member.from), at(member.to)] as const;
  const { twelve, three } = clockFace(axis, member);
  const end = (cluster: string): PieceEnd => ({
    cluster,
    toeIn: weldToe(truss, member, cluster, manual),
    cope: copesAt(truss, member, cluster),
  });
  const { odIn, wallIn, densityLbIn3 } = member.section;
  return {
    id: member.id,
    tube: member.tube ?? { odIn, wallIn },
    material: member.material,
    densityLbIn3,
    lengthIn: member.lengthIn,
    ends: [end(member.from), end(member.to)],
    looks: dot(cross(twelve, three), sub(axis[1], axis[0])) > 0 ? 1 : -1,
    damage: damageOf(member, findings),
    scope: scopeHere(member, disposition, manual),
    ...(member.guessed ? { guessed: member.guessed } : {}),
  };
};

/** One tube on the bench, as it is typed in. */
export interface BenchTube {
  readonly tube: Tube;
  /** Left out: 4130, condition N, said as assumed. */
  readonly material?: string;
  readonly betweenClustersIn: number;
  readonly damageFromIn: number;
  readonly damageToIn: number;
  readonly clock?: number;
  /** Weld toe from each cluster point; left out: 0, the length was measured weld to weld. */
  readonly toesIn?: readonly [number, number];
  readonly dent?: NonNullable<Damage['dent']>;
  readonly cracked?: boolean;
  /** What each end meets, from `benchTube`; left out: not known. */
  readonly meets?: readonly [readonly CopeTube[], readonly CopeTube[]];
}

/**
 * One tube without a truss around it, for the same sums; its ends are called A (where lengths start) and B.
 *
 * Assumes: the length is measured weld to weld unless toes are given; nothing is known of what its ends meet.
 */
export const benchPiece = (bench: BenchTube): Piece => {
  const material = bench.material ?? '4130N';
  const known = materialOf(material);
  const end = (cluster: string, k: 0 | 1): PieceEnd => ({
    cluster,
    toeIn: bench.toesIn
      ? figure(bench.toesIn[k], 'in', { kind: 'measured', ref: 'bench' })
      : figure(0, 'in', { kind: 'assumed', ref: 'bench' }, ['length-measured-weld-to-weld']),
    cope: bench.meets?.[k] ?? [],
  });
  return {
    id: 'bench',
    tube: bench.tube,
    material,
    // density of steel for the weight alone; the weld choices are closed where the material is not known
    densityLbIn3: known?.densityLbIn3 ?? materialOf('4130N')!.densityLbIn3,
    lengthIn: bench.betweenClustersIn,
    ends: [end('A', 0), end('B', 1)],
    looks: 1,
    damage: {
      fromIn: bench.damageFromIn,
      toIn: bench.damageToIn,
      lengthKnown: true,
      ...(bench.clock === undefined ? {} : { clock: bench.clock }),
      dent: { alongIn: bench.damageToIn - bench.damageFromIn, ...bench.dent },
      cracked: bench.cracked ?? false,
      parted: false,
    },
    scope: known ? (/^ht\d/.test(material) ? ['heatTreated'] : []) : ['unknownMaterial'],
  };
};
