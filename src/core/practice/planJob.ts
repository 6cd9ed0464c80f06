import { jobFromModel } from '../job/jobFromModel.ts';
import type { Choice, Damage, Finding, Job, RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { crash } from './crash.ts';
import { stamp } from './damage.ts';

const bends: ReadonlySet<Damage> = new Set(['bow', 'kink']);

/** The worst bent tube is spliced, the others bent are straightened, the rest replaced: something of every way of work. */
const choiceOf = (of: string, findings: readonly Finding[], worst: string): Choice =>
  of === worst
    ? 'splice'
    : findings.some((f) => f.of === of && bends.has(f.damage))
      ? 'straighten'
      : 'replace';

const depth = (f: Finding): number => ('depthIn' in f && typeof f.depthIn === 'number' ? f.depthIn : 0);

/**
 * A practice job whose plan can be practised where the open job has none: a crash by the seed, every finding told, a
 * repair decided for each hurt tube. `assess` of it gives the plan.
 */
export const planJob = (model: Model, seed: string): Job | null => {
  const made = crash(model, { seed, level: 2 });
  if (made.kind !== 'made') return null;
  const { findings } = made.exercise.truth;
  const bent = findings.filter((f) => bends.has(f.damage)).toSorted((a, b) => depth(b) - depth(a));
  const worst = (bent[0] ?? findings[0]!).of;
  const decisions = [...new Set(findings.map((f) => f.of))].map(
    (of): RecordOf<'decision'> => ({
      kind: 'decision',
      id: `decided:${of}`,
      ...stamp,
      of,
      choice: choiceOf(of, findings, worst),
      reason: 'exercise',
    }),
  );
  return {
    ...jobFromModel(model, `Plan practice, ${seed}`, 'practice'),
    records: [...findings, ...decisions],
  };
};
