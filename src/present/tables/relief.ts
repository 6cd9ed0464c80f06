import type { CutCandidate, ReliefTarget, WhereToSaw } from '../../core/relief/result.ts';
import {
  fixed,
  lengthUnit,
  showAxial,
  showLength,
  showOpening,
  showRange,
  showShare,
  type Units,
} from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { clusterWords } from '../words/names.ts';
import {
  cutVerdictWords,
  decidedByWords,
  ownRepairWords,
  releaseWhyWords,
  releaseWords,
  sawWhyWords,
  tierWords,
  whyWords,
} from '../words/relief.ts';
import { rawLength, type Showing } from './showing.ts';

interface Row {
  readonly target: string;
  readonly order: number;
  readonly list: 'candidate' | 'sound tube';
  readonly cut: CutCandidate;
}

const shareRange = (range: { readonly low: number; readonly high: number } | null): string => {
  if (range === null) return 'none measured';
  const [low, high] = [shareText(range.low), shareText(range.high)];
  return low === high ? low : `${low} to ${high}`;
};

const shareText = (share: number): string =>
  share < -0.005 ? `makes it worse by ${showShare(-share)}` : showShare(share);

const opening = ({ low, high }: CutCandidate['opensIn'], units: Units): string => {
  const [a, b] = [showOpening(low, units), showOpening(high, units)];
  return a === b ? a : `${a} to ${b}`;
};

/** Where to put the saw, from which end, and how far to keep from both finished cuts. */
const placeWords = ({ member, fromIn, toIn, clearIn, why }: WhereToSaw, units: Units): string => {
  const place =
    fromIn === null || toIn === null
      ? `no place keeps ${showLength(clearIn, units)} clear of both finished cuts`
      : `between ${showLength(fromIn, units)} and ${showLength(toIn, units)} from ${member.split('-')[0]}, at least ${showLength(clearIn, units)} from both finished cuts`;
  return `${member}: ${place}; ${sawWhyWords[why]}`;
};

export const sawWords = (cut: CutCandidate, units: Units): string =>
  cut.thenSaw
    ? `${placeWords(cut.whereToSaw, units)}. Then ${placeWords(cut.thenSaw, units)}`
    : placeWords(cut.whereToSaw, units);

/** The clusters that move most when it is cut: "Lower right 3 0.062 in". */
export const movesWords = (cut: CutCandidate, units: Units): string =>
  cut.moves
    .map(
      ({ id, moveIn }) =>
        `${clusterWords(id)} ${showLength(Math.hypot(...moveIn), units === 'mm' ? 'mm' : 'inDecimal')}`,
    )
    .join(', ');

/** Why a cut stands where it does, what decided, and what it asks for. */
export const whyLine = (cut: CutCandidate, units: Units): string =>
  [
    whyWords[cut.why],
    cut.makesWorse ? 'on one reading of the bows it puts more into the tube' : '',
    `placed ${decidedByWords[cut.decidedBy]}`,
    cut.straightenFirst ? 'straighten it first?' : '',
    cut.ownRepair ? ownRepairWords[cut.ownRepair] : '',
    cut.brace
      ? `a brace from ${cut.brace.from} to ${cut.brace.to} keeps the sag to ${showLength(cut.brace.sagIn, units, 64)}`
      : '',
  ]
    .filter((words) => words !== '')
    .join('; ');

const columns = (units: Units, withTarget: boolean): readonly Column<Row>[] => [
  ...(withTarget ? [{ id: 'target', title: 'Target', text: (row: Row) => row.target }] : []),
  {
    id: 'order',
    title: 'Order',
    align: 'right',
    text: (row) => String(row.order),
    raw: (row) => row.order,
  },
  { id: 'list', title: 'List', text: (row) => row.list },
  { id: 'cuts', title: 'Saw', text: (row) => row.cut.cuts.join(' then ') },
  { id: 'verdict', title: 'Answer', text: (row) => cutVerdictWords[row.cut.verdict] },
  {
    id: 'source',
    title: 'Of what others lock in, goes',
    align: 'right',
    text: (row) => shareRange(row.cut.sourceRelief),
    raw: (row) => row.cut.sourceRelief?.low ?? null,
  },
  {
    id: 'eta',
    title: 'Of its own length error, goes',
    align: 'right',
    text: (row) => showShare(row.cut.eta),
    raw: (row) => row.cut.eta,
  },
  {
    id: 'opens',
    title: 'Kerf',
    text: (row) => opening(row.cut.opensIn, units),
    raw: (row) => rawLength(row.cut.opensIn.high, units),
  },
  {
    id: 'sag',
    title: 'Sag grows',
    unit: lengthUnit(units),
    align: 'right',
    text: (row) =>
      row.cut.sagIn === null ? 'not worked' : fixed(rawLength(row.cut.sagIn, units)!, units === 'mm' ? 1 : 3),
    raw: (row) => rawLength(row.cut.sagIn, units),
  },
  {
    id: 'released',
    title: 'Lets go',
    unit: 'in-lbf',
    align: 'right',
    text: (row) => showRange(row.cut.releasedInLbf, 'in-lbf', units).replace(/ in-lbf/g, ''),
    raw: (row) => row.cut.releasedInLbf.high,
  },
  { id: 'tier', title: 'What it is', text: (row) => tierWords[row.cut.tier] },
  {
    id: 'why',
    title: 'Why it stands here',
    text: (row) => whyLine(row.cut, units),
  },
  { id: 'saw', title: 'Where to saw', text: (row) => sawWords(row.cut, units) },
  { id: 'moves', title: 'Moves most', text: (row) => movesWords(row.cut, units) },
];

const rowsOf = (target: ReliefTarget): readonly Row[] => [
  ...target.candidates.map((cut, k) => ({
    target: target.member,
    order: k + 1,
    list: 'candidate' as const,
    cut,
  })),
  ...target.soundTubes.map((cut, k) => ({
    target: target.member,
    order: k + 1,
    list: 'sound tube' as const,
    cut,
  })),
];

const empty = 'No member with a finding or decision, so no cut is worked.';

/** Every candidate cut of every target, in the order of the list. */
export const reliefTable = (showing: Showing): Table =>
  tableOf<Row>(
    {
      name: 'relief',
      title: 'Relief cuts',
      note: 'Candidates in order. Sound tubes stand apart and never above them. Measure the kerf: it is the check on these sums.',
      empty,
      idOf: (row) => row.cut.cuts[0] ?? row.target,
      columns: columns(showing.units, true),
    },
    showing.assessment.relief.targets.flatMap(rowsOf),
  );

/** The candidate cuts of one target. */
export const reliefOf = (showing: Showing, target: ReliefTarget): Table =>
  tableOf<Row>(
    {
      name: `relief-${target.member}`,
      title: `Relief cuts for ${target.member}`,
      empty: 'No candidate.',
      idOf: (row) => row.cut.cuts[0] ?? row.target,
      columns: columns(showing.units, false),
    },
    rowsOf(target),
  );

/** What can be released without a saw: always first. */
export const releaseLines = (target: ReliefTarget): readonly string[] =>
  target.withoutSaw.map(
    ({ kind, id, why, forceLbf }) =>
      `${releaseWords[kind]} ${id}: ${releaseWhyWords[why]}${forceLbf === undefined ? '' : ` (${showAxial(forceLbf)} in ${target.member})`}`,
  );
