import { VERSION } from '../../core/version.ts';
import { benchTemplateFiles } from '../../present/benchTemplates.ts';
import { contentHash } from '../../present/contentHash.ts';
import { couponFiles } from '../../present/coupon.ts';
import { paperFile, reportFiles, supplementFiles } from '../../present/report.ts';
import { templateFiles } from '../../present/templates.ts';
import { trammelSheetPdf } from '../../present/trammelSheet.ts';
import type { PaperFile, PaperRequest } from './protocol.ts';

/** Draws what is asked for. Same request, same bytes. */
export const drawFiles = async (request: PaperRequest): Promise<readonly PaperFile[]> => {
  switch (request.kind) {
    case 'report':
      return reportFiles(request.job, request.choice, request.photos);
    case 'paper':
      return [await paperFile(request.job, request.choice, request.name, request.photos)];
    case 'supplement':
      return supplementFiles(request.job, request.choice, request.photos);
    case 'trammelSheet': {
      const { job, trammel, choice } = request;
      const options = { ...choice, version: VERSION, hash: contentHash(job) };
      return [{ name: 'trammel-sheet.pdf', bytes: await trammelSheetPdf(job, { trammel }, options) }];
    }
    case 'templates':
      return templateFiles(request.job, request.member, request.options);
    case 'benchTemplates':
      return benchTemplateFiles(request.piece, request.design, request.options);
    case 'coupon':
      return couponFiles(request.options);
  }
};
