import { expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { Cause } from '../../src/core/trammel/adjustment.ts';
import { fitLines } from '../../src/present/tables/fit.ts';
import { demoJob } from './made.ts';

it('every cause found is told, readings by their line and what cannot be told apart by name', () => {
  const job = demoJob();
  const assessment = assess(job);
  const [one, other] = job.records.flatMap((r) => (r.kind === 'reading' ? [r] : []));
  const line = (r: typeof one): string => r!.ends.map((e) => e.cluster).join('–');
  const causes: readonly Cause[] = [
    { kind: 'misread', reading: one!.id, shouldBeIn: 20.25, normalised: 8 },
    { kind: 'cannotTell', readAlso: ['U3L–L4L'], between: [other!.id, 'L5R'] },
  ];
  const adjustment = assessment.trammel.byHold.beforeCutting!;
  const trammel = {
    ...assessment.trammel,
    byHold: { beforeCutting: { ...adjustment, fits: 'doesNotFit' as const, cause: causes[0]!, causes } },
  };
  const [told] = fitLines({ job, assessment: { ...assessment, trammel }, units: 'inDecimal' });
  expect(told).toContain(`reading ${line(one)} is misread and should say 20.250 in`);
  expect(told).toContain(`cannot be told between ${line(other)} and L5R: read U3L–L4L too`);
});
