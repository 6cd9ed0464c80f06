import type { Figure } from '../../core/base/figure.ts';
import { standing } from '../../core/job/standing.ts';
import { type FinalCut, finalCut } from '../../core/splice/finalCut.ts';
import type { Design, SpliceRow } from '../../core/splice/result.ts';
import { showFigure, showTube } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { choiceWords } from '../tags.ts';
import { restsOn } from '../words/basis.ts';
import { missingWords, scopeWords, sentence } from '../words/disposition.ts';
import {
  endWords,
  failingLine,
  fitsWords,
  methodNames,
  partWords,
  sleeveSays,
  spliceCautions,
} from '../words/splice.ts';
import { type Showing, wordsOf } from './showing.ts';

interface DesignRow {
  readonly row: SpliceRow;
  readonly design: Design;
}
const designs = ({ assessment }: Showing): readonly DesignRow[] =>
  assessment.splice.members.flatMap((row) => row.designs.map((design) => ({ row, design })));

export const endsOf = (row: Pick<SpliceRow, 'piece'>): readonly [string, string] => [
  row.piece.ends[0].cluster,
  row.piece.ends[1].cluster,
];

/** The sleeve of a design in words, with the rule's own where the table says otherwise. */
export const sleeveText = ({ sleeve }: Pick<Design, 'sleeve'>, { units }: Pick<Showing, 'units'>): string => {
  if (!sleeve) return '';
  const one = (o: NonNullable<typeof sleeve.chosen>, by: string): string =>
    `${showTube(o.tube, units)} by ${by}, slack ${showFigure(o.slackIn, units)}${
      o.says.length > 0 ? ` (${o.says.map((s) => sleeveSays[s] ?? s).join('; ')})` : ''
    }`;
  const chosen = sleeve.chosen
    ? one(sleeve.chosen, sleeve.chosen.by === 'manual' ? 'your table' : 'the general rule')
    : 'no stock tube goes';
  const other =
    sleeve.byRule && sleeve.chosen?.by === 'manual' ? `; ${one(sleeve.byRule, 'the general rule')}` : '';
  return `${chosen}${other}`;
};

/** One row a member and method: does it fit here, and if not, the number that fails. */
export const splicesTable = (showing: Showing): Table => {
  const { units } = showing;
  const words = wordsOf(showing);
  return tableOf<DesignRow>(
    {
      name: 'splices',
      title: 'Splices, sleeves, patches and whole members',
      note: 'What does not fit here stands with the number that fails, never with a shortened part.',
      empty: 'No member is decided to be spliced, sleeved, patched or replaced.',
      idOf: ({ row }) => row.member,
      columns: [
        { id: 'member', title: 'Member', text: ({ row }) => row.member },
        { id: 'words', title: 'In words', text: ({ row }) => words(row.member) },
        { id: 'choice', title: 'Decided', text: ({ row }) => (row.choice ? choiceWords[row.choice] : '') },
        { id: 'method', title: 'Method', text: ({ design }) => methodNames[design.method] },
        { id: 'fits', title: 'Answer', text: ({ design }) => fitsWords[design.fits] },
        {
          id: 'why',
          title: 'What fails or is missing',
          text: ({ row, design }) =>
            [
              ...design.closed.map((s) => `weld closed: ${scopeWords[s]}`),
              ...design.failing.map((f) => failingLine(f, endsOf(row), units)),
              ...design.missing.map((name) => `missing: ${missingWords({ name })}`),
            ].join('; '),
        },
        { id: 'sleeve', title: 'Sleeve', text: ({ design }) => sleeveText(design, showing) },
        {
          id: 'added',
          title: 'Added weight',
          unit: 'lb',
          align: 'right',
          text: ({ design }) => (design.plan ? design.plan.addedLb.value.toFixed(3) : ''),
          raw: ({ design }) => design.plan?.addedLb.value ?? null,
        },
        {
          id: 'cautions',
          title: 'Caution',
          text: ({ design }) => design.cautions.map((c) => spliceCautions[c] ?? c).join(' '),
        },
      ],
    },
    designs(showing),
  );
};

/** A dimension of a repair, with what it rests on. */
export interface Size {
  readonly what: string;
  readonly figure: Figure;
  /** Tube it is of, in words. */
  readonly tube?: string;
}

/** Every dimension of one design, in the order of the work: cut, sections, sleeves, rosettes, weld, weight. */
export const sizesOf = (
  row: Pick<SpliceRow, 'piece'>,
  { plan }: Pick<Design, 'plan'>,
  { units }: Pick<Showing, 'units'>,
  final: FinalCut | null = null,
): readonly Size[] => {
  if (!plan) return [];
  const ends = endsOf(row);
  return [
    ...(plan.stubs ?? []).flatMap((stub): readonly Size[] => {
      const at = `Old tube at ${endWords(stub.cluster)}`;
      const plane = stub.longIn.value - stub.shortIn.value > 1e-9;
      return plane
        ? [
            { what: `${at}: cluster point to the long point of the cut`, figure: stub.longIn },
            { what: `${at}: cluster point to the short point of the cut`, figure: stub.shortIn },
          ]
        : [{ what: `${at}: cluster point to the square cut`, figure: stub.longIn }];
    }),
    ...(plan.openingIn ? [{ what: 'Opening on the axis, cut to cut', figure: plan.openingIn }] : []),
    ...(final
      ? [
          { what: 'Opening as measured after spreading, longest line', figure: final.openingIn },
          { what: `${partWords(final.part, ends)}: cut to, long point`, figure: final.longIn },
          { what: `${partWords(final.part, ends)}: cut to, short point`, figure: final.shortIn },
        ]
      : []),
    ...(plan.gapIn.value > 0 ? [{ what: 'Gap for the weld at each joint', figure: plan.gapIn }] : []),
    ...(plan.gapOtherIn.value > 0 && plan.gapOtherIn.value !== plan.gapIn.value
      ? [{ what: 'Gap by the other reading', figure: plan.gapOtherIn }]
      : []),
    ...plan.parts.flatMap((part): readonly Size[] => {
      const what = partWords(part.id, ends);
      const tube = `${showTube(part.tube, units)} ${part.material}`;
      if (part.kind === 'patch')
        return [
          { what: `${what}: along the tube`, figure: part.longIn, tube },
          { what: `${what}: round the tube`, figure: part.shortIn, tube },
        ];
      const even = Math.abs(part.longIn.value - part.shortIn.value) < 1e-9;
      return [
        ...(even
          ? [{ what: `${what}: length`, figure: part.longIn, tube }]
          : [
              { what: `${what}: long point to long point`, figure: part.longIn, tube },
              { what: `${what}: shortest line`, figure: part.shortIn, tube },
            ]),
        ...(part.centreMarkIn
          ? [{ what: `${what}: centre mark from its end`, figure: part.centreMarkIn }]
          : []),
      ];
    }),
    ...(plan.rosettes
      ? [
          { what: 'Rosette holes in the outer tube', figure: plan.rosettes.count },
          { what: 'Rosette hole, diameter', figure: plan.rosettes.holeIn },
          { what: 'Hole in the sleeve under each rosette', figure: plan.rosettes.bleedIn },
          { what: 'Ring mark on the sleeve, from its end', figure: plan.rosettes.markIn },
        ]
      : []),
    ...(plan.weldIn.value > 0 ? [{ what: 'Weld, length', figure: plan.weldIn }] : []),
    ...(plan.endWeldLbf ? [{ what: 'Weld round one sleeve end bears', figure: plan.endWeldLbf }] : []),
    { what: 'Added weight', figure: plan.addedLb },
  ];
};

/** The designs that the decision of a member asks for: those of its kind that fit. */
export const decidedDesigns = ({ choice, designs: all }: SpliceRow): readonly Design[] => {
  const of: Readonly<Record<string, readonly string[]>> = {
    splice: ['innerSleeve', 'outerSleeve', 'largerTube'],
    splitSleeve: ['splitSleeve'],
    patch: ['patch'],
    replace: ['fullMember'],
  };
  return all.filter((d) => (of[choice ?? ''] ?? []).includes(d.method));
};

/** Every dimension of the repairs decided, with the basis beside it. */
export const spliceSizesTable = (showing: Showing): Table => {
  const { units } = showing;
  const { manual } = standing(showing.job.records);
  const rows = showing.assessment.splice.members.flatMap((row) =>
    decidedDesigns(row).flatMap((design) =>
      sizesOf(row, design, showing, finalCut(row.member, design, manual)).map((size) => ({
        row,
        design,
        size,
      })),
    ),
  );
  return tableOf<(typeof rows)[number]>(
    {
      name: 'splice-sizes',
      title: 'Dimensions of the splices decided',
      note: 'Computed lengths are for ordering: cut the section to the opening measured after spreading.',
      empty: 'No repair decided fits yet with what is measured.',
      idOf: ({ row }) => row.member,
      columns: [
        { id: 'member', title: 'Member', text: ({ row }) => row.member },
        { id: 'method', title: 'Method', text: ({ design }) => methodNames[design.method] },
        { id: 'what', title: 'What', text: ({ size }) => size.what },
        { id: 'tube', title: 'Tube', text: ({ size }) => size.tube ?? '' },
        {
          id: 'value',
          title: 'Value',
          align: 'right',
          text: ({ size }) => showFigure(size.figure, units),
          csv: (['in', 'lb', 'lbf', 'count'] as const).map((unit) => ({
            title: 'Value',
            unit,
            raw: ({ size }) => (size.figure.unit === unit ? size.figure.value : null),
          })),
        },
        { id: 'basis', title: 'Rests on', text: ({ size }) => sentence(restsOn(size.figure)) },
      ],
    },
    rows,
  );
};
