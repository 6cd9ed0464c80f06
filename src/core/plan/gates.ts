import { type Issue, issue } from '../base/issue.ts';
import type { Disposition } from '../disposition/result.ts';
import { atRecord } from '../job/corrections.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { HeldNow } from '../statics/held.ts';
import { fitUpOf } from '../trammel/gate.ts';
import type { HoldPoint, Trammel } from '../trammel/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { doneOf } from './done.ts';
import type { Draft } from './draft.ts';
import { holdId, idOf } from './draft.ts';
import { gateId, gatesAt } from './gatesAt.ts';
import type { Evidence, Frozen, Gate, GateName } from './result.ts';

type Progress = RecordOf<'progress'>;

/** What the gates are judged by. */
export interface GateData {
  readonly coverage: Coverage;
  readonly trammel: Trammel;
  readonly holds: readonly HoldPoint[];
  readonly disposition: Disposition | null;
  readonly support: HeldNow;
  readonly progress: readonly Progress[];
  readonly photos: readonly RecordOf<'photo'>[];
  readonly frozen: Frozen | undefined;
  /** Bays whose marks were laid out again since the baseline was read. */
  readonly laidAgain: readonly string[];
  /** Tubes at the same clusters that are open now. */
  readonly openBeside: (id: string) => readonly string[];
}

/** Who has to look too. Our proposal, yours to change; no source. */
const seconds = {
  H1: 'advised',
  H2: 'advised',
  H3: 'inspector',
  H4: 'advised',
  H5: 'yes',
  H6: 'advised',
  H7: 'qualified',
  H8: 'yes',
  H9: 'advised',
  H10: 'entitled',
} as const satisfies Record<GateName, Gate['secondPerson']>;

const see = (what: string, there: boolean | null, ids: readonly string[] = []): Evidence => ({
  what,
  there,
  ids,
});

const said = (text: unknown): string => (typeof text === 'string' ? text.trim() : '');

/** A second person who is not the doer, named in the record that ticks it. */
const secondSeen = (progress: readonly Progress[], step: string): Evidence => {
  const last = progress.findLast((p) => p.step === step && p.done);
  const other = said(last?.secondPerson ?? last?.fitUp?.secondPerson);
  return see(
    'secondPerson',
    other !== '' && other.toLowerCase() !== said(last?.by).toLowerCase(),
    last ? [last.id] : [],
  );
};

const holdSeen = (
  holds: readonly HoldPoint[],
  hold: 'beforeCutting' | 'afterTacking' | 'afterWelding',
  what: string,
): Evidence => {
  const point = holds.find((h) => h.hold === hold);
  const gate = point?.gate;
  return see(what, gate ? gate.opens && point.asks.some((a) => a.taken > 0) : false, [
    ...(gate?.outside ?? []),
    ...(gate?.notRead ?? []),
  ]);
};

/** Said only when it is not so. */
const marksStand = (again: readonly string[]): readonly Evidence[] =>
  again.length > 0 ? [see('marksStand', false, again)] : [];

const evidenceOf = (
  name: GateName,
  of: string | undefined,
  steps: readonly Draft[],
  data: GateData,
): readonly Evidence[] => {
  const { coverage, trammel, holds, disposition, support, progress, photos, frozen, laidAgain } = data;
  const id = of ?? '';
  switch (name) {
    case 'H1': {
      const baseline = trammel.byHold.beforeCutting;
      return [
        see('baseline', baseline !== undefined),
        ...marksStand(laidAgain),
        see('residuals', baseline ? baseline.fits !== 'doesNotFit' : false),
      ];
    }
    case 'H2': {
      const not = [...coverage.notLookedAt.members, ...coverage.notLookedAt.clusters];
      const waiting = coverage.marks
        .filter((m) => m.state === 'undecided' || m.state === 'lookAgain')
        .map((m) => m.id);
      return [see('allLookedAt', not.length === 0, not), see('allDecided', waiting.length === 0, waiting)];
    }
    case 'H3': {
      const changed = frozen ? [...frozen.added, ...frozen.removed, ...frozen.altered] : [];
      const silent = (disposition?.rows ?? [])
        .filter((r) => r.decided?.reasonNeeded && !r.decided.reasonWritten)
        .map((r) => r.id);
      return [
        see('frozenPlan', frozen !== undefined && changed.length === 0 && !frozen.reordered, changed),
        see('reasonsWritten', disposition ? silent.length === 0 : null, silent),
        secondSeen(progress, gateId(name)),
      ];
    }
    case 'H4': {
      const braces = steps.filter((s) => s.kind === 'brace' && s.of === of).map((s) => s.id);
      const missing = braces.filter((b) => !doneOf(progress, b));
      const beside = data.openBeside(id);
      const shown = photos.filter((p) => p.of === of || p.of === 'job').map((p) => p.id);
      return [
        holdSeen(holds, 'beforeCutting', 'baseline'),
        ...marksStand(laidAgain),
        see('photo', shown.length > 0, shown),
        see('restraint', support.ranked),
        ...(braces.length > 0 ? [see('brace', missing.length === 0, missing)] : []),
        see('noNeighbourOpen', beside.length === 0, beside),
      ];
    }
    case 'H5': {
      const fit = fitUpOf(id, progress);
      const last = progress.findLast((p) => p.step === idOf('fitUp', id) && p.done);
      return [
        see('fitUp', fit.lacks.length === 0, fit.lacks),
        see('slideOn', doneOf(progress, idOf('trialFit', id)) !== undefined),
        see('proof', said(last?.proof) === '' ? null : true, last ? [last.id] : []),
      ];
    }
    case 'H6':
      return [holdSeen(holds, 'afterTacking', 'tackedDistances')];
    case 'H7': {
      const last = progress.findLast((p) => p.step === idOf('inspectWelds', id) && p.done);
      return [
        see(
          'weldInspected',
          last?.inspected ? last.inspected.result === 'clear' : false,
          last ? [last.id] : [],
        ),
        secondSeen(progress, idOf('inspectWelds', id)),
      ];
    }
    case 'H8':
      return [
        holdSeen(holds, 'afterWelding', 'asLeftDistances'),
        secondSeen(progress, holdId('afterWelding')),
      ];
    case 'H9':
      return (['protect', 'vents'] as const)
        .filter((kind) => steps.some((s) => s.id === idOf(kind, id)))
        .map((kind) => see(kind, doneOf(progress, idOf(kind, id)) !== undefined));
    case 'H10':
      return [see('ledger', null), see('weighed', doneOf(progress, 'weigh') !== undefined)];
    default:
      return name satisfies never;
  }
};

/** Every hold point of these steps, each once, in order of its name, then of the work; and records that tick too early. */
export const gatesOf = (
  steps: readonly Draft[],
  data: GateData,
): { readonly gates: readonly Gate[]; readonly issues: readonly Issue[] } => {
  const ids = new Set(steps.flatMap((s) => [...gatesAt(s, steps).before, ...gatesAt(s, steps).after]));
  const issues: Issue[] = [];
  const numberOf = (id: string): number => Number(/^H(\d+)/.exec(id)![1]);
  const gates = [...ids].map((id): Gate => {
    const name = `H${numberOf(id)}` as GateName;
    const of = id.includes(':') ? id.slice(id.indexOf(':') + 1) : undefined;
    const evidence = evidenceOf(name, of, steps, data);
    const missing = evidence.filter((e) => e.there === false).map((e) => e.what);
    const done = doneOf(data.progress, id);
    const record = done && data.progress.find((p) => p.id === done.record);
    const reason = said(record?.opened) || said(record?.reason);
    const common = { id, name, ...(of === undefined ? {} : { of }), evidence, secondPerson: seconds[name] };
    if (done && missing.length > 0) {
      if (reason !== '') return { ...common, state: 'openedByName', opened: { ...done, reason } };
      issues.push(
        issue(
          'gate-done-with-evidence-missing',
          atRecord(done.record),
          { gate: id, missing },
          'add-it-or-write-why',
        ),
      );
    }
    if (missing.length > 0) return { ...common, state: 'waits' };
    return done ? { ...common, state: 'done', done } : { ...common, state: 'ready' };
  });
  return {
    gates: gates
      .map((g, k) => ({ g, k }))
      .sort((p, q) => numberOf(p.g.id) - numberOf(q.g.id) || p.k - q.k)
      .map(({ g }) => g),
    issues,
  };
};
