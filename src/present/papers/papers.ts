import type { Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { latestOf } from '../../core/job/stampOrder.ts';
import { type Standing, standing } from '../../core/job/standing.ts';
import { pdfBytes } from '../pdf.ts';
import type { Part, Report } from '../record/sections.ts';
import { type ReportOptions, reportHead } from '../record.ts';
import { sheets } from '../sheet/layout.ts';
import type { Showing } from '../tables/showing.ts';
import { pageFoot } from '../words/cautions.ts';
import { asLeftSheets } from './asLeftSheets.ts';
import { entrySheets } from './entrySheets.ts';
import { estimateSheets, materialsSheets } from './estimateSheets.ts';
import { handOverSheets } from './handOverSheets.ts';
import { ownerSheets } from './ownerSheets.ts';
import { startSheets } from './startSheets.ts';
import { tagSheets } from './tagSheets.ts';
import { type PaperName, paperTitles } from './titles.ts';
import { weldSheets } from './weldSheets.ts';
import { workCards } from './workCards.ts';

/** What stands on each paper. */
const parts: {
  readonly [N in PaperName]: (showing: Showing, live: Standing, side: string) => readonly Part[];
} = {
  'start-card': startSheets,
  'work-cards': (s, _, side) => workCards(s, side),
  materials: (s, _, side) => materialsSheets(s, side),
  estimate: estimateSheets,
  'hand-over': handOverSheets,
  'weld-list': weldSheets,
  'as-left': asLeftSheets,
  'entry-draft': entrySheets,
  'owner-page': (s, _, side) => ownerSheets(s, side),
  tags: (s, _, side) => tagSheets(s, side),
};

/** One paper as plain sections. */
export const paperOf = (
  name: PaperName,
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
): Report => ({
  head: { ...reportHead(job, options), title: paperTitles[name] },
  parts: parts[name](
    { job, assessment, units: options.units },
    standing(job.records),
    "Left and right are the pilot's",
  ),
});

/** One paper as PDF. Same job and options, same bytes. */
export const paperPdf = (
  name: PaperName,
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
): Promise<Uint8Array> => {
  const latest = latestOf(job.records);
  return pdfBytes(sheets(paperOf(name, job, assessment, options)), {
    title: `${paperTitles[name]}: ${job.name}`,
    subject: pageFoot,
    version: options.version,
    ...(latest ? { at: latest.at } : {}),
  });
};
