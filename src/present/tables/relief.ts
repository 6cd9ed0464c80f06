import type { CutCandidate, ReliefTarget } from '../../core/relief/result.ts';
import { fixed, lengthUnit, showLength, showOpening, showRange, showShare } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { clusterWords } from '../words/names.ts';
import { cutVerdictWords, decidedByWords, releaseWords, tierWords, whyWords } from '../words/relief.ts';
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

const opening = ({ low, high }: CutCandidate['opensIn'], units: Showing['units']): string => {
  const [a, b] = [showOpening(low, units), showOpening(high, units)];
  return a === b ? a : `${a} to ${b}`;
};

/** Where to put the saw: "U3L-U4L: scrap from 2.000 in to 22.000 in from U3L, keep 1.299 in clear of both finished cuts". */
export const sawWords = (cut: CutCandidate, units: Showing['units']): string => {
  const { member, fromIn, toIn, clearIn } = cut.whereToSaw;
  if (fromIn === null || toIn === null)
    return `${member}: no place keeps ${showLength(clearIn, units)} clear of both finished cuts`;
  return `${member}: between ${showLength(fromIn, units)} and ${showLength(toIn, units)} from ${member.split('-')[0]}, at least ${showLength(clearIn, units)} from both finished cuts`;
};

/** The clusters that move most when it is cut: "Upper right 4 0.062 in". */
export const movesWords = (cut: CutCandidate, units: Showing['units']): string =>
  cut.moves
    .map(
      ({ id, moveIn }) =>
        `${clusterWords(id)} ${showLength(Math.hypot(...moveIn), units === 'mm' ? 'mm' : 'inDecimal')}`,
    )
    .join(', ');

const columns = (units: Showing['units'], withTarget: boolean): readonly Column<Row>[] => [
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
    text: (row) =>
      [
        whyWords(row.cut.why),
        decidedByWords[row.cut.decidedBy],
        row.cut.straightenFirst ? 'straighten it first?' : '',
        row.cut.ownRepair ? `its own cut needs: ${row.cut.ownRepair}` : '',
      ]
        .filter((words) => words !== '')
        .join('; '),
    raw: (row) => row.cut.why,
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
  target.withoutSaw.map(({ kind, id, why }) => `${releaseWords[kind]} ${id}: ${whyWords(why)}`);
