import type { Design, Piece } from '../core/splice/result.ts';
import { VERSION } from '../core/version.ts';
import type { ReportFile } from './report.ts';
import { type TemplateFileOptions, templateFilesOf } from './templates.ts';

/** Templates of one tube on the bench: no job, no truss, so no side and no revision. Same tube, same bytes. */
export const benchTemplateFiles = (
  piece: Piece,
  design: Design,
  options: TemplateFileOptions,
): Promise<readonly ReportFile[]> =>
  templateFilesOf(
    {
      title: 'Bench sums · templates',
      job: 'Bench sums, no job',
      aircraft: 'not entered',
      practice: false,
      date: 'no record',
      revision: 'no job',
      version: VERSION,
      paper: options.paper,
    },
    piece,
    [design],
    'one tube on the bench',
    options,
  );
