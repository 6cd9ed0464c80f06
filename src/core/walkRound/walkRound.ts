import type { Choice, Decision, Finding, Look, RecordOf } from '../job/jobSchema.ts';
import { latestOf } from '../job/stampOrder.ts';
import { groupBy } from '../truss/groupBy.ts';
import type { Truss } from '../truss/result.ts';
import { checkAgainstTruss } from './checkAgainstTruss.ts';
import {
  type Clash,
  type Counts,
  type Coverage,
  type Mark,
  type State,
  states,
  type TwinAsk,
  type Zone,
} from './result.ts';

type Area = RecordOf<'area'>;

/** The state a decision shows as. Referred to the manufacturer is still undecided here. Source: shapes of this product. */
export const stateOfChoice = {
  straighten: 'straighten',
  roundOut: 'straighten',
  patch: 'splitSleeve',
  splitSleeve: 'splitSleeve',
  splice: 'splice',
  replace: 'replace',
  fingerPlate: 'replace',
  rebuild: 'replace',
  refer: 'undecided',
} as const satisfies Record<Choice, State>;

const stateOf = (decision?: Decision, findings: readonly Finding[] = [], look?: Look): State => {
  if (decision) return stateOfChoice[decision.choice];
  if (findings.length > 0) return 'undecided';
  return look?.state ?? 'notLookedAt';
};

const count = (marks: readonly Mark[]): Counts => {
  const counts = Object.fromEntries(states.map((state) => [state, 0])) as Record<State, number>;
  for (const { state } of marks) counts[state] += 1;
  return counts;
};

const idsNotLookedAt = (marks: readonly Mark[]): readonly string[] =>
  marks.filter((m) => m.state === 'notLookedAt').map((m) => m.id);

/** Latest word on access: the face's own or the whole bay's, whichever was said last. */
const accessOf = (areas: readonly Area[], bay: string, face: string): Zone['access'] =>
  latestOf(areas.filter((a) => a.bay === bay && (a.face === undefined || a.face === face)))?.access;

const saysBothHurt = (areas: readonly Area[], bay: string): boolean =>
  latestOf(areas.filter((a) => a.bay === bay && a.bothSidesHurt !== undefined))?.bothSidesHurt ?? false;

/** The first twins of each bay or ring that both have findings, unless a person has said that both sides are hurt. */
const twinAsks = (
  truss: Truss,
  hurt: ReadonlyMap<string, readonly Finding[]>,
  areas: readonly Area[],
): readonly TwinAsk[] => {
  const pairs = truss.pairs.filter(({ left, right }) => hurt.has(left) && hurt.has(right));
  if (pairs.length === 0) return [];
  const bayOf = new Map([
    ...truss.members.map((m) => [m.id, m.bay ?? m.station] as const),
    ...truss.clusters.map((c) => [c.id, c.station] as const),
  ]);
  const asks = new Map<string, TwinAsk>();
  for (const { left, right } of pairs) {
    const bay = bayOf.get(left);
    if (bay === undefined || asks.has(bay)) continue;
    if (!saysBothHurt(areas, bay)) asks.set(bay, { bay, left, right });
  }
  return [...asks.values()];
};

/**
 * What has been looked at, what was found, what was decided, and what nobody has looked at yet, for every member and
 * cluster. The state shown is the decision's, else *undecided* where a finding stands, else what the latest look says,
 * else *not looked at*. A finding counts as looked at. Of several standing looks or decisions the latest shows.
 */
export const walkRound = (
  truss: Truss,
  looks: readonly Look[],
  findings: readonly Finding[],
  decisions: readonly Decision[],
  areas: readonly Area[],
  clashes: readonly Clash[],
): Coverage => {
  const looksBy = groupBy(looks, (r) => r.of);
  const findingsBy = groupBy(findings, (r) => r.of);
  const decisionsBy = groupBy(decisions, (r) => r.of);
  const mark = (kind: Mark['kind'], id: string): Mark => {
    const decision = latestOf(decisionsBy.get(id) ?? []);
    const found = findingsBy.get(id) ?? [];
    const look = latestOf(looksBy.get(id) ?? []);
    return {
      id,
      kind,
      state: stateOf(decision, found, look),
      findings: found.map((f) => f.id),
      damage: [...new Set(found.map((f) => f.damage))],
      ...(decision && { choice: decision.choice }),
      ...(look && { look: look.id }),
      finishRemoved: look?.state === 'lookedAt' && look.finishRemoved,
    };
  };
  const members = truss.members.map((m) => mark('member', m.id));
  const clusters = truss.clusters.map((c) => mark('cluster', c.id));
  const unseen = new Set(idsNotLookedAt(members));
  const zones = truss.faces.map((face) => {
    const access = accessOf(areas, face.bay, face.face);
    const notLookedAt = face.members.filter((id) => unseen.has(id));
    return { id: face.id, members: face.members, notLookedAt, ...(access && { access }) };
  });
  return {
    marks: [...members, ...clusters],
    members: count(members),
    clusters: count(clusters),
    notLookedAt: { members: [...unseen], clusters: idsNotLookedAt(clusters) },
    zones,
    findings,
    looks,
    decisions,
    clashes,
    twins: twinAsks(truss, findingsBy, areas),
    issues: checkAgainstTruss({ looks, findings, decisions, areas }, truss),
  };
};
