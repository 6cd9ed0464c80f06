import type { RecordOf } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import { type Coverage, type State, states } from '../walkRound/result.ts';
import { findingsHere, type Here } from './findingsHere.ts';
import { once } from './judgement.ts';
import { optionsFor } from './options.ts';
import { limitChecks, limitIssues } from './ownLimits.ts';
import type { Decided, Disposition, DispositionGroup, DispositionRow, Option } from './result.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Undecided first, then the order of counts. */
const order: readonly State[] = ['undecided', ...states.filter((s) => s !== 'undecided')];
/** The states that a finding or a decision can give. */
const grouped = [
  'undecided',
  'straighten',
  'splitSleeve',
  'splice',
  'replace',
] as const satisfies readonly State[];

const decidedOf = (here: Here, options: readonly Option[]): Decided | undefined => {
  const { decision } = here;
  if (!decision) return undefined;
  const { answer } = options.find((o) => o.choice === decision.choice)!;
  return {
    record: decision.id,
    choice: decision.choice,
    answer,
    against: answer === 'doesNotApply',
    reasonNeeded: answer !== 'applies',
    reasonWritten: (decision.reason ?? '').trim() !== '',
  };
};

const rowOf = (here: Here, manual: Manual): DispositionRow => {
  const options = optionsFor(here, manual);
  const decided = decidedOf(here, options);
  const { mark, member, placed, scope, room } = here;
  return {
    id: mark.id,
    kind: mark.kind,
    state: mark.state,
    findings: placed.map((p) => p.finding.id),
    scope,
    options,
    missing: once(options.flatMap((o) => o.missing)),
    limits: member
      ? limitChecks(
          member,
          placed.map((p) => p.finding),
          manual,
        )
      : [],
    ...(room && { room }),
    ...(decided && { decided }),
  };
};

const groupsOf = (coverage: Coverage): readonly DispositionGroup[] =>
  grouped.map((state) => {
    const of = (kind: 'member' | 'cluster'): readonly string[] =>
      coverage.marks.filter((m) => m.kind === kind && m.state === state).map((m) => m.id);
    return { state, members: of('member'), clusters: of('cluster') };
  });

/**
 * For every member and cluster with a finding or a decision: what the general published rules and the user's own data
 * say to each way of repair, what is missing to say, and how the standing decision compares. Nothing is preselected.
 *
 * Manual topics read: `straighten-only[:ID]`, `round-out-only[:ID]`, `allow:CHOICE[:ID]`, `forbid:CHOICE[:ID]`,
 * `scope:ID`, `toe:MEMBER:CLUSTER`, `limit:bow|ovality|wallLoss|dentDepth[:ID]`.
 */
export const disposition = (truss: Truss, coverage: Coverage, manual: Manual): Disposition => ({
  rows: findingsHere(truss, coverage, manual)
    .map((here) => rowOf(here, manual))
    .sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state)),
  groups: groupsOf(coverage),
  issues: limitIssues(manual),
});
