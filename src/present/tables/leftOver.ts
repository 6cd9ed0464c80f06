import type { LeftOver, LeftOverCase } from '../../core/lockedIn/leftOver.ts';
import { fixed, lengthUnit, showAxial, showBareLength, showFigure, whole } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { rawLength, type Showing, wordsOf } from './showing.ts';

interface Row {
  readonly row: LeftOver;
  /** None: a tube without a load case worked. */
  readonly one: LeftOverCase | undefined;
}

/** Columns on paper; the CSV has the words and the basis too. */
export const leftOverColumns: readonly string[] = [
  'id',
  'bow',
  'straight',
  'yield',
  'collapse',
  'ratio',
  'case',
  'axial',
  'ofStraight',
  'ofBent',
];

const rowsOf = (row: LeftOver): readonly Row[] =>
  row.cases.length > 0 ? row.cases.map((one) => ({ row, one })) : [{ row, one: undefined }];

/** Left-over strength of each bent tube as it stands, a row a load case. Information, never a verdict. */
export const leftOverTable = (showing: Showing): Table =>
  layRows(showing, showing.assessment.lockedIn.leftOver.flatMap(rowsOf));

/** The same for paper: for each tube the load case that asks most of it. */
export const leftOverOnPaper = (showing: Showing): Table =>
  layRows(
    showing,
    showing.assessment.lockedIn.leftOver.map((row) =>
      rowsOf(row).reduce((worst, next) =>
        (next.one?.ofBent.value ?? 0) > (worst.one?.ofBent.value ?? 0) ? next : worst,
      ),
    ),
    'On paper the load case that asks most of each; the CSV has all.',
  );

const layRows = (showing: Showing, rows: readonly Row[], also = ''): Table => {
  const { job, units } = showing;
  const words = wordsOf(showing);
  const name = (id: string): string => job.model.loadCases.find((loadCase) => loadCase.id === id)?.name ?? id;
  const percent = (share: number): string => fixed(100 * share, 0);
  const bare = (text: string): string => text.replace(/ lbf$/, '');
  return tableOf<Row>(
    {
      name: 'left-over-strength',
      title: 'Left-over strength of bent tubes',
      note: `Compression of the tube straight, at first yield of the bow, and at collapse; each load case of the truss as drawn against the straight and the bent tube. Arithmetic with its assumptions: it permits nothing and judges nothing.${also === '' ? '' : ` ${also}`}`,
      empty: 'No bend has been measured, so no tube is compared with a straight one.',
      idOf: ({ row }) => row.id,
      columns: [
        { id: 'id', title: 'Id', text: ({ row }) => row.id },
        { id: 'words', title: 'In words', text: ({ row }) => words(row.id) },
        {
          id: 'bow',
          title: 'Bow over the whole tube',
          align: 'right',
          unit: lengthUnit(units),
          text: ({ row }) => showBareLength(row.depthIn.value, units, 64),
          raw: ({ row }) => rawLength(row.depthIn.value, units),
        },
        {
          id: 'straight',
          title: 'Straight',
          unit: 'lbf',
          align: 'right',
          text: ({ row }) => whole(row.straightLbf.value),
          raw: ({ row }) => row.straightLbf.value,
        },
        {
          id: 'yield',
          title: 'Bent, first yield',
          unit: 'lbf',
          align: 'right',
          text: ({ row }) => bare(showFigure(row.firstYieldLbf, units)),
          raw: ({ row }) => row.firstYieldLbf.value,
        },
        {
          id: 'collapse',
          title: 'Bent, collapse',
          unit: 'lbf',
          align: 'right',
          text: ({ row }) => bare(showFigure(row.collapseLbf, units)),
          raw: ({ row }) => row.collapseLbf.value,
        },
        {
          id: 'ratio',
          title: 'Bent over straight',
          align: 'right',
          unit: '%',
          text: ({ row }) => percent(row.ratio.value),
          raw: ({ row }) => 100 * row.ratio.value,
        },
        {
          id: 'case',
          title: 'Load case',
          text: ({ one }) => (one ? name(one.id) : 'none worked'),
          raw: ({ one }) => one?.id ?? null,
        },
        {
          id: 'axial',
          title: 'Axial force',
          unit: 'lbf',
          align: 'right',
          text: ({ one }) => (one ? showAxial(one.axialLbf.value).replace(' lbf', '') : ''),
          raw: ({ one }) => one?.axialLbf.value ?? null,
        },
        {
          id: 'ofStraight',
          title: 'Of straight',
          align: 'right',
          unit: '%',
          text: ({ one }) => (one ? percent(one.ofStraight.value) : ''),
          raw: ({ one }) => (one ? 100 * one.ofStraight.value : null),
        },
        {
          id: 'ofBent',
          title: 'Of bent',
          align: 'right',
          unit: '%',
          text: ({ one }) => (one ? percent(one.ofBent.value) : ''),
          raw: ({ one }) => (one ? 100 * one.ofBent.value : null),
        },
        { id: 'basis', title: 'Rests on', text: ({ row }) => restsOn(row.firstYieldLbf) },
      ],
    },
    rows,
  );
};
