import type { EstimateLine } from '../../core/estimate/result.ts';
import { type Supplement, supplement } from '../../core/estimate/supplement.ts';
import type { Photo } from '../../core/job/jobSchema.ts';
import { showLength, showTube } from '../show.ts';
import type { Since } from '../since.ts';
import type { Showing } from '../tables/showing.ts';
import { lineWhere, operationWords } from '../words/estimate.ts';
import { causesOf } from './supplementCause.ts';

/** One thing that is different, why, and what it takes. A difference nobody can price is null. */
export interface SupplementRow {
  /** Member, cluster or bay; the job as a whole: ''. */
  readonly of: string;
  readonly what: string;
  /** The finding or record that caused it, in words with its id. */
  readonly cause: string;
  readonly photos: readonly Photo[];
  readonly hoursH: number | null;
  readonly tubeIn: number | null;
  readonly money: number | null;
}

export interface SupplementOf {
  readonly rows: readonly SupplementRow[];
  readonly sums: Supplement;
  readonly currency: string | null;
  readonly moneySum: number | null;
}

/**
 * The supplement between an older state of a job and this one, line by line: findings, decisions, hours, tube.
 * Hours are the likely ones; money is hours at the rate of the later state, where somebody has entered one.
 */
export const supplementOf = (since: Since, showing: Showing): SupplementOf => {
  const { assessment, units } = showing;
  const sums = supplement(since.assessment, assessment);
  const money = assessment.estimate.money ?? null;
  const priced = (hours: number | null): number | null =>
    hours === null || !money ? null : hours * money.perHour;
  const { found, gone, decided, undecided, findingCause, decisionWords, causeOf, lineCause } = causesOf(
    since,
    showing,
  );
  const lineRow = (verb: string, line: EstimateLine, hoursH: number): SupplementRow => {
    const cause = lineCause(line);
    return {
      of: line.of ?? lineWhere(line),
      what: `${verb}: ${operationWords(line.operation)}${line.kind === 'setUp' ? ', set-up' : ''}`,
      cause: cause.words,
      photos: cause.photos,
      hoursH,
      tubeIn: null,
      money: priced(hoursH),
    };
  };
  const pieces = (of: Since['assessment']) =>
    new Map(
      of.takeoff.stock.flatMap((line) => line.pieces.map((piece) => [piece.id, { line, piece }] as const)),
    );
  const [oldPieces, newPieces] = [pieces(since.assessment), pieces(assessment)];
  const pieceRow = (verb: string, id: string): SupplementRow => {
    const [was, is] = [oldPieces.get(id), newPieces.get(id)];
    const { line, piece } = (is ?? was)!;
    const cause = causeOf(piece.member);
    return {
      of: piece.member,
      what: `${verb}: tube ${showTube(line.tube, units)} ${line.material}, ${piece.part}, ${showLength(piece.takesIn.value, units)} off the bar`,
      cause: cause.words,
      photos: cause.photos,
      hoursH: null,
      tubeIn: (is?.piece.takesIn.value ?? 0) - (was?.piece.takesIn.value ?? 0),
      money: null,
    };
  };
  const bare = { hoursH: null, tubeIn: null, money: null } as const;
  const rows: readonly SupplementRow[] = [
    ...found.map((f) => {
      const { words, photos } = findingCause(f);
      const corrects = gone.some(({ id }) => id === f.replaces);
      return {
        of: f.of,
        what: corrects ? 'Finding corrected' : 'Finding added',
        cause: words,
        photos,
        ...bare,
      };
    }),
    ...gone
      .filter(({ id }) => !found.some(({ replaces }) => replaces === id))
      .map((f) => ({
        of: f.of,
        what: 'Finding withdrawn',
        cause: findingCause(f).words,
        photos: [],
        ...bare,
      })),
    ...decided.map((d) => ({ of: d.of, what: 'Decision', cause: decisionWords(d), photos: [], ...bare })),
    ...undecided.map((d) => ({
      of: d.of,
      what: 'Decision withdrawn',
      cause: decisionWords(d),
      photos: [],
      ...bare,
    })),
    ...sums.added.map((l) => lineRow('Added', l, l.hours.likely)),
    ...sums.removed.map((l) => lineRow('Taken out', l, -l.hours.likely)),
    ...sums.changed.map(({ before, after }) =>
      lineRow('Changed', after, after.hours.likely - before.hours.likely),
    ),
    ...sums.pieces.added.map((id) => pieceRow('Added', id)),
    ...sums.pieces.removed.map((id) => pieceRow('Taken out', id)),
    ...sums.pieces.changed.map((id) => pieceRow('Changed', id)),
  ];
  const { members, clusters } = assessment.truss;
  const order = new Map([...members, ...clusters].map(({ id }, k) => [id, k]));
  const place = ({ of }: SupplementRow): number => order.get(of) ?? order.size;
  return {
    rows: rows
      .map((row, k) => ({ row, k }))
      .sort((a, b) => place(a.row) - place(b.row) || a.k - b.k)
      .map(({ row }) => row),
    sums,
    currency: money?.currency ?? null,
    moneySum: priced(sums.meanH),
  };
};
