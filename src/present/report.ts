import { assess } from '../core/assess.ts';
import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { latestOf } from '../core/job/stampOrder.ts';
import { VERSION } from '../core/version.ts';
import type { Photos } from './backup.ts';
import { contentHash } from './contentHash.ts';
import { csvText } from './csv.ts';
import { drawingFiles } from './drawings.ts';
import { trussGltf } from './gltf.ts';
import { paperOf, paperPdf } from './papers/papers.ts';
import { type PaperName, paperNames } from './papers/titles.ts';
import { pdfBytes } from './pdf.ts';
import { damageReport, type ReportOptions, reportHead } from './record.ts';
import { sheets } from './sheet/layout.ts';
import { shopTemplates } from './shopTemplates.ts';
import { allTables } from './tables/allTables.ts';
import { trammelSheetPdf } from './trammelSheet.ts';
import { pageFoot } from './words/cautions.ts';

/** A file to write or to offer: a name without folder, and its bytes. */
export interface ReportFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const paperFiles = async (
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
): Promise<readonly ReportFile[]> => {
  const files: ReportFile[] = [];
  for (const name of paperNames)
    files.push({ name: `${name}.pdf`, bytes: await paperPdf(name, job, assessment, options) });
  return files;
};

/**
 * Everything a job is handed over as: `report.pdf`, `trammel-sheet.pdf`, the papers of the work, templates of the tubes to be spliced or replaced, every drawing as SVG, the tagged truss as glTF, and one CSV a table, in the order of the work.
 * The one function that both the screen and the terminal call; same job, options and photos, same bytes.
 */
export const reportFiles = async (
  job: Job,
  choice: Pick<ReportOptions, 'paper' | 'units'>,
  photos: Photos = new Map(),
): Promise<readonly ReportFile[]> => {
  // worked here without a question, so that what is selected on a screen cannot change the paper
  const assessment = assess(job);
  const options: ReportOptions = { ...choice, version: VERSION, hash: contentHash(job) };
  const report = damageReport(job, assessment, options, photos);
  const latest = latestOf(job.records);
  const pdf = await pdfBytes(
    sheets(report),
    {
      title: `${report.head.title}: ${job.name}`,
      subject: pageFoot,
      version: options.version,
      ...(latest ? { at: latest.at } : {}),
    },
    photos,
  );
  const head = {
    job: job.name,
    date: report.head.date,
    version: options.version,
    practice: report.head.practice,
  };
  const encoder = new TextEncoder();
  return [
    { name: 'report.pdf', bytes: pdf },
    { name: 'trammel-sheet.pdf', bytes: await trammelSheetPdf(job, assessment, options) },
    ...(await paperFiles(job, assessment, options)),
    ...(await shopTemplates(job, assessment, options)),
    ...drawingFiles(report, paperOf('materials', job, assessment, options)),
    {
      name: 'truss.gltf',
      bytes: encoder.encode(trussGltf(assessment, job.name, report.head.revision)),
    },
    ...allTables({ job, assessment, units: options.units }).map((table) => ({
      name: `${table.name}.csv`,
      bytes: encoder.encode(csvText(table, head)),
    })),
  ];
};

/** One paper of the work by itself, or the tagged truss: the same bytes as among all of them. */
export const paperFile = async (
  job: Job,
  choice: Pick<ReportOptions, 'paper' | 'units'>,
  name: PaperName | 'truss',
): Promise<ReportFile> => {
  const assessment = assess(job);
  const options: ReportOptions = { ...choice, version: VERSION, hash: contentHash(job) };
  if (name === 'truss') {
    const text = trussGltf(assessment, job.name, reportHead(job, options).revision);
    return { name: 'truss.gltf', bytes: new TextEncoder().encode(text) };
  }
  return { name: `${name}.pdf`, bytes: await paperPdf(name, job, assessment, options) };
};
