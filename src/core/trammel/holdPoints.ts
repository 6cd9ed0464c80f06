import { type Issue, issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import {
  type Damage,
  type Decision,
  type Finding,
  type Hold,
  holds,
  type RecordOf,
} from '../job/jobSchema.ts';
import type { Frame } from '../statics/frame.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';
import { aimAt } from './aim.ts';
import { lengthens, openFrame, pushApart } from './flexibility.ts';
import { fitUpOf, gateOf, mayBeDone } from './gate.ts';
import { openTubes } from './openTubes.ts';
import type { Planned } from './plan.ts';
import type { AskedReading, HoldPoint, Target, Trammel } from './result.ts';

/**
 * A hold between baseline and as-left normally asks for 4 to 8 readings: the own length of every tube opened, which no
 * movement from opening them can leave as it was, and beside them two at least of what else moves most. More than six
 * tubes opened at once ask for more. Common practice, no source.
 */
const MOST = 8;
const BESIDE = 2;

const cutOut: ReadonlySet<Decision['choice']> = new Set([
  'splitSleeve',
  'splice',
  'replace',
  'fingerPlate',
  'rebuild',
]);
const bends: ReadonlySet<Damage> = new Set(['bow', 'kink', 'break']);

const some = (ids: readonly string[]): readonly string[] | string => (ids.length > 0 ? ids : 'none');

/** Tubes the work is about: those open; else those decided to be cut; else those bent or broken. */
const concerned = (
  truss: Truss,
  open: readonly string[],
  findings: readonly Finding[],
  decisions: readonly Decision[],
): readonly string[] => {
  const known = new Set(truss.members.map((m) => m.id));
  const lists = [
    open,
    decisions.filter((d) => cutOut.has(d.choice)).map((d) => d.of),
    findings.filter((f) => bends.has(f.damage)).map((f) => f.of),
  ].map((list) => [...new Set(list)].filter((id) => known.has(id)).sort());
  return lists.find((list) => list.length > 0) ?? [];
};

/** Distances that can have moved, most first: the tubes' own and others. */
interface Moving {
  readonly own: readonly Target[];
  readonly beside: readonly Target[];
}

/**
 * The distances that opening these tubes can have moved, most first: for each tube a push between its ends on the frame
 * without it, and how much every distance changes with its opening. Without a frame: the distances that touch its ends.
 */
const canMove = (
  truss: Truss,
  targets: readonly Target[],
  frame: Frame | undefined,
  open: readonly string[],
  tubes: readonly string[],
): Moving => {
  const places = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const at = (id: string): Vec3 => places.get(id)!;
  const share = new Map<string, number>();
  const own = new Set<string>();
  const put = (id: string, value: number): void => {
    share.set(id, Math.max(share.get(id) ?? 0, value));
  };
  for (const id of tubes) {
    const m = truss.members.find((one) => one.id === id)!;
    const without = frame && openFrame(frame, [...open, id]);
    const moves = without && pushApart(without, at, m.from, m.to);
    const opens = moves ? lengthens(frame, moves, at, m.from, m.to) : 0;
    for (const t of targets) {
      const isOwn = (t.from === m.from && t.to === m.to) || (t.from === m.to && t.to === m.from);
      if (isOwn) own.add(t.id);
      if (moves && opens > 0) put(t.id, Math.abs(lengthens(frame, moves, at, t.from, t.to)) / opens);
      else if ([t.from, t.to].some((c) => c === m.from || c === m.to)) put(t.id, isOwn ? 1 : 0.5);
    }
  }
  const ranked = targets
    .filter((t) => (share.get(t.id) ?? 0) > 0)
    .sort((a, b) => share.get(b.id)! - share.get(a.id)! || (a.id < b.id ? -1 : 1));
  return { own: ranked.filter((t) => own.has(t.id)), beside: ranked.filter((t) => !own.has(t.id)) };
};

/** What a hold asks for: what was spread, every tube's own length, and of the rest as many as still fit, two at least. */
const askedAt = (spread: readonly Target[], { own, beside }: Moving): readonly Target[] => {
  const first = [...new Set([...spread, ...own])];
  const rest = beside.filter((t) => !first.includes(t));
  return [...first, ...rest.slice(0, Math.max(BESIDE, MOST - first.length))];
};

/**
 * The hold points of the work with the readings each asks for, their limits, and whether each can be marked done.
 * The whole truss at the baseline and as left; between, only what can have moved.
 */
export const holdPoints = (
  truss: Truss,
  trammel: Trammel,
  planned: Planned,
  frame: Frame | MovesFreely,
  findings: readonly Finding[],
  decisions: readonly Decision[],
  manual: readonly RecordOf<'manual'>[],
  progress: readonly RecordOf<'progress'>[],
): { readonly holds: readonly HoldPoint[]; readonly issues: readonly Issue[] } => {
  const { members: open } = openTubes(progress);
  const tubes = concerned(truss, open, findings, decisions);
  const byId = new Map(trammel.targets.map((t) => [t.id, t]));
  const struck = new Set(planned.plan.struck);
  const within = trammel.targets.filter(
    (t) => !struck.has(t.id) && t.targetIn.value <= planned.plan.reachIn.value,
  );
  const solid = isFrame(frame) ? frame : undefined;
  const moving = canMove(truss, within, solid, open, tubes);
  const spreads = (trammel.spread ?? [])
    .filter((s) => s.settledBy === undefined)
    .slice(0, 2)
    .flatMap((s) => byId.get(s.target) ?? []);
  const wanted = new Set(
    decisions.filter((d) => d.choice !== 'refer' && cutOut.has(d.choice)).map((d) => d.of),
  );
  const issues: Issue[] = [];

  const asked = (hold: Hold, t: Target, why: AskedReading['why']): AskedReading => {
    const c = t.compared.find((one) => one.hold === hold);
    return {
      target: t.id,
      from: t.from,
      to: t.to,
      why,
      aimIn: aimAt(t, hold, manual),
      ...(t.toleranceIn ? { toleranceIn: t.toleranceIn } : {}),
      taken: c?.readings.length ?? 0,
      ...(c ? { differenceIn: c.differenceIn, verdict: c.verdict } : {}),
    };
  };
  const made = holds.map((hold): HoldPoint => {
    const whole = hold === 'beforeCutting' || hold === 'afterWelding';
    const extra = hold === 'afterSpreading' ? spreads : [];
    const asks = whole
      ? planned.whole.flatMap((r) => {
          const t = byId.get(r.target);
          return t ? [asked(hold, t, 'plan')] : [];
        })
      : askedAt(extra, moving).map((t) => asked(hold, t, extra.includes(t) ? 'wasSpread' : 'canMove'));
    const joints = hold === 'beforeTacking' ? tubes.filter((id) => open.includes(id) || wanted.has(id)) : [];
    const fitUps = joints.map((id) => fitUpOf(id, progress));
    const gate = gateOf(asks, fitUps);
    const last = progress.findLast((p) => p.step === `hold:${hold}`);
    if (last?.done && !mayBeDone(gate, last.reason))
      issues.push(
        issue(
          'hold-done-with-gate-closed',
          `records[${last.id}]`,
          { hold, outside: some(gate.outside), notRead: some(gate.notRead), fitUp: some(gate.fitUp) },
          'measure-again-or-write-why',
        ),
      );
    return {
      hold,
      covers: whole ? 'wholeTruss' : 'whatCanMove',
      asks,
      fitUps,
      gate,
      ...(last?.done
        ? { done: { record: last.id, by: last.by, ...(last.reason ? { reason: last.reason } : {}) } }
        : {}),
    };
  });
  return { holds: made, issues };
};
