import type { StepKind } from '../../core/plan/kinds.ts';

/** What is measured and written in at a step of the work, on its card. */
export const measuredAt: Partial<Record<StepKind, readonly string[]>> = {
  support: ['held at', 'level fore and aft', 'level across'],
  inspect: ['method', 'found'],
  photo: ['photos, number of'],
  trammel: ['sheet no.', 'outside', 'cannot tell'],
  cut: ['kerf before', 'kerf after', 'sprang, which way'],
  straighten: ['gap left', 'over length'],
  roundOut: ['largest diameter', 'smallest diameter'],
  inspectBend: ['method', 'result'],
  spread: ['before', 'while pushed', 'after letting go'],
  opening: ['opening top', 'opening bottom', 'angle'],
  section: ['length made', 'heat or lot no.'],
  sleeves: ['length made', 'heat or lot no.'],
  fitUp: ['gap', 'overlap', 'marks centred', 'seen by'],
  weldFirst: ['rod', 'process'],
  weld: ['rod', 'process'],
  inspectWelds: ['method', 'result', 'far side seen', 'qualified person'],
  protect: ['inside with', 'outside with'],
  weigh: ['added, from ledger', 'weighed or worked'],
};
