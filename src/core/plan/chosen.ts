import type { Choice, RecordOf } from '../job/jobSchema.ts';
import type { Design, Method, Splices } from '../splice/result.ts';

/** Methods that carry out a decision, the recommended one first. */
const methodsFor: Readonly<Partial<Record<Choice, readonly Method[]>>> = {
  splice: ['innerSleeve', 'outerSleeve', 'largerTube'],
  splitSleeve: ['splitSleeve'],
  patch: ['patch'],
  replace: ['fullMember'],
};

/**
 * The design a decided repair is worked to: the user's (topic `splice-method:MEMBER`, the method in `words`) when it fits,
 * else the first that fits; null when none does, or nothing is designed.
 */
export const chosenDesign = (
  splices: Splices | null,
  manual: readonly RecordOf<'manual'>[],
  id: string,
): Design | null => {
  const row = splices?.members.find((r) => r.member === id);
  if (!row?.choice) return null;
  const own = manual.findLast((m) => m.topic === `splice-method:${id}`)?.words?.trim();
  const allowed = methodsFor[row.choice] ?? [];
  const fitting = allowed.flatMap((method) =>
    row.designs.filter((d) => d.method === method && d.fits === 'fits' && d.plan),
  );
  return fitting.find((d) => d.method === own) ?? fitting[0] ?? null;
};
