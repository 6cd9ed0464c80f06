import type { Finding, RecordOf } from '../../core/job/jobSchema.ts';
import { lengthUnit, showTime, type Units } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { choiceWords, damageTags } from '../tags.ts';
import { findingPlace, findingSize } from '../words/findings.ts';
import { originWords } from '../words/record.ts';
import { choiceOf } from './members.ts';
import { marksById, rawLength, type Showing, wordsOf } from './showing.ts';

/** Sizes of a finding as numbers, each in its own column of the CSV. */
const sizeHeads = {
  depthIn: 'Depth',
  chordIn: 'Over chord',
  alongIn: 'Length along',
  crackIn: 'Crack length',
  widthIn: 'Width',
  largestIn: 'Largest',
  smallestIn: 'Smallest',
  templateGapIn: 'Gap under template',
  wallLeftIn: 'Wall left',
  gapIn: 'Gap',
  stdIn: 'Uncertainty ±',
} as const;

const sizeColumns = (units: Units) =>
  Object.entries(sizeHeads).map(([name, title]) => ({
    title,
    unit: lengthUnit(units),
    raw: (finding: Finding) => {
      const size = (finding as Readonly<Record<string, unknown>>)[name];
      return typeof size === 'number' ? rawLength(size, units) : null;
    },
  }));

/**
 * Every standing finding with every figure entered for it, oldest first.
 *
 * @param photos  standing photo records; counted with the finding, or the tube or cluster, that they are of
 */
export const findingsTable = (showing: Showing, photos: readonly RecordOf<'photo'>[] = []): Table => {
  const { units } = showing;
  const words = wordsOf(showing);
  const marks = marksById(showing);
  const photosOf = ({ id, of }: Finding): number =>
    photos.filter((photo) => photo.of === id || photo.of === of).length;
  return tableOf<Finding>(
    {
      name: 'findings',
      title: 'Findings',
      empty: 'No finding is recorded. That says nothing of what has not been looked at.',
      idOf: (finding) => finding.of,
      columns: [
        { id: 'of', title: 'Id', text: (finding) => finding.of },
        { id: 'words', title: 'In words', text: (finding) => words(finding.of) },
        { id: 'damage', title: 'Damage', text: (finding) => damageTags[finding.damage].word },
        {
          id: 'size',
          title: 'Size',
          text: (finding) => findingSize(finding, units),
          csv: [{ title: 'Size', raw: (finding) => findingSize(finding, units) }, ...sizeColumns(units)],
        },
        {
          id: 'place',
          title: 'Place',
          text: (finding) => findingPlace(finding, units),
          csv: [
            { title: 'Place from', raw: (finding) => finding.place?.from ?? null },
            {
              title: 'Place at',
              unit: lengthUnit(units),
              raw: (finding) => rawLength(finding.place?.atIn, units),
            },
            { title: 'Clock', unit: "o'clock", raw: (finding) => finding.clock ?? null },
          ],
        },
        { id: 'origin', title: 'Origin', text: (finding) => originWords[finding.origin] },
        {
          id: 'decision',
          title: 'Decision',
          text: (finding) => choiceOf(marks.get(finding.of)) || 'none',
        },
        { id: 'note', title: 'Note', text: (finding) => finding.note ?? '' },
        {
          id: 'photos',
          title: 'Photos',
          align: 'right',
          text: (finding) => String(photosOf(finding) || ''),
          raw: photosOf,
        },
        { id: 'by', title: 'By', text: (finding) => finding.by },
        {
          id: 'at',
          title: 'When',
          text: (finding) => showTime(finding.at),
          raw: (finding) => finding.at,
        },
        { id: 'record', title: 'Record', text: (finding) => finding.id },
      ],
    },
    showing.assessment.coverage.findings,
  );
};

/** What people decided, with the reason they gave. */
export const decisionsTable = (showing: Showing): Table => {
  const words = wordsOf(showing);
  return tableOf(
    {
      name: 'decisions',
      title: 'Decisions',
      empty: 'Nothing is decided yet.',
      idOf: (decision) => decision.of,
      columns: [
        { id: 'of', title: 'Id', text: (decision) => decision.of },
        { id: 'words', title: 'In words', text: (decision) => words(decision.of) },
        { id: 'choice', title: 'Decision', text: (decision) => choiceWords[decision.choice] },
        {
          id: 'reason',
          title: 'Reason',
          text: (decision) => decision.reason ?? 'no reason given',
        },
        { id: 'by', title: 'By', text: (decision) => decision.by },
        {
          id: 'at',
          title: 'When',
          text: (decision) => showTime(decision.at),
          raw: (decision) => decision.at,
        },
      ],
    },
    showing.assessment.coverage.decisions,
  );
};
