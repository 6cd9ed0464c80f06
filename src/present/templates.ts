import { disposition } from '../core/disposition/disposition.ts';
import type { Job, RecordOf } from '../core/job/jobSchema.ts';
import { latestOf } from '../core/job/stampOrder.ts';
import { standing } from '../core/job/standing.ts';
import type { Design, Method, Piece, SpliceRow } from '../core/splice/result.ts';
import { spliceFor } from '../core/splice/splice.ts';
import { expandTruss } from '../core/truss/truss.ts';
import { VERSION } from '../core/version.ts';
import { walkRound } from '../core/walkRound/walkRound.ts';
import { contentHash } from './contentHash.ts';
import { svgText } from './draw/svg.ts';
import { benchTemplates, PAPER_MM, type TemplateOptions, templatesOf } from './draw/template.ts';
import { drawingTemplate } from './draw/templateDrawing.ts';
import { templateSheets } from './draw/templateSheet.ts';
import type { Template } from './draw/templateWrap.ts';
import { pdfBytes } from './pdf.ts';
import { reportHead } from './record/head.ts';
import type { ReportHead } from './record/sections.ts';
import type { ReportFile } from './report.ts';
import { pageFoot } from './words/cautions.ts';
import { sideWords } from './words/names.ts';

export interface TemplateFileOptions extends TemplateOptions {
  readonly paper: 'a4' | 'letter';
  /** Left out: every method that fits. */
  readonly methods?: readonly Method[];
}

/** Ids may carry signs that a file's name may not. */
const named = (id: string): string => id.replace(/[^A-Za-z0-9.-]+/g, '_');

/**
 * Templates of one tube as files: one PDF of all sheets, and each sheet as SVG. Same tube and options, same bytes.
 *
 * @param at  stamp of the latest record, for the file's date
 */
export const templateFilesOf = async (
  head: ReportHead,
  piece: Piece,
  designs: readonly Design[],
  side: string,
  options: TemplateFileOptions,
  at?: string,
): Promise<readonly ReportFile[]> => {
  const wanted = designs.filter((d) => d.plan && (options.methods ?? [d.method]).includes(d.method));
  const templates: readonly Template[] = [
    ...wanted.flatMap((d) =>
      [drawingTemplate(piece, d, options.units), ...templatesOf(piece, d, options)].flatMap((t) =>
        t ? [{ ...t, id: `${d.method}-${t.id}` }] : [],
      ),
    ),
    ...benchTemplates(piece, options.units),
  ];
  const sheets = templateSheets(head, templates, side);
  const name = named(piece.id);
  const pdf = await pdfBytes(
    sheets.map((s) => s.sheet),
    {
      title: `Templates: ${piece.id}: ${head.job}`,
      subject: pageFoot,
      version: head.version,
      ...(at ? { at } : {}),
    },
  );
  const encoder = new TextEncoder();
  return [
    { name: `templates-${name}.pdf`, bytes: pdf },
    ...sheets.map(({ template, sheet }, k) => ({
      name: `template-${name}-${String(k + 1).padStart(2, '0')}-${named(template.id)}.svg`,
      bytes: encoder.encode(svgText(sheet, `${template.title}, ${piece.id}`)),
    })),
  ];
};

/** One member of a job, worked without the rest of the chain: templates need no statics. */
const rowOf = (job: Job, memberId: string): { row: SpliceRow; side: string } | null => {
  const live = standing(job.records);
  const truss = expandTruss(live.model ?? job.model);
  const coverage = walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
  const manual: readonly RecordOf<'manual'>[] = live.manual;
  const row = spliceFor(truss, coverage, disposition(truss, coverage, manual), manual, memberId);
  const member = truss.members.find((m) => m.id === memberId);
  return row && member ? { row, side: `Pilot's ${sideWords[member.side]}` } : null;
};

/**
 * Full-size templates of one member: scarf and fishmouth wraps, rosette layouts, copes, saw guide, formed blocks,
 * roundness gauge. Nothing for a member the truss does not have.
 */
export const templateFiles = async (
  job: Job,
  memberId: string,
  options: TemplateFileOptions,
): Promise<readonly ReportFile[]> => {
  const found = rowOf(job, memberId);
  if (!found) return [];
  const head = {
    ...reportHead(job, {
      paper: options.paper,
      units: options.units,
      version: VERSION,
      hash: contentHash(job),
    }),
    title: `Templates · ${memberId} · paper ${options.paperMm ?? PAPER_MM} mm`,
  };
  const { row, side } = found;
  return templateFilesOf(head, row.piece, row.designs, side, options, latestOf(job.records)?.at);
};
