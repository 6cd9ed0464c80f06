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
import { type ReportOptions, reportHead } from './record/head.ts';
import { damageReport, type ReportPart } from './record.ts';
import { sheets } from './sheet/layout.ts';
import { shopTemplates } from './shopTemplates.ts';
import { sinceOf } from './since.ts';
import type { SinceAsk } from './sinceAsk.ts';
import { allTables } from './tables/allTables.ts';
import { trammelSheetPdf } from './trammelSheet.ts';
import { pageFoot } from './words/cautions.ts';

/** A file to write or to offer: a name, `/` between folders, and its bytes. */
export interface ReportFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What a person chooses of a report. */
export interface ReportChoice extends Pick<ReportOptions, 'paper' | 'units'> {
  /** Chapters and papers in `report.pdf`; left out: the usual chapters, and every paper by itself beside it. */
  readonly holds?: readonly ReportPart[];
  /** What the supplement is held against; left out: the plan as frozen last. */
  readonly since?: SinceAsk;
}

const into = (folder: string, files: readonly ReportFile[]): readonly ReportFile[] =>
  files.map(({ name, bytes }) => ({ name: `${folder}/${name}`, bytes }));

const optionsOf = (job: Job, { paper, units }: ReportChoice): ReportOptions => ({
  paper,
  units,
  version: VERSION,
  hash: contentHash(job),
});

/** Every paper of the work as a PDF of its own, and the templates as PDF and SVG. */
const ownFiles = async (
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
  photos: Photos,
  since: ReturnType<typeof sinceOf>,
): Promise<readonly ReportFile[]> => {
  const papers: ReportFile[] = [
    { name: 'trammel-sheet.pdf', bytes: await trammelSheetPdf(job, assessment, options) },
  ];
  for (const name of paperNames)
    papers.push({
      name: `${name}.pdf`,
      bytes: await paperPdf(name, job, assessment, options, photos, since),
    });
  return [...into('papers', papers), ...into('templates', await shopTemplates(job, assessment, options))];
};

/**
 * Everything a job is handed over as: `report.pdf`; the papers of the work and templates of the tubes to be spliced or replaced, unless
 * `holds` says what the one PDF is to hold; every drawing as SVG, the tagged truss as glTF, and one CSV a table.
 * The one function that both the screen and the terminal call; same job, choice and photos, same bytes.
 */
export const reportFiles = async (
  job: Job,
  choice: ReportChoice,
  photos: Photos = new Map(),
): Promise<readonly ReportFile[]> => {
  // worked here without a question, so that what is selected on a screen cannot change the paper
  const assessment = assess(job);
  const since = sinceOf(job, choice.since);
  const options = optionsOf(job, choice);
  const report = damageReport(job, assessment, options, photos, choice.holds, since);
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
    ...(choice.holds ? [] : await ownFiles(job, assessment, options, photos, since)),
    ...into(
      'drawings',
      drawingFiles(
        choice.holds ? damageReport(job, assessment, options, photos) : report,
        paperOf('materials', job, assessment, options),
        paperOf('as-left', job, assessment, options),
      ),
    ),
    {
      name: 'truss.gltf',
      bytes: encoder.encode(trussGltf(assessment, job.name, report.head.revision)),
    },
    ...into(
      'tables',
      allTables({ job, assessment, units: options.units, ...(since ? { since } : {}) }).map((table) => ({
        name: `${table.name}.csv`,
        bytes: encoder.encode(csvText(table, head)),
      })),
    ),
  ];
};

/** One paper of the work by itself, or the tagged truss: the same bytes as among all of them. */
export const paperFile = async (
  job: Job,
  choice: ReportChoice,
  name: PaperName | 'truss',
  photos: Photos = new Map(),
): Promise<ReportFile> => {
  const assessment = assess(job);
  const options = optionsOf(job, choice);
  if (name === 'truss') {
    const text = trussGltf(assessment, job.name, reportHead(job, options).revision);
    return { name: 'truss.gltf', bytes: new TextEncoder().encode(text) };
  }
  const since = name === 'supplement' ? sinceOf(job, choice.since) : undefined;
  return { name: `${name}.pdf`, bytes: await paperPdf(name, job, assessment, options, photos, since) };
};

/** The supplement as its paper and its CSV. */
export const supplementFiles = async (
  job: Job,
  choice: ReportChoice,
  photos: Photos = new Map(),
): Promise<readonly ReportFile[]> => {
  const paper = await paperFile(job, choice, 'supplement', photos);
  const options = optionsOf(job, choice);
  const since = sinceOf(job, choice.since);
  const table = allTables({
    job,
    assessment: assess(job),
    units: options.units,
    ...(since ? { since } : {}),
  }).find(({ name }) => name === 'supplement')!;
  const { date, practice } = reportHead(job, options);
  const text = csvText(table, { job: job.name, date, version: options.version, practice });
  return [paper, { name: 'supplement.csv', bytes: new TextEncoder().encode(text) }];
};
