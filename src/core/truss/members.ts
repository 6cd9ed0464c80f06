import { type Issue, issue } from '../base/issue.ts';
import { distance } from '../base/vec3.ts';
import type { Model, Station, Tube } from '../job/modelSchema.ts';
import type { Ends } from './bracing.ts';
import { type Draft, draftsOf, type MemberRow } from './drafts.ts';
import { groupBy } from './groupBy.ts';
import type { ClusterPlace } from './names.ts';
import { type Position, positionOf } from './position.ts';
import type { Cluster, Member, Section } from './result.ts';
import { materialOf, roundSection, tubeOfSection } from './stock.ts';

/** Shorter than this two clusters are one point: no drawing gives less than a thousandth. */
const SHORTEST_IN = 0.001;

type Override = Model['tubes']['overrides'][number];
const holds = (o: Override, id: string, p: Position): boolean =>
  (o.bay === undefined || o.bay === p.bay) &&
  (o.station === undefined || o.station === p.station) &&
  (o.face === undefined || p.faces.includes(o.face)) &&
  (o.role === undefined || o.role === p.role) &&
  (o.member === undefined || o.member === id);

/** Section from the tube and material, with the member's own numbers above both; null when something is missing. */
const sectionOf = (tube: Tube | undefined, row: MemberRow | undefined, material: string): Section | null => {
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

/** Why a member could not be made, and where in the model that stands. */
interface Lack {
  readonly code: string;
  readonly at: string;
  readonly id: string;
  readonly facts: Issue['facts'];
  readonly mend: string;
}

const lackOf = (
  draft: Draft,
  p: Position,
  tube: Tube | undefined,
  tubeAt: string,
  material: string,
): Lack => {
  const { id, row, at } = draft;
  if (tube && !roundSection(tube)) {
    const facts = { odIn: tube.odIn, wallIn: tube.wallIn };
    return { code: 'wall-too-thick', at: tubeAt, id, facts, mend: 'correct-the-tube' };
  }
  if (!materialOf(material)) {
    const where = row?.material === undefined ? 'tubes.material' : `${at}.material`;
    return { code: 'unknown-material', at: where, id, facts: { material }, mend: 'name-a-material' };
  }
  return { code: 'no-tube', at: `tubes.roles.${p.role}`, id, facts: { role: p.role }, mend: 'give-a-tube' };
};

/** One issue a fault, with the members that are missing for it. */
const lackIssues = (lacks: readonly Lack[]): readonly Issue[] =>
  [...groupBy(lacks, (l) => JSON.stringify([l.code, l.at])).values()].map((group) => {
    const { code, at, facts, mend } = group[0]!;
    return issue(code, at, { ...facts, ids: group.map((l) => l.id) }, mend);
  });

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
  const lacks: Lack[] = [];
  const used = new Set<Override>();
  const members: Member[] = [];
  for (const draft of drafts.values()) {
    const { id, row } = draft;
    const [from, to] = draft.ends;
    const a = clusters.get(from)!;
    const b = clusters.get(to)!;
    const lengthIn = distance(a.at, b.at);
    if (!(lengthIn >= SHORTEST_IN)) {
      issues.push(issue('zero-length', draft.at, { id, from, to }, 'move-a-cluster'));
      continue;
    }
    const natural = positionOf(a, b, stations);
    const position = row?.role ? { ...natural, role: row.role } : natural;
    const last = model.tubes.overrides.findLastIndex((o) => holds(o, id, position));
    for (const o of model.tubes.overrides) if (holds(o, id, position)) used.add(o);
    const given = row?.tube ?? model.tubes.overrides[last]?.tube ?? model.tubes.roles[position.role];
    const base = last < 0 ? `tubes.roles.${position.role}` : `tubes.overrides[${last}].tube`;
    const tubeAt = row?.tube ? `${draft.at}.tube` : base;
    const material = row?.material ?? model.tubes.material;
    // A member given by its numbers alone is drawn as the round tube that has them.
    const tube = row?.section?.areaIn2 && row.section.inertiaIn4 && !row.tube ? undefined : given;
    const usable = tube === undefined || roundSection(tube) !== null;
    const section = usable ? sectionOf(tube, row, material) : null;
    if (!section) {
      lacks.push(lackOf(draft, position, tube, tubeAt, material));
      continue;
    }
    const free = row?.ends ?? (model.joints === 'pinned' ? (['ball', 'ball'] as const) : undefined);
    const [endFrom, endTo] = free ?? (['welded', 'welded'] as const);
    const guessed = [a, b].filter((c) => c.assumed).map((c) => c.id);
    members.push({
      ...(guessed.length > 0 ? { guessed } : {}),
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
  return { members, issues: [...issues, ...lackIssues(lacks)], odd: [...odd, ...idle] };
};
