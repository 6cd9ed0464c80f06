import { type Issue, issue } from '../base/issue.ts';
import type { Release, Relief } from '../relief/result.ts';
import type { Truss } from '../truss/result.ts';
import { sharedClusters } from './holding.ts';
import type { WorkUnit } from './units.ts';

/** What is let go before anything is bent: without a saw, and by cuts that are due anyway. */
export interface ReliefFirst {
  readonly releases: readonly { readonly release: Release; readonly targets: readonly string[] }[];
  /** Cut member → tubes to be straightened that it lets go. */
  readonly cuts: ReadonlyMap<string, readonly string[]>;
  readonly issues: readonly Issue[];
}

const nothing: ReliefFirst = { releases: [], cuts: new Map(), issues: [] };

/**
 * For every tube to be bent back: the releases that need no saw, and the best cut among the tubes that are due to be
 * opened anyway. The plan never saws a sound tube of its own accord, and keeps early cuts apart at their clusters.
 *
 * @param undecided  hurt members without a decision: when cutting one would do more, that is said
 * Source: the order of the relief stage; one open tube at a cluster is common practice, no source.
 */
export const reliefFirst = (
  truss: Truss,
  relief: Relief,
  units: readonly WorkUnit[],
  undecided: ReadonlySet<string>,
): ReliefFirst => {
  const bent = units.filter((u) => u.bend);
  if (bent.length === 0 || relief.kind !== 'ranked') return nothing;
  const due = new Set(units.filter((u) => u.way === 'open' && u.kind === 'member').map((u) => u.id));
  const known = new Set(truss.members.map((m) => m.id));
  const releases = new Map<string, { release: Release; targets: string[] }>();
  const cuts = new Map<string, string[]>();
  const issues: Issue[] = [];
  for (const { id } of bent) {
    const target = relief.targets.find((t) => t.member === id);
    if (!target) continue;
    for (const release of target.withoutSaw) {
      // Moving a support changes how the truss is held: a person does that, with a new `held` record.
      if (release.kind === 'support' || (release.kind === 'bolted' && !known.has(release.id))) continue;
      // A bolted tube that is exchanged anyway comes out as a cut does, without the saw.
      if (release.kind === 'bolted' && due.has(release.id)) {
        cuts.set(release.id, [...(cuts.get(release.id) ?? []), id]);
        continue;
      }
      const key = `${release.kind}:${release.id}`;
      const entry = releases.get(key) ?? { release, targets: [] };
      entry.targets.push(id);
      releases.set(key, entry);
    }
    const stronger = target.candidates[0];
    if (stronger?.helps && stronger.cuts.some((c) => undecided.has(c)))
      issues.push(issue('plan-relief-not-decided', id, { target: id, cuts: stronger.cuts }, 'decide-it'));
    const useful = target.candidates.filter(
      (c) =>
        c.cuts.length === 1 && c.helps && c.verdict !== 'refused' && c.cuts[0] !== id && due.has(c.cuts[0]!),
    );
    const best = useful[0]?.cuts[0];
    if (best === undefined) continue;
    const apart = useful.find(
      ({ cuts: [cut] }) => cuts.has(cut!) || sharedClusters(truss, [...cuts.keys()], [cut!]).length === 0,
    );
    const cut = apart?.cuts[0];
    if (cut !== best)
      issues.push(
        issue(
          'relief-cut-would-open-two',
          id,
          { target: id, cut: best, instead: cut ?? null, open: [...cuts.keys()] },
          'cut-it-after-the-others-close',
        ),
      );
    if (cut !== undefined) cuts.set(cut, [...(cuts.get(cut) ?? []), id]);
  }
  return { releases: [...releases.values()], cuts, issues };
};
