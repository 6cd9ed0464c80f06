import { type Issue, issue } from '../base/issue.ts';
import type { Model } from '../job/modelSchema.ts';
import type { Ends } from './bracing.ts';
import { type ClusterPlace, comparePlaces, sayMember } from './names.ts';

/** A member row of the model. */
export type MemberRow = Model['members'][number];

/** A member on its way: ends in order, with the model's own row for it when there is one. */
export interface Draft {
  readonly id: string;
  readonly ends: Ends;
  readonly row?: MemberRow;
  /** Path of its row in the model document; none for one that the pattern makes. */
  readonly at: string;
}

const inOrder = (ends: Ends, places: ReadonlyMap<string, ClusterPlace>): Ends => {
  const [a, b] = ends;
  return comparePlaces(places.get(a)!, places.get(b)!) <= 0 ? ends : [b, a];
};

/** Pattern members less the openings, then the model's own rows: they override by id, or add. */
export const draftsOf = (
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
    const unknown = (['from', 'to'] as const).filter((end) => !places.has(row[end]));
    for (const end of unknown)
      issues.push(
        issue('unknown-cluster', `${at}.${end}`, { cluster: row[end] }, 'name-a-cluster-of-the-model'),
      );
    if (unknown.length > 0) continue;
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
