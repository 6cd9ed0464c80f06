import type { Choice, Decision, Finding } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { lockedIn } from '../../../src/core/lockedIn/lockedIn.ts';
import { relief } from '../../../src/core/relief/relief.ts';
import type { ReliefTarget } from '../../../src/core/relief/result.ts';
import type { HeldNow } from '../../../src/core/statics/held.ts';
import { prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import type { Trammel } from '../../../src/core/trammel/result.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';

export const noReadings: Trammel = { targets: [], byHold: {}, issues: [] };

const decision = (of: string, choice: Choice): Decision => ({
  id: `d-${of}`,
  kind: 'decision',
  of,
  choice,
  by: 'test',
  at: '2026-01-01T00:00:00Z',
  device: 'test',
});

export interface Situation {
  readonly truss: Truss;
  readonly model: Model;
  readonly support: HeldNow;
  readonly findings: readonly Finding[];
  readonly decisions?: Readonly<Record<string, Choice>>;
}

/** The stages that stand before relief, and relief itself, for some targets. */
export const work = (s: Situation, targets: readonly string[]) => {
  const frame = prepareFrame(s.truss, s.support);
  const decisions = Object.entries(s.decisions ?? {}).map(([of, choice]) => decision(of, choice));
  const coverage = walkRound(s.truss, [], s.findings, decisions, [], []);
  const solved = statics(s.truss, s.model, s.support, frame);
  const locked = lockedIn(s.truss, frame, s.findings, noReadings);
  return {
    frame,
    coverage,
    locked,
    solved,
    relief: relief(s.truss, s.model, s.support, frame, coverage, locked, solved, targets),
  };
};

export const targetOf = (s: Situation, target: string): ReliefTarget => work(s, [target]).relief.targets[0]!;
