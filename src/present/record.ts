import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { standing } from '../core/job/standing.ts';
import type { Photos } from './backup.ts';
import { paperParts } from './papers/papers.ts';
import { type PaperName, paperNames, paperTitles } from './papers/titles.ts';
import { type ChapterName, chapterNames, chapterTitles, usualChapters } from './record/chapterNames.ts';
import { chapters, type Matter } from './record/chapters.ts';
import { type ReportOptions, reportHead } from './record/head.ts';
import { pageOne } from './record/pageOne.ts';
import type { Part, Report } from './record/sections.ts';
import type { Since } from './since.ts';

/** What can stand in `report.pdf` behind page one: chapters of the damage report, and papers of the work. */
export type ReportPart = ChapterName | PaperName;
export const reportParts: readonly ReportPart[] = [...chapterNames, ...paperNames];
const titles: Readonly<Record<ReportPart, string>> = { ...chapterTitles, ...paperTitles };

const isPaper = (name: ReportPart): name is PaperName => Object.hasOwn(paperTitles, name);

/** The parts of one chapter or paper; a paper begins a sheet of its own. A part without anything in it is left out. */
const partsOf = (name: ReportPart, matter: Matter): readonly Part[] => {
  const made = isPaper(name) ? paperParts[name](matter) : chapters[name](matter);
  return made
    .filter(({ sections }) => sections.length > 0)
    .map((part, k) => ({
      ...part,
      ...(isPaper(name) && k === 0 ? { fresh: true } : {}),
      sections: k === 0 ? [{ kind: 'mark', name }, ...part.sections] : part.sections,
    }));
};

/**
 * The damage report as plain sections: page one with what nobody has looked at and what stands where, then the chapters chosen,
 * in their fixed order. It records; it gives no verdict on the aircraft.
 */
export const damageReport = (
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
  photos: Photos = new Map(),
  chosen: readonly ReportPart[] = usualChapters,
  since?: Since,
): Report => {
  const live = standing(job.records);
  const head = reportHead(job, options);
  const side = "Left and right are the pilot's";
  const showing = { job, assessment, units: options.units, ...(since ? { since } : {}) };
  const bodies = reportParts
    .filter((name) => chosen.includes(name))
    .map((name) => ({ name, parts: partsOf(name, { showing, live, photos, side }) }))
    .filter(({ parts }) => parts.length > 0);
  const contents = bodies.map(({ name }) => ({ mark: name, title: titles[name] }));
  return {
    head,
    parts: [
      { lie: 'upright', side, sections: pageOne(showing, head, live, contents) },
      ...bodies.flatMap(({ parts }, k) =>
        k === 0 ? parts.map((part, n) => (n === 0 ? { ...part, fresh: true } : part)) : parts,
      ),
    ],
  };
};
