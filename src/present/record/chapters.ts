import type { Job } from '../../core/job/jobSchema.ts';
import type { Standing } from '../../core/job/standing.ts';
import type { LockedMember } from '../../core/lockedIn/result.ts';
import type { Photos } from '../backup.ts';
import { showTime } from '../show.ts';
import { areasOnPaper, lookAgainTable } from '../tables/coverage.ts';
import { instrumentsLine, workLogTable } from '../tables/entered.ts';
import { decisionsTable, findingsTable } from '../tables/findings.ts';
import { fitLines } from '../tables/fit.ts';
import { holdsTable } from '../tables/holds.ts';
import { leftOverColumns, leftOverOnPaper } from '../tables/leftOver.ts';
import { lockedInTable, suspectsTable } from '../tables/lockedIn.ts';
import { lookNextTable } from '../tables/lookNext.ts';
import type { Showing } from '../tables/showing.ts';
import { issuesTable, manualTable, sourcesOnPaper } from '../tables/sources.ts';
import { planTable, spreadTable, swingTable } from '../tables/spread.ts';
import { casesTable, mostClampedTable, redundancyLines } from '../tables/statics.ts';
import { readingsTable, shapeTable, targetsTable } from '../tables/trammel.ts';
import { winAnsi } from '../winAnsi.ts';
import { cautionsFor } from '../words/cautions.ts';
import { countWords, listWords } from '../words/names.ts';
import type { ChapterName } from './chapterNames.ts';
import { heading } from './heading.ts';
import { closeUpParts, mapParts } from './mapParts.ts';
import { photoParts } from './photoSections.ts';
import { firstCutSections, reliefSections } from './reliefSections.ts';
import type { Part, Section } from './sections.ts';
import { shopParts, waysSections } from './shopSections.ts';

/** What a chapter or a paper is made of. */
export interface Matter {
  readonly showing: Showing;
  readonly live: Standing;
  readonly photos: Photos;
  /** Sides in words, for the title block. */
  readonly side: string;
}

const readingColumns = [
  'distance',
  'words',
  'hold',
  'target',
  'found',
  'std',
  'difference',
  'limit',
  'verdict',
  'scatter',
];

type Make = (matter: Matter) => readonly Part[];
const turned =
  (sections: (matter: Matter) => readonly Section[]): Make =>
  (matter) => [{ lie: 'turned', side: matter.side, sections: sections(matter) }];
const upright =
  (sections: (matter: Matter) => readonly Section[]): Make =>
  (matter) => [{ lie: 'upright', side: matter.side, sections: sections(matter) }];

/** What stands in each chapter. */
export const chapters: { readonly [N in ChapterName]: Make } = {
  maps: ({ showing }) => mapParts(showing),
  'close-ups': ({ showing }) => closeUpParts(showing),
  findings: turned(({ showing, live }) => [
    heading('Findings'),
    { kind: 'cautions', cautions: cautionsFor('noSource') },
    { kind: 'table', table: findingsTable(showing, live.photos) },
    { kind: 'subheading', text: 'Decisions' },
    { kind: 'table', table: decisionsTable(showing) },
    heading('Look again'),
    { kind: 'table', table: lookAgainTable(showing) },
  ]),
  photos: ({ showing, live, photos }) => photoParts(showing, live, photos),
  'look-next': turned(({ showing }) => [
    heading('Look here next'),
    { kind: 'cautions', cautions: cautionsFor('lookNext') },
    { kind: 'table', table: lookNextTable(showing), most: 20 },
    heading('Areas and their access'),
    { kind: 'table', table: areasOnPaper(showing) },
  ]),
  strain: turned(({ showing }) => [
    heading('Locked in'),
    { kind: 'cautions', cautions: cautionsFor('lockedIn') },
    { kind: 'lines', lines: lockedInLines(showing) },
    { kind: 'table', table: lockedInTable(strainedFirst(showing)), most: 15 },
    { kind: 'subheading', text: 'Suspected of a bend nobody has seen' },
    { kind: 'table', table: suspectsTable(showing) },
    { kind: 'subheading', text: 'Left-over strength of bent tubes' },
    { kind: 'table', table: leftOverOnPaper(showing), only: leftOverColumns },
  ]),
  relief: turned(({ showing }) => firstCutSections(showing)),
  'relief-cuts': turned(({ showing }) => reliefSections(showing)),
  repairs: ({ showing, live, photos, side }) => shopParts(showing, live, photos, side),
  ways: turned(({ showing }) => waysSections(showing)),
  readings: turned(({ showing, live }) => [
    heading('Trammel readings against targets'),
    { kind: 'cautions', cautions: cautionsFor('measuring') },
    { kind: 'lines', lines: [...fitLines(showing), ...instrumentsLine(live.readings)] },
    { kind: 'table', table: readingsTable(showing), only: readingColumns },
    { kind: 'subheading', text: 'Shape from the readings' },
    { kind: 'table', table: shapeTable(showing) },
    { kind: 'subheading', text: 'Shape bay by bay' },
    { kind: 'table', table: swingTable(showing) },
    { kind: 'subheading', text: 'Spread and draw' },
    { kind: 'cautions', cautions: cautionsFor('spreading') },
    { kind: 'table', table: spreadTable(showing) },
    { kind: 'subheading', text: 'Measuring plan' },
    { kind: 'table', table: planTable(showing), most: 15 },
    { kind: 'subheading', text: 'Hold points' },
    {
      kind: 'table',
      table: holdsTable(showing),
      only: ['hold', 'distance', 'aim', 'limit', 'difference', 'verdict', 'done'],
      most: 15,
    },
    {
      kind: 'lines',
      lines: ['Trammel targets: every one stands on the trammel sheet and in trammel-targets.csv.'],
    },
  ]),
  targets: upright(({ showing }) => [
    heading('Trammel targets in full'),
    {
      kind: 'table',
      table: targetsTable(showing),
      only: ['distance', 'kind', 'bay', 'target', 'basis', 'tolerance'],
    },
    { kind: 'subheading', text: 'Measuring plan in full' },
    { kind: 'table', table: planTable(showing) },
    { kind: 'subheading', text: 'Hold points in full' },
    {
      kind: 'table',
      table: holdsTable(showing),
      only: ['hold', 'distance', 'aim', 'limit', 'difference', 'verdict', 'done'],
    },
  ]),
  loads: upright(({ showing }) => [
    heading('Load cases'),
    { kind: 'table', table: casesTable(showing) },
    { kind: 'subheading', text: 'Redundancy' },
    { kind: 'lines', lines: redundancyLines(showing) },
    { kind: 'table', table: mostClampedTable(showing), most: 15 },
  ]),
  sources: upright(({ showing, live }) => [
    heading('Sources and assumptions'),
    { kind: 'cautions', cautions: cautionsFor('generalRules') },
    { kind: 'table', table: sourcesOnPaper(showing).table },
    { kind: 'subheading', text: 'Computed and assumed', note: 'In brackets how many numbers rest on it.' },
    { kind: 'lines', lines: sourcesOnPaper(showing).running },
    { kind: 'subheading', text: 'Your own data' },
    { kind: 'table', table: manualTable(showing, live.manual) },
  ]),
  questions: upright(({ showing, live }) => [
    ...(live.progress.length > 0
      ? ([heading('Work log'), { kind: 'table', table: workLogTable(showing, live.progress) }] as const)
      : []),
    heading('Open questions'),
    { kind: 'table', table: issuesTable(showing) },
    { kind: 'lines', lines: unprintable(showing.job) },
    ...(live.notes.length > 0
      ? ([
          heading('Notes'),
          {
            kind: 'lines',
            lines: live.notes.map(
              (note) => `${showTime(note.at)}, ${note.by}${note.of ? `, on ${note.of}` : ''}: ${note.words}`,
            ),
          },
        ] as const)
      : []),
  ]),
};

/** What a person typed that the fonts of paper lack: said, so that a `?` is never taken for theirs. */
const unprintable = (job: Job): readonly string[] => {
  const lost = new Set(winAnsi(JSON.stringify(job)).lost).size;
  return lost === 0
    ? []
    : [
        `${countWords(lost, 'character')} of this job cannot be printed and ${lost === 1 ? 'stands' : 'stand'} as "?" here; the job and the CSV files have ${lost === 1 ? 'it' : 'them'}.`,
      ];
};

/** The members with the largest locked-in stress first, by the upper end of its range. */
const strainedFirst = (showing: Showing): Showing => {
  const { assessment } = showing;
  const most = ({ stressPsi }: LockedMember): number => stressPsi.high ?? stressPsi.value;
  const members = [...assessment.lockedIn.members].sort((a, b) => most(b) - most(a));
  return { ...showing, assessment: { ...assessment, lockedIn: { ...assessment.lockedIn, members } } };
};

const lockedInLines = ({ assessment: { lockedIn } }: Showing): readonly string[] => [
  ...(lockedIn.sources.length > 0
    ? [`Worked from the measured bends of ${listWords(lockedIn.sources)}.`]
    : []),
  ...(lockedIn.unmeasured.length > 0
    ? [`Missing, because their size is not given: ${listWords(lockedIn.unmeasured)}.`]
    : []),
  ...(lockedIn.kind === 'movesFreely' ? ['The truss moves freely as held, so nothing is worked.'] : []),
];
