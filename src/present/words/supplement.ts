import type { EstimateLine, Origin } from '../../core/estimate/result.ts';
import type { Supplement } from '../../core/estimate/supplement.ts';
import type { RecordKind } from '../../core/job/jobSchema.ts';
import { fixed } from '../show.ts';
import { hoursText, lineOriginWords, lineWhere, operationWords } from './estimate.ts';
import { countWords } from './names.ts';

const signed = (hours: number): string => `${hours < 0 ? '-' : '+'}${hoursText(Math.abs(hours))} h`;

const lineWords = (line: EstimateLine): string =>
  `${operationWords(line.operation)}${line.kind === 'setUp' ? ', set-up' : ''}, ${lineWhere(line)}`;

/** What changed between two copies of a job, line by line: hours, tube, weight. */
export const supplementLines = (of: Supplement): readonly string[] => [
  `Mean hours: ${signed(of.meanH)}. Weight added: ${of.addedLb < 0 ? '-' : '+'}${fixed(Math.abs(of.addedLb), 2)} lb.`,
  ...Object.entries(of.byOrigin).map(([origin, h]) => `${lineOriginWords[origin as Origin]}: ${signed(h)}`),
  ...of.added.map((l) => `Added: ${lineWords(l)}, ${fixed(l.hours.likely, 2)} h likely`),
  ...of.removed.map((l) => `Taken out: ${lineWords(l)}, ${fixed(l.hours.likely, 2)} h likely`),
  ...of.changed.map(
    ({ before, after }) =>
      `Changed: ${lineWords(after)}, ${fixed(before.hours.likely, 2)} to ${fixed(after.hours.likely, 2)} h likely`,
  ),
  ...of.pieces.added.map((id) => `Tube added: ${id}`),
  ...of.pieces.removed.map((id) => `Tube taken out: ${id}`),
  ...of.pieces.changed.map((id) => `Tube changed: ${id}`),
  ...(of.added.length + of.removed.length + of.changed.length === 0
    ? ['No line of hours is different.']
    : []),
];

const nouns = {
  look: ['look', 'looks'],
  area: ['state of access', 'states of access'],
  finding: ['finding', 'findings'],
  reading: ['reading', 'readings'],
  decision: ['decision', 'decisions'],
  held: ['way it is held', 'ways it is held'],
  mishap: ['account of the accident', 'accounts of the accident'],
  manual: ['entry of your own data', 'entries of your own data'],
  rate: ['rate', 'rates'],
  progress: ['step ticked or measured', 'steps ticked or measured'],
  photo: ['photo', 'photos'],
  note: ['note or withdrawal', 'notes or withdrawals'],
  model: ['change of the model', 'changes of the model'],
} as const satisfies Record<RecordKind, readonly [string, string]>;

/** How many records of a kind, in words: "2 readings". */
export const recordNoun = (kind: RecordKind, count: number): string =>
  countWords(count, nouns[kind][0], nouns[kind][1]);
