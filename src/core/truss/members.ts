import { type Issue, issue } from '../base/issue.ts';
import { distance } from '../base/vec3.ts';
import type { Model, Station, Tube } from '../job/modelSchema.ts';
import type { Ends } from './bracing.ts';
import { type ClusterPlace, comparePlaces, sayMember } from './names.ts';
import { type Position, positionOf } from './position.ts';
import type { Cluster, Member, Section } from './result.ts';
import { materialOf, roundSection, tubeOfSection } from './stock.ts';

type Row = Model['members'][number];

/** A member on its way: ends in order, with the model's own row for it when there is one. */
interface Draft {
  readonly id: string;
  readonly ends: Ends;
  readonly row?: Row;
  /** Path in the model document. */
  readonly at: string;
}

const inOrder = (ends: Ends, places: ReadonlyMap<string, ClusterPlace>): Ends => {
  const [a, b] = ends;
  return comparePlaces(places.get(a)!, places.get(b)!) <= 0 ? ends : [b, a];
};

/** Pattern members less the openings, then the model's own rows: they override by id, or add. */
const draftsOf = (
  model: Model,
  pattern: readonly Ends[],
  places: ReadonlyMap<string, ClusterPlace>,
): { drafts: ReadonlyMap<string, Draft>; issues: readonly Issue[]; odd: readonly Issue[] } => {
  const issues: Issue[] = [];
  const odd: Issue[] = [];
  const drafts = new Map<string, Draft>();
  for (const ends of pattern) {
    const ordered = inOrder(ends, places);
    const id = sayMember(...ordered);
    drafts.set(id, { id, ends: ordered, at: '' });
  }
  for (const [k, id] of (model.omitted ?? []).entries())
    if (!drafts.delete(id))
      odd.push(issue('omitted-names-nothing', `omitted[${k}]`, { id }, 'name-a-pattern-member'));
  const given = new Set<string>();
  for (const [k, row] of model.members.entries()) {
    const at = `members[${k}]`;
    const unknown = [row.from, row.to].filter((id) => !places.has(id));
    if (unknown.length > 0) {
      issues.push(issue('unknown-cluster', at, { ids: unknown }, 'name-a-cluster'));
      continue;
    }
    const ends = inOrder([row.from, row.to], places);
    let id = row.id ?? sayMember(...ends);
    for (let nth = 2; row.id === undefined && given.has(id); nth++) id = sayMember(...ends, nth);
    if (given.has(id)) {
      issues.push(issue('duplicate-id', `${at}.id`, { id }, 'give-another-id'));
      continue;
    }
    given.add(id);
    drafts.set(id, { id, ends, row, at });
  }
  return { drafts, issues, odd };
};

type Override = Model['tubes']['overrides'][number];
const holds = (o: Override, id: string, p: Position): boolean =>
  (o.bay === undefined || o.bay === p.bay) &&
  (o.station === undefined || o.station === p.station) &&
  (o.face === undefined || p.faces.includes(o.face)) &&
  (o.role === undefined || o.role === p.role) &&
  (o.member === undefined || o.member === id);

/** Section from the tube and material, with the member's own numbers above both; null when something is missing. */
const sectionOf = (tube: Tube | undefined, row: Row | undefined, material: string): Section | null => {
  const own = row?.section;
  const geometry = tube && roundSection(tube);
  const known = materialOf(material);
  const areaIn2 = own?.areaIn2 ?? geometry?.areaIn2;
  const inertiaIn4 = own?.inertiaIn4 ?? geometry?.inertiaIn4;
  const elasticPsi = own?.elasticPsi ?? known?.elasticPsi;
  const shearPsi = own?.shearPsi ?? known?.shearPsi;
  const yieldPsi = own?.yieldPsi ?? known?.yieldPsi;
  const densityLbIn3 = own?.densityLbIn3 ?? known?.densityLbIn3;
  if (areaIn2 === undefined || inertiaIn4 === undefined) return null;
  if (elasticPsi === undefined || shearPsi === undefined) return null;
  if (yieldPsi === undefined || densityLbIn3 === undefined) return null;
  const { odIn, wallIn } = tube ?? tubeOfSection(areaIn2, inertiaIn4);
  const torsionIn4 = own?.torsionIn4 ?? 2 * inertiaIn4;
  return {
    ...{ odIn, wallIn, areaIn2, inertiaIn4, torsionIn4 },
    ...{ elasticPsi, shearPsi, yieldPsi, densityLbIn3 },
  };
};

const sectionIssue = (draft: Draft, p: Position, tube: Tube | undefined, material: string): Issue => {
  const at = draft.at || `tubes.roles.${p.role}`;
  if (tube && !roundSection(tube))
    return issue(
      'wall-too-thick',
      at,
      { id: draft.id, odIn: tube.odIn, wallIn: tube.wallIn },
      'correct-the-tube',
    );
  if (!materialOf(material))
    return issue('unknown-material', at, { id: draft.id, material }, 'name-a-material');
  return issue('no-tube', at, { id: draft.id, role: p.role }, 'give-a-tube');
};

/** Tubes between clusters with size, section and place; what cannot be made is left out and listed. Unsorted. */
export const membersOf = (
  model: Model,
  pattern: readonly Ends[],
  clusters: ReadonlyMap<string, Cluster>,
  places: ReadonlyMap<string, ClusterPlace>,
  stations: readonly Station[],
): { members: readonly Member[]; issues: readonly Issue[]; odd: readonly Issue[] } => {
  const { drafts, issues: early, odd } = draftsOf(model, pattern, places);
  const issues = [...early];
  const used = new Set<Override>();
  const members: Member[] = [];
  for (const draft of drafts.values()) {
    const { id, row } = draft;
    const [from, to] = draft.ends;
    const a = clusters.get(from)!;
    const b = clusters.get(to)!;
    const lengthIn = distance(a.at, b.at);
    if (!(lengthIn > 0)) {
      issues.push(issue('zero-length', draft.at, { id, from, to }, 'move-a-cluster'));
      continue;
    }
    const natural = positionOf(a, b, places.get(from)!.alongIn, stations);
    const position = row?.role ? { ...natural, role: row.role } : natural;
    const overrides = model.tubes.overrides.filter((o) => holds(o, id, position));
    for (const o of overrides) used.add(o);
    const given = row?.tube ?? overrides.at(-1)?.tube ?? model.tubes.roles[position.role];
    const material = row?.material ?? model.tubes.material;
    // A member given by its numbers alone is drawn as the round tube that has them.
    const tube = row?.section?.areaIn2 && row.section.inertiaIn4 && !row.tube ? undefined : given;
    const usable = tube === undefined || roundSection(tube) !== null;
    const section = usable ? sectionOf(tube, row, material) : null;
    if (!section) {
      issues.push(sectionIssue(draft, position, tube, material));
      continue;
    }
    const free = row?.ends ?? (model.joints === 'pinned' ? (['ball', 'ball'] as const) : undefined);
    const [endFrom, endTo] = free ?? (['welded', 'welded'] as const);
    members.push({
      ...{ id, from, to, ...position, lengthIn, ...(tube ? { tube } : {}), material, section },
      ends: row && row.from !== from ? [endTo, endFrom] : [endFrom, endTo],
      fixity: row?.fixity ?? 1,
      bolted: row?.bolted ?? false,
      near: row?.near ?? [],
      ...(row?.shopNumber === undefined ? {} : { shopNumber: row.shopNumber }),
    });
  }
  const idle = [...model.tubes.overrides.entries()].flatMap(([k, o]) =>
    used.has(o)
      ? []
      : [issue('override-names-nothing', `tubes.overrides[${k}]`, {}, 'name-members-or-take-out')],
  );
  return { members, issues, odd: [...odd, ...idle] };
};
