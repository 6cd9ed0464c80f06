import type { Damage } from '../job/jobSchema.ts';
import type { Here } from './findingsHere.ts';
import { type Judgement, no, unsure } from './judgement.ts';
import type { Missing, Reason } from './result.ts';

const broken: ReadonlySet<Damage> = new Set(['crack', 'break', 'hole']);
const ids = (here: Here, of: ReadonlySet<Damage>): readonly string[] =>
  here.placed.filter((p) => of.has(p.finding.damage)).map((p) => p.finding.id);

/** What stands against a repair that only bends or squeezes back: cracks, kinks, nothing to do, damage that stays. */
const againstKeeping = (here: Here, answered: ReadonlySet<Damage>, nothing: string): readonly Reason[] => {
  const cracked = ids(here, broken);
  const kinked = ids(here, new Set(['kink']));
  const left = here.placed
    .map((p) => p.finding)
    .filter((f) => !answered.has(f.damage) && !broken.has(f.damage) && f.damage !== 'kink')
    .filter((f) => !here.within.has(f.id));
  const hard = [
    ...(cracked.length > 0 ? [no('no-crack-kept', { findings: cracked })] : []),
    ...(kinked.length > 0 ? [no('kink-cut-out', { findings: kinked })] : []),
  ];
  if (!here.placed.some((p) => answered.has(p.finding.damage)))
    return hard.length > 0 ? hard : [no(nothing, { found: here.mark.damage })];
  return [
    ...hard,
    ...left.map((f) =>
      f.damage === 'other'
        ? unsure('damage-in-words', { finding: f.id })
        : no('judged-together', { leaves: f.damage, finding: f.id }),
    ),
  ];
};

const inspection = (here: Here): readonly Missing[] =>
  here.lookedClosely ? [] : [{ name: 'crackInspection' }];
/** Sizes that must be known before anything is bent or squeezed. */
const unmeasured = (here: Here): readonly Missing[] =>
  here.placed.flatMap(({ finding: f }): readonly Missing[] => {
    if (f.damage === 'bow') return f.depthIn === undefined ? [{ name: 'depthIn', finding: f.id }] : [];
    if (f.damage !== 'oval') return [];
    const names = (['largestIn', 'smallestIn'] as const).filter((name) => f[name] === undefined);
    return names.map((name) => ({ name, finding: f.id }));
  });
const heat = (here: Here): readonly string[] =>
  here.scope.some((s) => s === 'heatTreated' || s === 'coldWorked') ? ['heat-forbidden'] : [];

/**
 * Straightening and nothing more. The general rules pair it with a split sleeve, so without the user's own data
 * (`straighten-only`) it cannot be said; a cracked or kinked tube is not straightened and kept.
 * Source: AC 43.13-1B, 4-79, 4-91d; the kink is common practice.
 */
export const straightenOnly = (here: Here): Judgement => {
  const against = againstKeeping(here, new Set(['bow']), 'nothing-to-straighten');
  return {
    reasons: [...against, unsure('straighten-then-sleeve')],
    missing: [{ name: 'manual:straighten-only' }, ...inspection(here), ...unmeasured(here)],
    conditions: ['inspect-before-straightening', ...heat(here)],
  };
};

/**
 * Rounding out and nothing more: no published permission, for a flattened tube is a dented one.
 * Source: AC 43.13-1B, 4-94a(3); common practice.
 */
export const roundOutOnly = (here: Here): Judgement => {
  const against = againstKeeping(here, new Set(['oval', 'dent']), 'nothing-to-round-out');
  return {
    reasons: [...against, unsure('flattening-is-dent')],
    missing: [{ name: 'manual:round-out-only' }, ...inspection(here), ...unmeasured(here)],
    conditions: ['inspect-before-straightening', ...heat(here)],
  };
};
