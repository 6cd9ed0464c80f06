import type { Issue } from '../../core/base/issue.ts';
import type { JobRecord, RecordOf } from '../../core/job/jobSchema.ts';
import { showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { refWords, restsIn } from '../words/basis.ts';
import { issueSentence, mendSentence, placeWords } from '../words/issues.ts';
import { basisWords } from '../words/record.ts';
import type { Showing } from './showing.ts';

interface SourceRow {
  readonly kind: string;
  readonly words: string;
  readonly used: number | null;
}

/** Everything the numbers rest on, once each: published, entered, measured, computed, assumed. */
export const sourcesTable = ({ job, assessment }: Showing): Table => {
  const { bases, assumed } = restsIn(assessment);
  const measured = bases.filter(({ basis }) => basis.kind === 'measured');
  const rows: SourceRow[] = [
    { kind: 'model', words: `${job.model.name}: ${job.model.source}`, used: null },
    { kind: 'datum', words: job.model.datum, used: null },
    ...bases
      .filter(({ basis }) => basis.kind !== 'measured')
      .map(({ basis, count }) => ({ kind: basisWords[basis.kind], words: refWords(basis), used: count })),
    ...(measured.length > 0
      ? [
          {
            kind: basisWords.measured,
            words: 'the readings and findings of this job, each under its record',
            used: measured.reduce((sum, { count }) => sum + count, 0),
          },
        ]
      : []),
    ...job.model.loadCases.map((loadCase) => ({
      kind: 'loads',
      words: `${loadCase.name}: ${loadCase.source ?? 'no source given'}`,
      used: null,
    })),
    ...assumed.map((words) => ({ kind: basisWords.assumed, words, used: null })),
  ];
  return tableOf<SourceRow>(
    {
      name: 'sources',
      title: 'Sources and assumptions',
      empty: 'none',
      columns: [
        { id: 'kind', title: 'Kind', text: (row) => row.kind },
        { id: 'words', title: 'Source or assumption', text: (row) => row.words },
        {
          id: 'used',
          title: 'Numbers resting on it',
          align: 'right',
          text: (row) => (row.used === null ? '' : String(row.used)),
          raw: (row) => row.used,
        },
      ],
    },
    rows,
  );
};

/** Kinds that are many short words each: on paper they run on, one after the other. */
const runningKinds: readonly string[] = [basisWords.computed, basisWords.assumed, basisWords.practice];

/** The sources as they go on paper: a table of what is published, drawn, entered or measured, then the rest as running words. */
export const sourcesOnPaper = (
  showing: Showing,
): { readonly table: Table; readonly running: readonly string[] } => {
  const table = sourcesTable(showing);
  const kindOf = (row: Table['rows'][number]): string => row.cells[0]!.text;
  return {
    table: { ...table, rows: table.rows.filter((row) => !runningKinds.includes(kindOf(row))) },
    running: runningKinds.flatMap((kind) => {
      const rows = table.rows.filter((row) => kindOf(row) === kind);
      const words = rows.map(
        ({ cells }) => `${cells[1]!.text}${cells[2]!.text ? ` (${cells[2]!.text})` : ''}`,
      );
      return rows.length === 0
        ? []
        : [`${kind.charAt(0).toUpperCase()}${kind.slice(1)}: ${words.join('; ')}.`];
    }),
  };
};

/** Words as they stand; an order or a frozen plan has a line a step, which a reader finds in the plan itself. */
const wordsShown = ({ topic, words = '' }: RecordOf<'manual'>): string =>
  topic.startsWith('plan-') && words.includes('\n')
    ? `${words.split('\n').length} lines; they stand in the job file and in manual-data.csv`
    : words;

/** The user's own data, which outrank the general rules, shown as theirs. */
export const manualTable = ({ job }: Showing, manual: readonly RecordOf<'manual'>[]): Table =>
  tableOf(
    {
      name: 'manual-data',
      title: 'Your own data',
      note: `Entered for ${job.name}; it outranks the general rules.`,
      empty: 'No data of your own is loaded.',
      columns: [
        { id: 'topic', title: 'Topic', text: (row) => row.topic },
        {
          id: 'value',
          title: 'Value',
          unit: 'in',
          align: 'right',
          text: (row) => (row.valueIn === undefined ? '' : String(row.valueIn)),
          raw: (row) => row.valueIn ?? null,
        },
        { id: 'words', title: 'Words', text: wordsShown, raw: (row) => row.words ?? '' },
        { id: 'source', title: 'Source', text: (row) => row.source },
        { id: 'by', title: 'By', text: (row) => row.by },
        { id: 'at', title: 'When', text: (row) => showTime(row.at), raw: (row) => row.at },
      ],
    },
    manual,
  );

interface IssueRow {
  readonly stage: string;
  readonly issue: Issue;
}

/** Every issue of every stage, with what to do about it. Nothing is dropped. */
export const issuesTable = ({ assessment, units }: Showing): Table => {
  const stages: readonly (readonly [string, readonly Issue[]])[] = [
    ['job', assessment.issues],
    ['model', assessment.truss.issues],
    ['model, odd', assessment.truss.odd],
    ['walk-round', assessment.coverage.issues],
    ['statics', assessment.statics.issues],
    ['trammel', assessment.trammel.issues],
    ['locked in', assessment.lockedIn.issues],
    ['load path', assessment.loadPath.issues],
    ['relief', assessment.relief.issues],
    ['dispositions', assessment.disposition.issues],
    ['straightening', assessment.straighten.issues],
    ['splices', assessment.splice.issues],
    ['plan', assessment.plan.issues],
    ['take-off', assessment.takeoff.issues],
    ['estimate', assessment.estimate.issues],
  ];
  return tableOf<IssueRow>(
    {
      name: 'open-questions',
      title: 'Open questions',
      empty: 'Nothing in the job or the model is odd.',
      columns: [
        { id: 'stage', title: 'In', text: (row) => row.stage },
        { id: 'sentence', title: 'What', text: (row) => issueSentence(row.issue, units) },
        { id: 'mend', title: 'What to do', text: (row) => mendSentence(row.issue, units) },
        {
          id: 'at',
          title: 'Where',
          text: (row) => placeWords(row.issue.at),
          raw: (row) => row.issue.at,
        },
        { id: 'code', title: 'Code', text: (row) => row.issue.code },
      ],
    },
    stages.flatMap(([stage, issues]) => issues.map((issue) => ({ stage, issue }))),
  );
};

/** Every record of the job as it came, corrected and withdrawn ones too. */
export const historyTable = ({ job }: Showing): Table =>
  tableOf<JobRecord>(
    {
      name: 'history',
      title: 'History',
      note: 'Records never change: a correction replaces, a removal withdraws, and the old one stays here.',
      empty: 'No record is entered.',
      columns: [
        { id: 'at', title: 'When', text: (row) => showTime(row.at), raw: (row) => row.at },
        { id: 'by', title: 'By', text: (row) => row.by },
        { id: 'kind', title: 'Record', text: (row) => row.kind },
        {
          id: 'of',
          title: 'About',
          text: (row) => ('of' in row && typeof row.of === 'string' ? row.of : ''),
        },
        { id: 'replaces', title: 'Replaces', text: (row) => row.replaces ?? '' },
        { id: 'withdraws', title: 'Withdraws', text: (row) => row.withdraws ?? '' },
        { id: 'device', title: 'Device', text: (row) => row.device },
        { id: 'id', title: 'Id', text: (row) => row.id },
      ],
    },
    [...job.records].sort((a, b) =>
      a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0,
    ),
  );
