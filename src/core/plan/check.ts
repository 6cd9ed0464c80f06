import type { HeldNow } from '../statics/held.ts';
import type { Draft } from './draft.ts';
import { clusterHeld, sharedClusters } from './holding.ts';
import type { PlanBrace, SolvedState } from './result.ts';
import type { RuleId } from './rules.ts';
import { isHeld, type Solver } from './state.ts';

/** What an order breaks: the step that stands wrong, and the one it should follow (or that is open beside it). */
export interface Broken {
  readonly rule: RuleId;
  readonly step: string;
  readonly by: string;
}

/** An order walked through: the state after every step, up to the first rule it breaks. */
export interface Walk {
  readonly states: ReadonlyMap<string, SolvedState>;
  readonly broken: Broken | null;
}

/** Which tubes are out, and which braces are in, after a step. */
const after = (step: Draft, open: ReadonlyMap<string, string>): Map<string, string> => {
  const next = new Map(open);
  if (step.kind === 'cut' || step.kind === 'release') for (const id of step.members) next.set(id, step.id);
  if (step.kind === 'tack' || step.kind === 'refit') for (const id of step.members) next.delete(id);
  return next;
};

/**
 * Walks an order of steps: every step after those it needs, no second tube opened at a cluster unless held, and the truss
 * standing with its sag under the limit after every step.
 *
 * @param stray  tubes open that no step of the plan opens
 */
export const walk = (
  steps: readonly Draft[],
  solver: Solver,
  support: HeldNow,
  stray: readonly string[],
): Walk => {
  const states = new Map<string, SolvedState>();
  const done = new Set<string>();
  let open: ReadonlyMap<string, string> = new Map(stray.map((id) => [id, `cut:${id}`]));
  let braces: readonly PlanBrace[] = [];
  for (const step of steps) {
    const missing = step.needs.find((n) => !done.has(n.step));
    if (missing) return { states, broken: { rule: missing.rule as RuleId, step: step.id, by: missing.step } };
    done.add(step.id);
    if (step.kind === 'brace' && step.brace) braces = [...braces, step.brace];
    if (step.kind === 'unbrace') braces = braces.filter((b) => `un${b.id}` !== step.id);
    const next = after(step, open);
    if (step.kind === 'cut') {
      const cut = [...open].filter(([, by]) => !by.startsWith('release:')).map(([id]) => id);
      const loose = sharedClusters(solver.truss, cut, step.members).find(
        (c) => !clusterHeld(support, braces, c),
      );
      if (loose !== undefined) {
        const beside = solver.truss.members.find(
          (m) => cut.includes(m.id) && (m.from === loose || m.to === loose),
        );
        return {
          states,
          broken: { rule: 'one-open-at-a-cluster', step: step.id, by: open.get(beside!.id)! },
        };
      }
    }
    if (next.size !== open.size || step.kind === 'brace' || step.kind === 'unbrace') {
      const state = solver.solve([...next.keys()], braces);
      states.set(step.id, state);
      if (!isHeld(state))
        return { states, broken: { rule: 'state-stands', step: step.id, by: state.clusters[0] ?? step.id } };
    }
    open = next;
  }
  return { states, broken: null };
};

/** The steps in an order of the user's: ids it does not name keep their place behind the step they stood behind. */
export const inOrderOf = <S extends Pick<Draft, 'id'>>(
  steps: readonly S[],
  ids: readonly string[],
): readonly S[] => {
  const byId = new Map(steps.map((s) => [s.id, s]));
  const named = [...new Set(ids)].filter((id) => byId.has(id));
  const list = [...named];
  const inList = new Set(named);
  steps.forEach(({ id }, k) => {
    if (inList.has(id)) return;
    const before = k === 0 ? -1 : list.indexOf(steps[k - 1]!.id);
    list.splice(before + 1, 0, id);
    inList.add(id);
  });
  return list.map((id) => byId.get(id)!);
};
