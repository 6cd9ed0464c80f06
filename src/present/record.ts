import type { Assessment } from '../core/assessment.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { latestOf } from '../core/job/stampOrder.ts';
import { standing } from '../core/job/standing.ts';
import type { LockedMember } from '../core/lockedIn/result.ts';
import { expandTruss } from '../core/truss/truss.ts';
import { walkRound } from '../core/walkRound/walkRound.ts';
import type { Photos } from './backup.ts';
import type { MapViewName } from './draw/project.ts';
import { heading } from './record/heading.ts';
import { pageOne } from './record/pageOne.ts';
import { photoParts } from './record/photoSections.ts';
import { reliefSections } from './record/reliefSections.ts';
import type { Part, Report, ReportHead } from './record/sections.ts';
import { shopParts } from './record/shopSections.ts';
import { showTime, type Units } from './show.ts';
import { areasTable, lookAgainTable } from './tables/coverage.ts';
import { instrumentsLine, workLogTable } from './tables/entered.ts';
import { decisionsTable, findingsTable } from './tables/findings.ts';
import { fitLines } from './tables/fit.ts';
import { holdsTable } from './tables/holds.ts';
import { leftOverColumns, leftOverOnPaper } from './tables/leftOver.ts';
import { lockedInTable, suspectsTable } from './tables/lockedIn.ts';
import { lookNextTable } from './tables/lookNext.ts';
import type { Showing } from './tables/showing.ts';
import { issuesTable, manualTable, sourcesTable } from './tables/sources.ts';
import { planTable, spreadTable, swingTable } from './tables/spread.ts';
import { casesTable, mostClampedTable, redundancyLines } from './tables/statics.ts';
import { readingsTable, shapeTable, targetsTable } from './tables/trammel.ts';
import { winAnsi } from './winAnsi.ts';
import { cautionsFor } from './words/cautions.ts';
import { countWords, listWords } from './words/names.ts';

/** What a report needs besides the job and its results; all of it is printed. */
export interface ReportOptions {
  readonly paper: 'a4' | 'letter';
  readonly units: Units;
  /** Version of the program. */
  readonly version: string;
  /** Digest of the job document, made at the rim. */
  readonly hash: string;
}

/** What nobody has looked at, for the head of every sheet. */
const unseenLine = ({ model, records }: Job): string => {
  const live = standing(records);
  const truss = expandTruss(live.model ?? model);
  const { notLookedAt } = walkRound(
    truss,
    live.looks,
    live.findings,
    live.decisions,
    live.areas,
    live.clashes,
  );
  return `Not looked at: ${notLookedAt.members.length} of ${countWords(truss.members.length, 'member')}, ${notLookedAt.clusters.length} of ${countWords(truss.clusters.length, 'cluster')}`;
};

/** What every sheet says of the job. The date is the latest record's, so that the same job prints the same bytes on any day. */
export const reportHead = (job: Job, options: ReportOptions): ReportHead => {
  const latest = latestOf(job.records);
  return {
    unseen: unseenLine(job),
    title: 'Damage report',
    job: job.name,
    aircraft: job.aircraft ?? 'not entered',
    practice: job.purpose === 'practice',
    date: latest ? showTime(latest.at) : 'no record yet',
    revision: `${countWords(job.records.length, 'record')} · ${options.hash.slice(0, 12)}`,
    version: options.version,
    paper: options.paper,
  };
};

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
const views: readonly (readonly MapViewName[])[] = [
  ['leftSide'],
  ['rightSide'],
  ['plan', 'fromBelow'],
  ['threeQuarter'],
];

const mapParts = ({ assessment: { truss, coverage } }: Showing): readonly Part[] => [
  ...views.map(
    (pair): Part => ({
      lie: 'turned',
      side: capital(pair.map((name) => sideOf[name]).join(' · ')),
      sections: [{ kind: 'map', truss, coverage, views: pair }],
    }),
  ),
  {
    lie: 'turned',
    side: "From ahead: pilot's left is on the right",
    sections: [{ kind: 'stations', truss, coverage }],
  },
];

/** A close-up of every bay with damage or a decision on it: both sides, above and below. */
const closeUpParts = ({ assessment: { truss, coverage } }: Showing): readonly Part[] => {
  const hurt = new Set(coverage.marks.filter((m) => m.findings.length > 0 || m.choice).map((m) => m.id));
  return truss.bays
    .filter(({ members }) => members.some((id) => hurt.has(id)))
    .map(
      ({ id, members }): Part => ({
        lie: 'turned',
        side: `Bay ${id}, close`,
        sections: [{ kind: 'map', truss, coverage, views: ['threeQuarter'], only: members }],
      }),
    );
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const sideOf = {
  leftSide: "Pilot's left",
  rightSide: "pilot's right",
  plan: "Top: pilot's right is up",
  fromBelow: "bottom: pilot's left is up",
  fromAhead: "From ahead: pilot's left is on the right",
  threeQuarter: "From ahead, above, pilot's left",
} as const satisfies Record<MapViewName, string>;

/**
 * The damage report as plain sections: page one with what nobody has looked at, the maps, then every finding, reading, sum and source.
 * It records; it gives no verdict on the aircraft.
 */
export const damageReport = (
  job: Job,
  assessment: Assessment,
  options: ReportOptions,
  photos: Photos = new Map(),
): Report => {
  const showing: Showing = { job, assessment, units: options.units };
  const live = standing(job.records);
  const head = reportHead(job, options);
  const side = "Left and right are the pilot's";
  return {
    head,
    parts: [
      { lie: 'upright', side, sections: pageOne(showing, head, live) },
      ...mapParts(showing),
      {
        lie: 'turned',
        side,
        sections: [
          heading('Findings'),
          { kind: 'cautions', cautions: cautionsFor('noSource') },
          { kind: 'table', table: findingsTable(showing, live.photos) },
          { kind: 'subheading', text: 'Decisions' },
          { kind: 'table', table: decisionsTable(showing) },
          heading('Look again'),
          { kind: 'table', table: lookAgainTable(showing) },
          heading('Look here next'),
          { kind: 'cautions', cautions: cautionsFor('lookNext') },
          { kind: 'table', table: lookNextTable(showing), most: 40 },
          heading('Areas and their access'),
          { kind: 'table', table: areasTable(showing) },
        ],
      },
      ...photoParts(showing, live.photos, photos),
      {
        lie: 'turned',
        side,
        sections: [
          heading('Locked in'),
          { kind: 'cautions', cautions: cautionsFor('lockedIn') },
          { kind: 'lines', lines: lockedInLines(showing) },
          { kind: 'table', table: lockedInTable(strainedFirst(showing)), most: 30 },
          { kind: 'subheading', text: 'Suspected of a bend nobody has seen' },
          { kind: 'table', table: suspectsTable(showing) },
          { kind: 'subheading', text: 'Left-over strength of bent tubes' },
          { kind: 'table', table: leftOverOnPaper(showing), only: leftOverColumns },
          ...reliefSections(showing),
        ],
      },
      ...closeUpParts(showing),
      ...shopParts(showing, side),
      {
        lie: 'turned',
        side,
        sections: [
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
        ],
      },
      {
        lie: 'upright',
        side,
        sections: [
          heading('Trammel targets'),
          {
            kind: 'table',
            table: targetsTable(showing),
            only: ['distance', 'kind', 'bay', 'target', 'basis', 'tolerance'],
          },
          { kind: 'subheading', text: 'Measuring plan' },
          { kind: 'table', table: planTable(showing), most: 50 },
          { kind: 'subheading', text: 'Hold points' },
          {
            kind: 'table',
            table: holdsTable(showing),
            only: ['hold', 'distance', 'aim', 'limit', 'difference', 'verdict', 'done'],
            most: 50,
          },
        ],
      },
      {
        lie: 'upright',
        side,
        sections: [
          heading('Load cases'),
          { kind: 'table', table: casesTable(showing) },
          { kind: 'subheading', text: 'Redundancy' },
          { kind: 'lines', lines: redundancyLines(showing) },
          { kind: 'table', table: mostClampedTable(showing), most: 15 },
          heading('Sources and assumptions'),
          { kind: 'cautions', cautions: cautionsFor('generalRules') },
          { kind: 'table', table: sourcesTable(showing) },
          { kind: 'subheading', text: 'Your own data' },
          { kind: 'table', table: manualTable(showing, live.manual) },
          ...(live.progress.length > 0
            ? ([heading('Work log'), { kind: 'table', table: workLogTable(showing, live.progress) }] as const)
            : []),
          heading('Open questions'),
          { kind: 'table', table: issuesTable(showing) },
          { kind: 'lines', lines: unprintable(job) },
          ...(live.notes.length > 0
            ? ([
                heading('Notes'),
                {
                  kind: 'lines',
                  lines: live.notes.map(
                    (note) =>
                      `${showTime(note.at)}, ${note.by}${note.of ? `, on ${note.of}` : ''}: ${note.words}`,
                  ),
                },
              ] as const)
            : []),
        ],
      },
    ],
  };
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
