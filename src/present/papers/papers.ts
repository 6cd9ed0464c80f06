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
import { estimateSheets, materialsSheets } from './estimateSheets.ts';
import {
  asLeftSheets,
  entrySheets,
  handOverSheets,
  ownerSheets,
  startSheets,
  tagSheets,
  weldSheets,
} from './recordSheets.ts';
import { workCards } from './workCards.ts';

/** Papers besides the damage report and the trammel sheet, by the name of their file. */
export const papers = {
  'start-card': {
    title: 'Start card',
    parts: (s, live, side) => startSheets(s, live, side),
  },
  'work-cards': { title: 'Work cards', parts: (s, _, side) => workCards(s, side) },
  materials: { title: 'Materials', parts: (s, _, side) => materialsSheets(s, side) },
  estimate: { title: 'Estimate', parts: (s, live, side) => estimateSheets(s, live, side) },
  'hand-over': { title: 'Hand-over', parts: (s, live, side) => handOverSheets(s, live, side) },
  'weld-list': { title: 'Weld list', parts: (s, live, side) => weldSheets(s, live, side) },
  'as-left': { title: 'As-left record', parts: (s, live, side) => asLeftSheets(s, live, side) },
  'entry-draft': { title: 'Draft entry', parts: (s, live, side) => entrySheets(s, live, side) },
  'owner-page': { title: "Owner's page", parts: (s, _, side) => ownerSheets(s, side) },
  tags: { title: 'Chalk key and tags', parts: (s, _, side) => tagSheets(s, side) },
} as const satisfies Record<
  string,
  {
    readonly title: string;
    readonly parts: (showing: Showing, live: Standing, side: string) => readonly Part[];
  }
>;
export type PaperName = keyof typeof papers;
export const paperNames = Object.keys(papers) as readonly PaperName[];

/** One paper as plain sections. */
export const paperOf = (
  name: PaperName,
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
): Report => ({
  head: { ...reportHead(job, options), title: papers[name].title },
  parts: papers[name].parts(
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
    title: `${papers[name].title}: ${job.name}`,
    subject: pageFoot,
    version: options.version,
    ...(latest ? { at: latest.at } : {}),
  });
};
