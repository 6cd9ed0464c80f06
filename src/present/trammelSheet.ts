import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { latestOf } from '../core/job/stampOrder.ts';
import { svgText } from './draw/svg.ts';
import { trammelBodies } from './draw/trammelSheet.ts';
import { pdfBytes } from './pdf.ts';
import { type ReportOptions, reportHead } from './record/head.ts';
import { framed } from './sheet/frame.ts';
import type { Sheet } from './sheet/paper.ts';
import { pageFoot } from './words/cautions.ts';

/** The trammel sheet of a job, framed, page by page. */
export const trammelSheets = (
  job: Job,
  assessment: Pick<Assessment, 'trammel'>,
  options: ReportOptions,
): readonly Sheet[] => {
  const head = { ...reportHead(job, options), title: 'Trammel sheet' };
  const bodies = trammelBodies(assessment.trammel, options.paper, options.units);
  return bodies.map((body, k) => framed(head, body, k + 1, bodies.length));
};

/** The trammel sheet as PDF: true distances in left and right pairs, with blanks to fill by hand. */
export const trammelSheetPdf = (
  job: Job,
  assessment: Pick<Assessment, 'trammel'>,
  options: ReportOptions,
): Promise<Uint8Array> => {
  const latest = latestOf(job.records);
  return pdfBytes(trammelSheets(job, assessment, options), {
    title: `Trammel sheet: ${job.name}`,
    subject: pageFoot,
    version: options.version,
    ...(latest ? { at: latest.at } : {}),
  });
};

/** One page of it as SVG, for a screen. */
export const trammelSheetSvg = (sheet: Sheet): string => svgText(sheet, 'Trammel sheet');
