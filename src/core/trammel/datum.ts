import { cross, length, sub, type Vec3 } from '../base/vec3.ts';
import type { Damage, Finding, RecordOf } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import type { MeasuringPlan } from './result.ts';

/** Damage that can go with a changed distance between clusters. */
const changesShape: ReadonlySet<Damage> = new Set(['bow', 'kink', 'break', 'other']);

/** Clusters taken as undamaged, and by which rule. */
export interface Datum {
  readonly clusters: ReadonlySet<string>;
  readonly by: MeasuringPlan['datumBy'];
}

/** Do the points span a plane: three at least, not in one line? */
export const spansPlane = (points: readonly Vec3[]): boolean => {
  const [a, ...rest] = points;
  if (!a) return false;
  const far = rest.reduce<Vec3>(
    (best, p) => (length(sub(p, a)) > length(best) ? sub(p, a) : best),
    [0, 0, 0],
  );
  return rest.some((p) => length(cross(far, sub(p, a))) > 0.05 * length(far) ** 2);
};

/**
 * Groups of sound clusters that tubes join, forward group first. A bay with a bent or broken tube joins nothing: what
 * lies behind it may have swung as one.
 */
const soundGroups = (truss: Truss, hurt: ReadonlySet<string>, bent: ReadonlySet<string>): string[][] => {
  const unsound = new Set(hurt);
  for (const m of truss.members)
    if (hurt.has(m.id)) {
      unsound.add(m.from);
      unsound.add(m.to);
    }
  const cut = new Set(truss.members.flatMap((m) => (m.bay !== undefined && bent.has(m.id) ? [m.bay] : [])));
  const next = new Map<string, string[]>();
  for (const m of truss.members) {
    if (unsound.has(m.from) || unsound.has(m.to) || (m.bay !== undefined && cut.has(m.bay))) continue;
    next.set(m.from, [...(next.get(m.from) ?? []), m.to]);
    next.set(m.to, [...(next.get(m.to) ?? []), m.from]);
  }
  const seen = new Set<string>();
  const groups: string[][] = [];
  for (const c of truss.clusters) {
    if (unsound.has(c.id) || seen.has(c.id)) continue;
    const group = [c.id];
    seen.add(c.id);
    for (const id of group)
      for (const to of next.get(id) ?? [])
        if (!seen.has(to)) {
          seen.add(to);
          group.push(to);
        }
    groups.push(group);
  }
  return groups;
};

/**
 * The undamaged zone to measure from: clusters the user names (manual record `datum`), else the largest group of
 * clusters joined by tubes, none of them with a finding on it or its tubes; if no group spans a plane, findings that leave lengths alone
 * (dent, crack, hole, oval, thinned) are passed over. A sound tail behind a hurt bay is a group of its own and no datum:
 * it may have swung as one.
 *
 * @param  counted  clusters read; all when left out. The largest group stays the datum while four read clusters of it span
 *   a plane, so that readings stand on the same zone as the plan they follow; else the group with most of them read.
 * Source: AC 43.13-1B 4-99 (measure between undistorted members); the choice of the largest group: common practice, no source.
 */
export const datumOf = (
  truss: Truss,
  findings: readonly Finding[],
  manual: readonly RecordOf<'manual'>[],
  counted?: ReadonlySet<string>,
): Datum => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const named = manual.findLast((m) => m.topic === 'datum' && m.words)?.words;
  const ids = (named ?? '').split(/[\s,;]+/).filter((id) => at.has(id));
  if (ids.length > 0) return { clusters: new Set(ids), by: 'named' };
  const bent = new Set(findings.filter((f) => changesShape.has(f.damage)).map((f) => f.of));
  const spans = (ids: readonly string[]): boolean => spansPlane(ids.map((id) => at.get(id)!));
  const firm = (ids: readonly string[]): boolean => ids.length >= 4 && spans(ids);
  for (const by of ['noFinding', 'noBend'] as const) {
    const hurt = by === 'noBend' ? bent : new Set(findings.map((f) => f.of));
    const groups = soundGroups(truss, hurt, bent);
    const read = (g: readonly string[]): string[] => g.filter((id) => counted?.has(id) ?? true);
    const most = (size: (g: string[]) => number): string[] =>
      groups.reduce<string[]>((b, g) => (size(g) > size(b) ? g : b), []);
    const largest = most((g) => g.length);
    const best = firm(read(largest)) ? largest : most((g) => read(g).length);
    const used = read(best);
    if (spans(used)) return { clusters: new Set(best), by };
  }
  return { clusters: new Set(), by: 'none' };
};
