import { type Issue, issue } from '../base/issue.ts';
import type { Relief } from '../relief/result.ts';
import type { HeldNow } from '../statics/held.ts';
import { bracesFor } from './holding.ts';
import type { ReliefFirst } from './reliefFirst.ts';
import type { NotPlanned, PlanBrace } from './result.ts';
import { isHeld, type Solver } from './state.ts';
import type { WorkUnit } from './units.ts';

/** A tube (or cluster) to be opened, and the braces that hold the truss meanwhile. */
export interface Opening {
  readonly unit: WorkUnit;
  readonly braces: readonly PlanBrace[];
}

/** The work in one bay: openings one after the other, then what is only laid over. */
export interface BayWork {
  readonly bay: string;
  readonly openings: readonly Opening[];
  readonly covers: readonly WorkUnit[];
  /** Braces taken out when the bay is welded. */
  readonly takeOut: readonly PlanBrace[];
}

/** Who is opened when, every state on the way solved. */
export interface Sequence {
  readonly releases: ReliefFirst['releases'];
  /** Opened before anything is bent back, in this order; closed with their bay. */
  readonly early: readonly Opening[];
  readonly bends: readonly WorkUnit[];
  readonly bays: readonly BayWork[];
  readonly notPlanned: readonly NotPlanned[];
  readonly issues: readonly Issue[];
}

/** Which repairs are opened first, which bay by bay, and with which braces. A repair that nothing holds is not planned. */
export const sequenceOf = (
  solver: Solver,
  support: HeldNow,
  relief: Relief,
  units: readonly WorkUnit[],
  first: ReliefFirst,
  stray: readonly string[],
): Sequence => {
  const issues: Issue[] = [];
  const notPlanned: NotPlanned[] = [];
  const orderOf = new Map(solver.truss.bays.map((b, k) => [b.id, k]));
  let open = stray;
  let placed: readonly PlanBrace[] = [];
  const say = (code: string, unit: WorkUnit, facts: Issue['facts']): void => {
    issues.push(issue(code, unit.id, { id: unit.id, ...facts }, 'read-the-plan'));
  };
  const bolted = (all: ReliefFirst['releases']): readonly string[] =>
    all.flatMap(({ release }) => (release.kind === 'bolted' ? [release.id] : []));
  let releases: ReliefFirst['releases'] = [];
  for (const one of first.releases)
    if (isHeld(solver.solve([...stray, ...bolted(releases), ...bolted([one])], [])))
      releases = releases.concat(one);
  const away = bolted(releases);
  const tryOpening = (unit: WorkUnit): Opening | null => {
    const braces = bracesFor(solver, support, relief, unit, open, placed, away);
    if (!braces) return null;
    for (const b of braces) say('plan-brace-put-in', unit, { from: b.from, to: b.to, why: b.why });
    return { unit, braces };
  };
  const openings = units.filter((u) => u.way === 'open');

  const early: Opening[] = [];
  for (const cut of first.cuts.keys()) {
    const unit = openings.find((u) => u.id === cut)!;
    const opening = tryOpening(unit);
    if (!opening) {
      say('plan-cut-put-later', unit, { targets: first.cuts.get(cut)! });
      continue;
    }
    early.push(opening);
    open = [...open, ...unit.opens];
    placed = [...placed, ...opening.braces];
  }

  const isEarly = (u: WorkUnit): boolean => early.some((o) => o.unit.id === u.id);
  const labels = [...new Set(units.filter((u) => u.way !== 'bend').map((u) => u.bay))].sort((p, q) => {
    const rank = (bay: string): number => (early.some((o) => o.unit.bay === bay) ? 0 : 1);
    return rank(p) - rank(q) || (orderOf.get(p) ?? 0) - (orderOf.get(q) ?? 0);
  });
  const bays: BayWork[] = [];
  let waiting: readonly WorkUnit[] = [];
  const earlyOpen = (): boolean => early.some((o) => o.unit.opens.some((id) => open.includes(id)));
  const workBay = (
    bay: string,
    mine: readonly Opening[],
    own: readonly WorkUnit[],
    covers: readonly WorkUnit[],
  ): void => {
    for (const o of mine) open = open.filter((id) => !o.unit.opens.includes(id));
    const alone = !earlyOpen();
    const added: Opening[] = [];
    for (const unit of own) {
      const opening = tryOpening(unit);
      if (opening) {
        added.push(opening);
        placed = [...placed, ...opening.braces];
      } else if (alone) notPlanned.push(notHeld(unit));
      else {
        say('plan-cut-put-later', unit, { targets: [] });
        waiting = [...waiting, unit];
      }
    }
    // Tubes opened early lean on one another's braces: those stay until the last of them is closed.
    const its = added.flatMap((o) => o.braces);
    const takeOut = alone ? placed : its;
    placed = placed.filter((b) => !takeOut.includes(b));
    if (mine.length + added.length + covers.length > 0)
      bays.push({ bay, openings: [...mine, ...added], covers, takeOut });
  };
  const notHeld = (unit: WorkUnit): NotPlanned => {
    const state = solver.solve([...open, ...unit.opens, ...away], placed);
    const why = unit.kind === 'cluster' && isHeld(state) ? 'noFixtureForCluster' : 'noBraceHolds';
    return { id: unit.id, why, clusters: state.clusters };
  };
  for (const bay of labels) {
    const here = units.filter((u) => u.bay === bay);
    workBay(
      bay,
      early.filter((o) => o.unit.bay === bay),
      here.filter((u) => u.way === 'open' && !isEarly(u)),
      here.filter((u) => u.way === 'cover'),
    );
  }
  const late = waiting;
  for (const bay of new Set(late.map((u) => u.bay)))
    workBay(
      bay,
      [],
      late.filter((u) => u.bay === bay),
      [],
    );
  return { releases, early, bends: units.filter((u) => u.bend), bays, notPlanned, issues };
};
