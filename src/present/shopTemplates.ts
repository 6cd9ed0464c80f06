import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import type { ReportOptions } from './record/head.ts';
import type { ReportFile } from './report.ts';
import { decidedDesigns } from './tables/splices.ts';
import { templateFiles } from './templates.ts';

/** Decisions whose templates go with the report. */
const cutOut: ReadonlySet<string> = new Set(['splice', 'replace']);

/** Full-size templates, all in a PDF and each as SVG, for each member decided to be spliced or replaced whose repair fits. */
export const shopTemplates = async (
  job: Job,
  assessment: Assessment,
  { paper, units }: Pick<ReportOptions, 'paper' | 'units'>,
): Promise<readonly ReportFile[]> => {
  const files: ReportFile[] = [];
  for (const row of assessment.splice.members) {
    const methods = decidedDesigns(row).flatMap((d) => (d.plan ? [d.method] : []));
    if (!cutOut.has(row.choice ?? '') || methods.length === 0) continue;
    files.push(...(await templateFiles(job, row.member, { paper, units, methods })));
  }
  return files;
};
