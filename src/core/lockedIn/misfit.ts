import { type Issue, issue } from '../base/issue.ts';
import { add, cross, scale, sub, unit, type Vec3 } from '../base/vec3.ts';
import type { Finding } from '../job/jobSchema.ts';
import { type Axis, clockDirection, clockFace } from '../truss/place.ts';
import type { Member, Truss } from '../truss/result.ts';
import { type Bend, depthOverTube, halfSine, kinkAt } from './bend.ts';

type BendFinding = Extract<Finding, { damage: 'bow' | 'kink' }>;

/** What one bent member would be like if it were free: the start of every locked-in force. Plain data. */
export interface Misfit {
  readonly member: string;
  /** Finding records it rests on. */
  readonly findings: readonly string[];
  /** Chord lost against the tube's own length. */
  readonly shortIn: number;
  /** Depth over the whole tube, and where it is deepest, from the `from` cluster. */
  readonly depthIn: number;
  readonly atIn: number;
  /** One standard deviation of the depth, as entered. */
  readonly stdIn?: number;
  /** Free turn of each end, radians, aircraft axes, if it bent only between the clusters; zero when no clock was given. */
  readonly turnFrom: Vec3;
  readonly turnTo: Vec3;
  /** ∫y², in³. */
  readonly y2: number;
  /** ∫y dx and ∫y(1 − 2x/L) dx times the bow's turning axis, in². */
  readonly y0: Vec3;
  readonly y1: Vec3;
  /** Stable codes of what was assumed. */
  readonly assumed: readonly string[];
}

export interface Misfits {
  readonly misfits: readonly Misfit[];
  /** Members bent by a finding that gives no usable size. */
  readonly unmeasured: readonly string[];
  readonly issues: readonly Issue[];
}

const isBend = (f: Finding): f is BendFinding => f.damage === 'bow' || f.damage === 'kink';

/** Where the kink is, or null for a smooth bow. */
const kinkPlace = (
  f: BendFinding,
  at: number | null,
  length: number,
  assumed: Set<string>,
): number | null => {
  if (f.damage === 'bow' && f.shape === 'smooth') return null;
  const kinked = f.damage === 'kink' || f.shape === 'kinked';
  if (kinked) {
    if (at === null) assumed.add('kink-at-the-middle-no-place-given');
    return at ?? length / 2;
  }
  if (at === null || (at >= length / 3 && at <= (2 * length) / 3)) {
    assumed.add('half-sine-no-shape-given');
    return null;
  }
  assumed.add('kink-at-its-place-no-shape-given');
  return at;
};

interface OneBend {
  readonly bend: Bend;
  readonly depthIn: number;
  readonly atIn: number;
}

const readBend = (f: BendFinding, member: Member, assumed: Set<string>): OneBend | Issue | null => {
  if (f.depthIn === undefined || f.depthIn === 0) return null;
  const length = member.lengthIn;
  const at = !f.place
    ? null
    : f.place.from === member.to
      ? length - f.place.atIn
      : f.place.from === member.from
        ? f.place.atIn
        : null;
  const kink = kinkPlace(f, at, length, assumed);
  const least = member.section.odIn / 2;
  if (kink !== null && (kink < least || kink > length - least))
    return issue(
      'kink-at-cluster',
      f.id,
      { member: member.id, atIn: kink, lengthIn: length },
      'give-place-along-tube',
    );
  const gauge = f.chordIn ?? length;
  if (gauge <= 0 || gauge > length * 1.001)
    return issue(
      'chord-longer-than-tube',
      f.id,
      { member: member.id, chordIn: gauge, lengthIn: length },
      'give-chord-along-tube',
    );
  if (gauge < length)
    assumed.add(kink === null ? 'uniform-arc-beyond-the-chord' : 'straight-legs-beyond-the-chord');
  const depthIn = depthOverTube(f.depthIn, Math.min(gauge, length), length, kink);
  const leg = kink === null ? length / 2 : Math.min(kink, length - kink);
  if (depthIn > leg / 2)
    return issue(
      'bend-too-deep',
      f.id,
      { member: member.id, depthIn, lengthIn: length },
      'check-depth-of-bend',
    );
  const bend = kink === null ? halfSine(depthIn, length) : kinkAt(depthIn, length, kink);
  return { bend, depthIn, atIn: kink ?? length / 2 };
};

const zero: Vec3 = [0, 0, 0];

const memberMisfit = (
  member: Member,
  axis: Axis,
  found: readonly BendFinding[],
  issues: Issue[],
): Misfit | null => {
  const e = unit(sub(axis[1], axis[0]));
  const face = clockFace(axis, member);
  const assumed = new Set<string>();
  let rootShort = 0;
  let rootY2 = 0;
  let turnFrom = zero;
  let turnTo = zero;
  let y0 = zero;
  let y1 = zero;
  let deepest: OneBend | null = null;
  let depthIn = 0;
  let variance = 0;
  const used: string[] = [];
  for (const f of found) {
    const read = readBend(f, member, assumed);
    if (read === null) continue;
    if (!('bend' in read)) {
      issues.push(read);
      continue;
    }
    const { bend } = read;
    used.push(f.id);
    rootShort += Math.sqrt(bend.shortIn);
    rootY2 += Math.sqrt(bend.y2);
    depthIn += read.depthIn;
    variance += (f.stdIn ?? 0) ** 2;
    if (!deepest || read.depthIn > deepest.depthIn) deepest = read;
    if (f.clock === undefined) assumed.add('shortening-only-no-clock');
    const t = cross(e, clockDirection(face, f.clock ?? 12));
    if (f.clock !== undefined) {
      turnFrom = add(turnFrom, scale(t, bend.slopeFrom));
      turnTo = add(turnTo, scale(t, -bend.slopeTo));
    }
    y0 = add(y0, scale(t, bend.momentFrom + bend.momentTo));
    y1 = add(y1, scale(t, bend.momentFrom - bend.momentTo));
  }
  if (!deepest) return null;
  if (used.length > 1) assumed.add('several-bends-add-up');
  return {
    member: member.id,
    findings: used,
    shortIn: rootShort ** 2,
    depthIn,
    atIn: deepest.atIn,
    ...(variance > 0 ? { stdIn: Math.sqrt(variance) } : {}),
    turnFrom,
    turnTo,
    y2: rootY2 ** 2,
    y0,
    y1,
    assumed: [...assumed].sort(),
  };
};

/**
 * The misfits that the measured bows and kinks make, one for each bent member, in the truss's order.
 *
 * Several bends in one tube: the shortenings add as (Σ√δ)², the most they can make together; slopes add as vectors.
 * Without a clock position the bow's plane is unknown: shortening only.
 *
 * Assumes: the tube kept its arc length; the ends did not turn or turned with the bow (both readings are kept).
 * Source: methods section 3.
 */
export const misfits = (truss: Truss, findings: readonly Finding[]): Misfits => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const byMember = new Map<string, BendFinding[]>();
  for (const f of findings) if (isBend(f)) byMember.set(f.of, [...(byMember.get(f.of) ?? []), f]);
  const made: Misfit[] = [];
  const unmeasured: string[] = [];
  const issues: Issue[] = [];
  for (const member of truss.members) {
    const found = byMember.get(member.id);
    if (!found) continue;
    const misfit = memberMisfit(member, [at.get(member.from)!, at.get(member.to)!], found, issues);
    if (misfit) made.push(misfit);
    else unmeasured.push(member.id);
  }
  return { misfits: made, unmeasured, issues };
};
