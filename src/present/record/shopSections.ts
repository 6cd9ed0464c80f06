import type { DispositionRow } from '../../core/disposition/result.ts';
import type { Standing } from '../../core/job/standing.ts';
import type { Design, SpliceRow } from '../../core/splice/result.ts';
import type { Photos } from '../backup.ts';
import { axisDrawing } from '../draw/axis.ts';
import type { Drawing } from '../draw/pen.ts';
import { spliceDrawing } from '../draw/templateSplice.ts';
import { decidedTable, dispositionOf, ownLimitsTable } from '../tables/dispositions.ts';
import type { Showing } from '../tables/showing.ts';
import { decidedDesigns, endsOf, spliceSizesTable, splicesTable } from '../tables/splices.ts';
import {
  pushesTable,
  roundnessTable,
  setUpsTable,
  straightenChecksTable,
  straighteningTable,
} from '../tables/straighten.ts';
import { cautionsFor } from '../words/cautions.ts';
import { missingWords } from '../words/disposition.ts';
import { listWords } from '../words/names.ts';
import { failingLine, fitsWords, methodNames } from '../words/splice.ts';
import { straightenCautions } from '../words/straighten.ts';
import { heading } from './heading.ts';
import { pairSections } from './photoShots.ts';
import type { Part, Section } from './sections.ts';

const onPaper = ['option', 'answer', 'why', 'source', 'missing', 'chosen'];

/** Every tube and cluster with its decision, and which of them are open. */
const dispositionSections = (showing: Showing): readonly Section[] => {
  const { rows } = showing.assessment.disposition;
  const open = openRows(showing);
  return [
    heading('Dispositions'),
    { kind: 'cautions', cautions: cautionsFor('generalRules') },
    ...(rows.some(({ scope }) => scope.length > 0)
      ? [{ kind: 'cautions', cautions: cautionsFor('outsideScope') } as const]
      : []),
    { kind: 'table', table: decidedTable(showing) },
    { kind: 'subheading', text: 'Sizes against your own limits' },
    { kind: 'table', table: ownLimitsTable(showing) },
    ...(open.length > 0
      ? [
          {
            kind: 'lines',
            lines: [
              `Open, or decided against the rules: ${listWords(open.map(({ id }) => id))}. Every way with its reasons: chapter "ways" of this report, dispositions.csv.`,
            ],
          } as const,
        ]
      : []),
  ];
};

const openRows = ({ assessment: { disposition } }: Showing): readonly DispositionRow[] =>
  disposition.rows.filter(({ decided }) => decided?.answer !== 'applies');

/** Every way with its reasons, where nothing is decided or the rules do not bear the decision. */
export const waysSections = (showing: Showing): readonly Section[] => [
  heading(
    'Ways to go on',
    'Where nothing is decided, or the rules do not bear the decision. All others stand in dispositions.csv.',
  ),
  ...openRows(showing).flatMap((row): readonly Section[] => {
    const table = dispositionOf(showing, row);
    return [
      { kind: 'subheading', text: table.title },
      { kind: 'table', table, only: onPaper },
    ];
  }),
];

const setUpColumns = ['member', 'no', 'ram', 'side', 'near', 'far', 'press', 'clamp', 'set', 'most', 'off'];

/** Straightening: where each axis lies, the set-ups, what was pushed, what is still to be checked. */
const straightenSections = (showing: Showing): readonly Section[] => {
  const { assessment, units } = showing;
  const { members } = assessment.straighten;
  if (members.length === 0) return [];
  const marks = new Map(assessment.coverage.marks.map((m) => [m.id, m]));
  const chosen = members.filter(({ member }) => {
    const choice = marks.get(member)?.choice;
    return choice === 'straighten' || choice === 'roundOut';
  });
  const shown = onlyMembers(showing, new Set(chosen.map((r) => r.member)));
  const warnings = [...new Set(chosen.flatMap((r) => r.setups.flatMap((s) => s.press.warnings)))].map(
    (code) => straightenCautions[code] ?? code,
  );
  const drawn = chosen.flatMap((row): readonly Section[] => {
    const member = assessment.truss.members.find(({ id }) => id === row.member);
    if (!member || !row.fit) return [];
    const first = row.next ?? row.setups[0];
    return [
      {
        kind: 'drawing',
        title: `${row.member}: ${row.next ? 'next push' : 'first set-up'}`,
        drawing: axisDrawing(row.fit, member.lengthIn, [member.from, member.to], units, first, 180),
      },
    ];
  });
  return [
    heading('Straightening'),
    { kind: 'cautions', cautions: [...cautionsFor('straightening'), ...cautionsFor('heating')] },
    { kind: 'table', table: straighteningTable(showing) },
    {
      kind: 'subheading',
      text: 'Set-ups of the tubes decided to be straightened',
      note: 'Those of other bent tubes stand in straightening-set-ups.csv.',
    },
    { kind: 'table', table: setUpsTable(shown), only: setUpColumns },
    { kind: 'lines', lines: warnings },
    ...drawn,
    ...(members.some(({ pushes }) => pushes.length > 0)
      ? ([
          { kind: 'subheading', text: 'Pushes' },
          { kind: 'table', table: pushesTable(showing) },
        ] as const)
      : []),
    ...(members.some(({ roundness }) => roundness.length > 0)
      ? ([
          { kind: 'subheading', text: 'Roundness' },
          { kind: 'table', table: roundnessTable(showing) },
        ] as const)
      : []),
    { kind: 'subheading', text: 'Checks after the last push' },
    {
      kind: 'table',
      table: straightenChecksTable(shown),
    },
  ];
};

const onlyMembers = (showing: Showing, ids: ReadonlySet<string>): Showing => {
  const { assessment } = showing;
  const members = assessment.straighten.members.filter(({ member }) => ids.has(member));
  return { ...showing, assessment: { ...assessment, straighten: { ...assessment.straighten, members } } };
};

/** Widths tried for a drawing on a turned sheet, mm: the widest whose height leaves room for its words. */
const widths = [250, 220, 190, 160, 130, 100] as const;
const MOST_HEIGHT_MM = 138;

const fitted = (row: SpliceRow, design: Design, units: Showing['units']): Drawing | null => {
  for (const width of widths) {
    const drawing = spliceDrawing(row.piece, design, units, width);
    if (!drawing || drawing.heightMm <= MOST_HEIGHT_MM) return drawing;
  }
  return null;
};

/** Splices decided: what fits, every dimension with its basis, a drawing of each, and its pictures as found and as left. */
const spliceSections = (showing: Showing, live: Standing, photos: Photos): readonly Section[] => {
  const { members } = showing.assessment.splice;
  if (members.length === 0) return [];
  const { units } = showing;
  const drawn = members.flatMap((row) =>
    decidedDesigns(row).flatMap((design): readonly Section[] => {
      const drawing = fitted(row, design, units);
      const title = `${row.member}: ${methodNames[design.method].toLowerCase()}`;
      if (drawing) return [{ kind: 'drawing', title, drawing }];
      if (design.fits === 'fits') return [];
      const why = [
        ...design.failing.map((f) => failingLine(f, endsOf(row), units)),
        ...design.missing.map((name) => `missing: ${missingWords({ name })}`),
      ];
      return [{ kind: 'lines', lines: [`${title}: ${fitsWords[design.fits]}. ${why.join('; ')}`] }];
    }),
  );
  return [
    heading('Splices, sleeves, patches and whole members'),
    { kind: 'cautions', cautions: cautionsFor('welding') },
    {
      kind: 'table',
      table: splicesTable(decidedOnly(showing)),
      only: ['member', 'words', 'choice', 'method', 'fits', 'why', 'sleeve', 'cautions'],
    },
    { kind: 'subheading', text: 'Dimensions, each with what it rests on' },
    { kind: 'table', table: spliceSizesTable(showing) },
    ...drawn,
    ...pairSections(
      members.map(({ member }) => member),
      showing,
      live,
      photos,
    ),
  ];
};

/** On paper the methods that the decision asks for; the CSV has all. */
const decidedOnly = (showing: Showing): Showing => {
  const { assessment } = showing;
  const members = assessment.splice.members.map((row) => ({ ...row, designs: decidedDesigns(row) }));
  return { ...showing, assessment: { ...assessment, splice: { ...assessment.splice, members } } };
};

/** The shop's sheets: dispositions, straightening, splices. */
export const shopParts = (showing: Showing, live: Standing, photos: Photos, side: string): readonly Part[] =>
  [dispositionSections(showing), straightenSections(showing), spliceSections(showing, live, photos)]
    .filter((sections) => sections.length > 0)
    .map((sections): Part => ({ lie: 'turned', side, sections }));
