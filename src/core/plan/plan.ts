import { type Issue, issue } from '../base/issue.ts';
import type { Disposition } from '../disposition/result.ts';
import { atRecord } from '../job/corrections.ts';
import type { Reading, RecordOf } from '../job/jobSchema.ts';
import { byStamp } from '../job/stampOrder.ts';
import type { LockedIn } from '../lockedIn/result.ts';
import type { Relief } from '../relief/result.ts';
import type { Splices } from '../splice/result.ts';
import type { Frame } from '../statics/frame.ts';
import type { HeldNow } from '../statics/held.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Straighten } from '../straighten/result.ts';
import { openTubes } from '../trammel/openTubes.ts';
import type { HoldPoint, Trammel } from '../trammel/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { chosenDesign } from './chosen.ts';
import { doneOf, laidAgain, stepDone } from './done.ts';
import type { Draft } from './draft.ts';
import { digestOf, frozenNow } from './frozen.ts';
import { gatesOf } from './gates.ts';
import { gatesAt } from './gatesAt.ts';
import { handOverOf } from './handOver.ts';
import { sharedClusters } from './holding.ts';
import { kindRows } from './kinds.ts';
import { ordered } from './ownOrder.ts';
import type { NotPlanned, Plan, Step } from './result.ts';
import { isHeld, sagLimit, solverOf } from './state.ts';
import { workUnits } from './units.ts';
import { workedOrder } from './worked.ts';

type Manual = readonly RecordOf<'manual'>[];
type Progress = readonly RecordOf<'progress'>[];
type Photos = readonly RecordOf<'photo'>[];

/** Tubes open that no decided repair opens: the plan works round them. */
export const strayOpen = (coverage: Coverage, truss: Truss, progress: Progress): readonly string[] => {
  const opened = new Set(workUnits(truss, coverage).flatMap((u) => u.opens));
  const known = new Set(truss.members.map((m) => m.id));
  return openTubes(progress).members.filter((id) => known.has(id) && !opened.has(id));
};

/**
 * The order of work: every step with what it needs, its hold points, tools, materials and cautions, and every state on the
 * way solved.
 *
 * Manual topics read: `limit:sag`, `plan-order`, `plan-frozen`, `splice-method:MEMBER`. Progress records carry step ids,
 * and gate ids (`H4:U3R-U4R`; opened by name with the reason in `opened`).
 *
 * @param holds  the trammel's hold points, with what they ask for
 * @param splices  null (and `disposition`, `straighten` likewise): not worked, materials are then only named
 * Assumes: see `state.ts`. On a truss that moves freely nothing is opened or bent, and that is said.
 * Source: rows of `rules.ts`; order of steps common practice, no source.
 */
export const plan = (
  truss: Truss,
  support: HeldNow,
  frame: Frame | MovesFreely,
  coverage: Coverage,
  trammel: Trammel,
  holds: readonly HoldPoint[],
  locked: LockedIn,
  relief: Relief,
  disposition: Disposition | null,
  straighten: Straighten | null,
  splices: Splices | null,
  readings: readonly Reading[],
  progress: Progress,
  photos: Photos,
  manual: Manual,
): Plan => {
  const sagLimitIn = sagLimit(manual);
  const units = workUnits(truss, coverage);
  const stray = strayOpen(coverage, truss, progress);
  const base = { sagLimitIn, order: { kind: 'worked' } as const };
  const beside = (id: string): readonly string[] => {
    const opens = units.find((u) => u.id === id)?.opens ?? [];
    const { members } = openTubes(progress);
    const shared = new Set(sharedClusters(truss, members, opens));
    return truss.members
      .filter(
        (m) => members.includes(m.id) && !opens.includes(m.id) && (shared.has(m.from) || shared.has(m.to)),
      )
      .map((m) => m.id);
  };
  const notWorked = coverage.marks.flatMap((m): NotPlanned[] =>
    m.state === 'undecided'
      ? [{ id: m.id, why: m.choice === 'refer' ? 'refer' : 'undecided', clusters: [] }]
      : m.kind === 'cluster' && (m.choice === 'straighten' || m.choice === 'roundOut')
        ? [{ id: m.id, why: 'clusterNotBent', clusters: [] }]
        : [],
  );
  const nothing = (clusters: readonly string[], why: Issue): Plan => ({
    ...base,
    steps: [],
    gates: [],
    notPlanned: [...notWorked, ...units.map((u): NotPlanned => ({ id: u.id, why: 'movesFreely', clusters }))],
    digest: digestOf([]),
    handOver: handOverOf([], [], progress, readings, support),
    issues: units.length > 0 ? [why] : [],
  });
  if (!isFrame(frame)) {
    const clusters = frame.clusters.slice(0, 3).map((c) => c.id);
    return nothing(
      clusters,
      issue('plan-moves-freely', 'model', { clusters }, 'hold-or-brace-these-clusters'),
    );
  }
  const solver = solverOf(truss, support, frame, locked.misfits, sagLimitIn);
  if (stray.length > 0 && !isHeld(solver.solve(stray, []))) {
    const { clusters } = solver.solve(stray, []);
    return nothing(
      clusters,
      issue('plan-open-now-not-held', 'held', { open: stray, clusters }, 'hold-or-brace-these-clusters'),
    );
  }
  const worked = workedOrder(
    solver,
    support,
    relief,
    units,
    stray,
    new Set(notWorked.map((n) => n.id)),
    (id) => chosenDesign(splices, manual, id),
  );
  const inOrder = ordered(worked.steps, solver, support, stray, manual);
  const drafts = inOrder.steps;
  const frozen = frozenNow(drafts, manual);
  const asFound = readings
    .filter((r) => r.hold === 'beforeCutting')
    .toSorted(byStamp)
    .at(-1);
  const layOuts = drafts.filter((d) => d.kind === 'layOut').map((d) => d.id);
  const again = (asFound ? laidAgain(progress, layOuts, asFound.at) : []).map((id) =>
    id.slice('layOut:'.length),
  );
  const { gates, issues: early } = gatesOf(drafts, {
    coverage,
    trammel,
    holds,
    disposition,
    support,
    progress,
    photos,
    frozen,
    laidAgain: again,
    openBeside: beside,
  });
  const steps = drafts.map((d): Step => {
    const at = gatesAt(d, drafts);
    const solved = inOrder.walk.states.get(d.id);
    const done = stepDone(progress, d);
    const { tools, cautions } = kindRows[d.kind];
    return {
      ...d,
      gatesBefore: at.before,
      gatesAfter: at.after,
      tools,
      cautions,
      ...(solved && { solved }),
      ...(done && { done }),
    };
  });
  const stopped = (straighten?.members ?? []).filter(
    (r) => r.says === 'stop' && units.some((u) => u.id === r.member && u.bend),
  );
  const issues: readonly Issue[] = [
    ...worked.issues,
    ...inOrder.issues,
    ...early,
    ...stopped.map((r) =>
      issue(
        'plan-straightening-stopped',
        r.member,
        { id: r.member, why: r.stops.map((s) => s.why) },
        'decide-again',
      ),
    ),
    ...(again.length > 0
      ? [issue('plan-marks-laid-again', 'trammel', { bays: again }, 'take-the-baseline-again')]
      : []),
    ...stray.map((id) => issue('plan-stray-open', id, { id }, 'decide-it')),
    ...tooSoon(drafts, progress),
    ...(support.ranked || units.length === 0
      ? []
      : [issue('plan-sag-not-judged', 'held', { heldAs: support.heldAs }, 'say-how-held')]),
  ];
  return {
    ...base,
    order: inOrder.order,
    steps,
    gates,
    notPlanned: [...notWorked, ...worked.notPlanned],
    digest: digestOf(drafts),
    ...(frozen && { frozen }),
    handOver: handOverOf(drafts, gates, progress, readings, support),
    issues,
  };
};

/** Steps ticked before a step they need, once each: the first of each. */
const tooSoon = (steps: readonly Draft[], progress: Progress): readonly Issue[] =>
  steps.flatMap((s) => {
    const done = doneOf(progress, s.id);
    if (!done || s.kind !== 'cut') return [];
    const missing = s.needs.filter((n) => !doneOf(progress, n.step)).map((n) => n.step);
    return missing.length > 0
      ? [
          issue(
            'plan-cut-before-its-needs',
            atRecord(done.record),
            { step: s.id, missing },
            'do-them-or-write-why',
          ),
        ]
      : [];
  });
