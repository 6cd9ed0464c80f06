import type { Choice } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { type Estimate, type LineGroup, lineGroups, type Takeoff } from './result.ts';
import { momentsOf } from './triangle.ts';

/** One way to repair, worked out. */
export interface Route {
  readonly name: string;
  readonly takeoff: Takeoff;
  readonly estimate: Estimate;
}

/** Routes side by side, the same rows for each; nothing is recommended. */
export interface SideBySide {
  readonly names: readonly string[];
  readonly groups: readonly { readonly group: LineGroup; readonly meanH: readonly number[] }[];
  readonly rows: readonly {
    readonly what:
      | 'bestH'
      | 'likelyH'
      | 'worstH'
      | 'boughtIn'
      | 'bars'
      | 'weldIn'
      | 'rodLb'
      | 'addedLb'
      | 'momentLbIn';
    readonly values: readonly number[];
  }[];
  /** What each route leaves out: repairs without a design, and members nobody has looked at that are not priced. */
  readonly leavesOut: readonly { readonly noDesign: readonly string[]; readonly notPriced: number }[];
}

const sum = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0);

/** The same lines for every route. */
export const sideBySide = (routes: readonly Route[]): SideBySide => {
  const row = (what: SideBySide['rows'][number]['what'], of: (r: Route) => number) => ({
    what,
    values: routes.map(of),
  });
  return {
    names: routes.map((r) => r.name),
    groups: lineGroups.map((group) => ({
      group,
      meanH: routes.map((r) =>
        sum(r.estimate.lines.filter((l) => l.group === group).map((l) => momentsOf(l.hours).mean)),
      ),
    })),
    rows: [
      row('bestH', (r) => r.estimate.withHidden.bestH.value),
      row('likelyH', (r) => r.estimate.withHidden.likelyH.value),
      row('worstH', (r) => r.estimate.withHidden.worstH.value),
      row('boughtIn', (r) => sum(r.takeoff.stock.map((s) => s.boughtIn.value))),
      row('bars', (r) => sum(r.takeoff.stock.map((s) => s.bars.length))),
      row('weldIn', (r) => sum(r.takeoff.repairs.map((t) => t.weldIn?.value ?? 0))),
      row('rodLb', (r) => sum(r.takeoff.repairs.map((t) => t.rodLb?.value ?? 0))),
      row('addedLb', (r) => r.takeoff.ledger.addedLb.value),
      row('momentLbIn', (r) => r.takeoff.ledger.momentLbIn.value),
    ],
    leavesOut: routes.map((r) => ({
      noDesign: r.takeoff.ledger.notKnown,
      notPriced: sum(r.estimate.hidden.map((h) => (h.chance ? 0 : h.members.length))),
    })),
  };
};

/**
 * The decisions of one way to repair a bay: each hurt member of it spliced, or every member of it replaced. The caller works
 * a copy of the job with them and puts the results side by side.
 */
export const bayRoute = (
  truss: Truss,
  coverage: Coverage,
  bay: string,
  way: 'spliceEach' | 'replaceBay',
): readonly { readonly of: string; readonly choice: Choice }[] => {
  const hurt = new Set(coverage.marks.filter((m) => m.findings.length > 0 || m.choice).map((m) => m.id));
  const members = truss.bays.find((b) => b.id === bay)?.members ?? [];
  return way === 'replaceBay'
    ? members.map((of) => ({ of, choice: 'replace' }))
    : members.filter((id) => hurt.has(id)).map((of) => ({ of, choice: 'splice' }));
};
