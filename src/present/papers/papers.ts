import type { Assessment } from '../../core/assessment.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import { latestOf } from '../../core/job/stampOrder.ts';
import { standing } from '../../core/job/standing.ts';
import type { Photos } from '../backup.ts';
import { pdfBytes } from '../pdf.ts';
import type { Matter } from '../record/chapters.ts';
import { type ReportOptions, reportHead } from '../record/head.ts';
import { decidedIds, pairSections } from '../record/photoShots.ts';
import type { Part, Report } from '../record/sections.ts';
import { sheets } from '../sheet/layout.ts';
import type { Since } from '../since.ts';
import { pageFoot } from '../words/cautions.ts';
import { asLeftSheets } from './asLeftSheets.ts';
import { entrySheets } from './entrySheets.ts';
import { estimateSheets, materialsSheets } from './estimateSheets.ts';
import { handOverSheets } from './handOverSheets.ts';
import { holdSheets } from './holdSheets.ts';
import { ownerSheets } from './ownerSheets.ts';
import { startSheets } from './startSheets.ts';
import { supplementSheets } from './supplementSheets.ts';
import { tagSheets } from './tagSheets.ts';
import { type PaperName, paperTitles } from './titles.ts';
import { weldSheets } from './weldSheets.ts';
import { workCards } from './workCards.ts';

/** Materials, then the pictures of what they are for. */
const materials = ({ showing, live, photos, side }: Matter): readonly Part[] => {
  const pictures = pairSections(decidedIds(showing), showing, live, photos);
  const made = materialsSheets(showing, side);
  return pictures.length === 0 ? made : [...made, { lie: 'turned', side, sections: pictures }];
};

/** What stands on each paper. */
export const paperParts: { readonly [N in PaperName]: (matter: Matter) => readonly Part[] } = {
  'start-card': ({ showing, live, side }) => startSheets(showing, live, side),
  'work-cards': ({ showing, side }) => workCards(showing, side),
  'hold-sheets': ({ showing, side }) => holdSheets(showing, side),
  materials,
  estimate: ({ showing, live, side }) => estimateSheets(showing, live, side),
  supplement: ({ showing, live, side, photos }) => supplementSheets(showing, live, side, photos),
  'hand-over': ({ showing, live, side }) => handOverSheets(showing, live, side),
  'weld-list': ({ showing, live, side }) => weldSheets(showing, live, side),
  'as-left': ({ showing, live, side, photos }) => asLeftSheets(showing, live, side, photos),
  'entry-draft': ({ showing, live, side }) => entrySheets(showing, live, side),
  'owner-page': ({ showing, side }) => ownerSheets(showing, side),
  tags: ({ showing, side }) => tagSheets(showing, side),
};

/** One paper as plain sections. */
export const paperOf = (
  name: PaperName,
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
  photos: Photos = new Map(),
  since?: Since,
): Report => ({
  head: { ...reportHead(job, options), title: paperTitles[name] },
  parts: paperParts[name]({
    showing: { job, assessment, units: options.units, ...(since ? { since } : {}) },
    live: standing(job.records),
    photos,
    side: "Left and right are the pilot's",
  }),
});

/** One paper as PDF. Same job, options and photos, same bytes. */
export const paperPdf = (
  name: PaperName,
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
  photos: Photos = new Map(),
  since?: Since,
): Promise<Uint8Array> => {
  const latest = latestOf(job.records);
  return pdfBytes(
    sheets(paperOf(name, job, assessment, options, photos, since)),
    {
      title: `${paperTitles[name]}: ${job.name}`,
      subject: pageFoot,
      version: options.version,
      ...(latest ? { at: latest.at } : {}),
    },
    photos,
  );
};
