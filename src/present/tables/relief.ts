import type { CutCandidate, Release, ReliefTarget, WhereToSaw } from '../../core/relief/result.ts';
import {
  fixed,
  lengthUnit,
  showAxial,
  showBareLength,
  showLength,
  showOpenings,
  showRange,
  showShare,
  type Units,
  whole,
} from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { clusterWords, listWords } from '../words/names.ts';
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

/** `sourceRelief` is null not for want of measuring: what the others' bends put into this tube is too little to rank by. */
const noOthers = 'no other bend counts';

/** Share of what other tubes' bends lock into the target that goes, between the two readings of the bows. */
export const shareRange = (range: { readonly low: number; readonly high: number } | null): string => {
  if (range === null) return noOthers;
  const [low, high] = [shareText(range.low), shareText(range.high)];
  return low === high ? low : `${low} to ${high}`;
};

const shareText = (share: number): string =>
  share < -0.005 ? `makes it worse by ${showShare(-share)}` : showShare(share);

/** Where to put the saw, from which end, and how far to keep from both finished cuts. */
const placeWords = ({ member, fromIn, toIn, clearIn, why }: WhereToSaw, units: Units): string => {
  const end = member.split('-')[0];
  const clear = `${showLength(clearIn, units)} clear of both finished cuts`;
  if (why === 'place-of-a-cluster-guessed') return `${member}: ${sawWhyWords[why]}`;
  if (fromIn === null || toIn === null) return `${member}: no place keeps ${clear}`;
  const place =
    toIn - fromIn < 1 / 64
      ? `at ${showLength(fromIn, units)} from ${end}`
      : `between ${showBareLength(fromIn, units)} and ${showLength(toIn, units)} from ${end}`;
  return `${member}: ${place}, ${clear}; ${sawWhyWords[why]}`;
};

/** Where to saw, for both tubes of a pair. */
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
    title: "Others' strain gone",
    align: 'right',
    text: (row) => shareRange(row.cut.sourceRelief),
    raw: (row) => row.cut.sourceRelief?.low ?? null,
    csv: [
      { title: "Others' strain gone, low", unit: 'share', raw: (row) => row.cut.sourceRelief?.low ?? null },
      { title: "Others' strain gone, high", unit: 'share', raw: (row) => row.cut.sourceRelief?.high ?? null },
    ],
  },
  {
    id: 'eta',
    title: 'Own length freed',
    align: 'right',
    text: (row) => showShare(row.cut.eta),
    raw: (row) => row.cut.eta,
    csv: [{ title: 'Own length freed', unit: 'share', raw: (row) => row.cut.eta }],
  },
  {
    id: 'opens',
    title: 'Kerf',
    text: (row) => showOpenings(row.cut.opensIn, units),
    raw: (row) => rawLength(row.cut.opensIn.high, units),
    csv: [
      {
        title: 'Kerf opens (+), low',
        unit: lengthUnit(units),
        raw: (row) => rawLength(row.cut.opensIn.low, units),
      },
      {
        title: 'Kerf opens (+), high',
        unit: lengthUnit(units),
        raw: (row) => rawLength(row.cut.opensIn.high, units),
      },
    ],
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
    csv: [
      { title: 'Lets go, low', unit: 'in-lbf', raw: (row) => row.cut.releasedInLbf.low },
      { title: 'Lets go, high', unit: 'in-lbf', raw: (row) => row.cut.releasedInLbf.high },
    ],
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

const shares = `Others' strain gone: share of what other tubes' bends lock into the tube ("${noOthers}": they put less than a twentieth of yield into it). Own length freed: share of a length error of the tube itself.`;
const empty = 'No member with a finding or decision, so no cut is worked.';

/** Every candidate cut of every target, in the order of the list. */
export const reliefTable = (showing: Showing): Table =>
  tableOf<Row>(
    {
      name: 'relief',
      title: 'Relief cuts',
      note: `Candidates in order. Sound tubes stand apart and never above them. ${shares}`,
      empty,
      idOf: (row) => row.cut.cuts[0] ?? row.target,
      columns: columns(showing.units, true),
    },
    showing.assessment.relief.targets.flatMap(rowsOf),
  );

const targetTable = (showing: Showing, target: ReliefTarget, rows: readonly Row[]): Table =>
  tableOf<Row>(
    {
      name: 'relief',
      title: `Relief cuts for ${target.member}`,
      note: shares,
      empty: 'No candidate.',
      idOf: (row) => row.cut.cuts[0] ?? row.target,
      columns: columns(showing.units, false),
    },
    rows,
  );

const releaseSentence = (kind: Release['kind'], these: readonly Release[]): readonly string[] => {
  const [first] = these;
  if (!first) return [];
  const ids = these.map(({ id, forceLbf }) => {
    if (forceLbf === undefined) return id;
    return kind === 'support'
      ? `${id} (holds against ${whole(Math.abs(forceLbf))} lbf)`
      : `${id} (${showAxial(forceLbf)})`;
  });
  return [`${releaseWords[kind]} ${listWords(ids)}: ${releaseWhyWords[first.why]}.`];
};

/** What can be released without a saw for one target, one sentence a kind: always before any cut. Supports: `supportLines`. */
export const releaseLines = ({ withoutSaw }: ReliefTarget): readonly string[] =>
  (['bolted', 'weight'] as const).flatMap((kind) =>
    releaseSentence(
      kind,
      withoutSaw.filter((release) => release.kind === kind),
    ),
  );

/** Supports that hold the truss strained: the same for every target, so said once. */
export const supportLines = (targets: readonly ReliefTarget[]): readonly string[] => {
  const supports = new Map(
    targets
      .flatMap(({ withoutSaw }) => withoutSaw.filter(({ kind }) => kind === 'support'))
      .map((r) => [r.id, r]),
  );
  return releaseSentence('support', [...supports.values()]);
};

/** At most so many rows of a target on paper. */
const MOST_ON_PAPER = 3;

/**
 * The candidate cuts of one target as they go on paper: those that help, with or without a fixture, at most three, and
 * never fewer than two rows. The others stand in the CSV and are counted.
 */
export const reliefOnPaper = (
  showing: Showing,
  target: ReliefTarget,
): { readonly table: Table; readonly most: number } => {
  const rows = rowsOf(target);
  const first = rows.filter(
    ({ list, cut }) => list === 'candidate' && cut.helps && cut.verdict !== 'refused',
  );
  return {
    table: targetTable(showing, target, [...first, ...rows.filter((row) => !first.includes(row))]),
    most: Math.min(MOST_ON_PAPER, Math.max(2, first.length)),
  };
};

/** Tubes that nobody should cut, in one sentence; none: nothing. */
export const refusedLines = ({ candidates }: ReliefTarget): readonly string[] => {
  const refused = candidates
    .filter(({ verdict }) => verdict === 'refused')
    .map(({ cuts }) => cuts.join(' then '));
  return refused.length === 0
    ? []
    : [`Refused, because without it the truss would move freely: ${listWords(refused)}.`];
};
