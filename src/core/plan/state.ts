import { type Figure, figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import { changedFrame } from '../lockedIn/changedFrame.ts';
import { bowChanges } from '../lockedIn/lockedState.ts';
import type { Misfit } from '../lockedIn/misfit.ts';
import { growthBetween, ownWeight, SAG_LIMIT_IN } from '../relief/sag.ts';
import type { Frame } from '../statics/frame.ts';
import type { Brace, HeldNow } from '../statics/held.ts';
import { isFrame, prepareFrame } from '../statics/prepareFrame.ts';
import type { Truss } from '../truss/result.ts';
import type { PlanBrace, SolvedState } from './result.ts';

/** The user's limit on the growth of own-weight sag (topic `limit:sag`), else the starting value. */
export const sagLimit = (manual: readonly RecordOf<'manual'>[]): Figure => {
  const own = manual.findLast((m) => m.topic === 'limit:sag' && (m.valueIn ?? 0) > 0);
  return own
    ? figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id })
    : figure(SAG_LIMIT_IN, 'in', { kind: 'assumed', ref: 'sag-1/32' }, ['starting-value']);
};

/** Answers what stands when tubes are out and braces are in; each question is worked once. */
export interface Solver {
  readonly truss: Truss;
  readonly solve: (open: readonly string[], braces: readonly PlanBrace[]) => SolvedState;
}

const MOST_NAMED = 3;

/**
 * The truss without its open tubes and with its braces, solved under the weight of its tubes.
 *
 * Assumes: bent tubes as soft as their bows make them; a tacked tube carries; braces take tension and compression only;
 * the weight of a cut tube stays on its stubs. Sag is the growth against the truss uncut.
 * Source: direct stiffness (methods section 1); a mechanism by the pivots of the factor.
 */
export const solverOf = (
  truss: Truss,
  support: HeldNow,
  whole: Frame,
  misfits: readonly Misfit[],
  limit: Figure,
): Solver => {
  const known = new Map<string, SolvedState>();
  const weight = ownWeight(whole);
  const movesOf = (frame: Frame, open: ReadonlySet<string>): Float64Array | null => {
    const bent = misfits.filter((m) => !open.has(m.member));
    return changedFrame(frame, bowChanges(truss, frame, bent))?.solve(weight) ?? null;
  };
  const before = movesOf(whole, new Set());
  const bySize = new Map(truss.members.map((m) => [m.id, m.section]));
  const asTube = (b: PlanBrace): Brace => ({
    id: b.id,
    from: b.from,
    to: b.to,
    section: bySize.get(b.holds[0]!)!,
    ends: ['ball', 'ball'],
  });
  const work = (open: readonly string[], braces: readonly PlanBrace[]): SolvedState => {
    const out = new Set(open);
    const state = { open, braces: braces.map((b) => b.id).sort() };
    const frame = prepareFrame(
      { ...truss, members: truss.members.filter((m) => !out.has(m.id)) },
      { ...support, braces: [...support.braces, ...braces.map(asTube)] },
    );
    if (!isFrame(frame))
      return { ...state, says: 'mechanism', clusters: frame.clusters.slice(0, MOST_NAMED).map((c) => c.id) };
    const after = movesOf(frame, out);
    if (!after || !before) return { ...state, says: 'mechanism', clusters: [] };
    const clusters = mostSunk(frame.clusters, before, after);
    if (!support.ranked) return { ...state, says: 'notJudged', clusters };
    const sag = growthBetween(before, after);
    return {
      ...state,
      says: sag <= limit.value ? 'stands' : 'sags',
      sagIn: figure(sag, 'in', { kind: 'computed', ref: 'own-weight-sag' }, [
        'tacked-carries',
        'own-weight-only',
      ]),
      clusters,
    };
  };
  return {
    truss,
    solve: (open, braces) => {
      const sorted = [...new Set(open)].sort();
      const key = JSON.stringify([sorted, braces.map((b) => b.id).sort()]);
      const old = known.get(key);
      if (old) return old;
      const fresh = work(sorted, braces);
      known.set(key, fresh);
      return fresh;
    },
  };
};

const mostSunk = (
  clusters: readonly string[],
  before: Float64Array,
  after: Float64Array,
): readonly string[] =>
  clusters
    .map((id, c) => ({ id, sunk: before[c * 6 + 2]! - after[c * 6 + 2]! }))
    .filter((c) => c.sunk > 1e-6)
    .sort((p, q) => q.sunk - p.sunk || (p.id < q.id ? -1 : 1))
    .slice(0, MOST_NAMED)
    .map((c) => c.id);

/** Does the truss stand well enough to work on? */
export const isHeld = (state: SolvedState): boolean => state.says === 'stands' || state.says === 'notJudged';
