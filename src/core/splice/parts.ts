import { type Basis, type Figure, figure } from '../base/figure.ts';
import type { Tube } from '../job/modelSchema.ts';
import { roundSection } from '../truss/stock.ts';
import { lengthsOf, reachOf, volumeOf } from './cut.ts';
import type { EndCut } from './endCut.ts';
import type { Part, Piece, PieceEnd, Stub } from './result.ts';
import { basisOf } from './rules.ts';

const CUTS: Basis = { kind: 'computed', ref: 'places of the cuts' };

/** A length that follows from the places of the cuts. */
export const fromCuts = (value: number, assumed: readonly string[] = []): Figure =>
  figure(value, 'in', CUTS, assumed);

/** A length that a rule gives. */
export const byRule = (value: number, rule: string, assumed: readonly string[] = []): Figure =>
  figure(value, 'in', basisOf(rule), assumed);

export const areaOf = (tube: Tube): number => roundSection(tube)?.areaIn2 ?? 0;

const middle = (cut: EndCut, lengthIn: number): number =>
  cut.kind === 'cope' ? (cut.way === 1 ? lengthIn : 0) : cut.atIn;

/** A piece of tube between two cuts, weighed. */
export const partOf = (
  piece: Piece,
  part: Pick<Part, 'id' | 'kind' | 'tube' | 'material' | 'ends' | 'slideOn'>,
  assumed: readonly string[] = [],
): Part => {
  const { low, high } = lengthsOf(part.ends, part.tube.odIn / 2);
  const axis = middle(part.ends[1], piece.lengthIn) - middle(part.ends[0], piece.lengthIn);
  return {
    ...part,
    longIn: fromCuts(high, assumed),
    shortIn: fromCuts(low, assumed),
    axisIn: fromCuts(axis, assumed),
    weightLb: figure(
      volumeOf(part.tube, areaOf(part.tube), part.ends) * piece.densityLbIn3,
      'lb',
      { kind: 'computed', ref: 'volume between the cuts times density' },
      [`density-${piece.densityLbIn3}-lb/in3`],
    ),
  };
};

/** What is left of the old tube at its `from` (0) or `to` (1) end. */
export const stubOf = (piece: Piece, end: 0 | 1, cut: EndCut): Stub => {
  const side: PieceEnd = piece.ends[end];
  const { low, high } = reachOf(cut, piece.tube.odIn / 2);
  const [long, short] = end === 0 ? [high, low] : [piece.lengthIn - low, piece.lengthIn - high];
  return {
    cluster: side.cluster,
    cut,
    longIn: fromCuts(long),
    shortIn: fromCuts(short),
    clearIn: fromCuts(short - side.toeIn.value, side.toeIn.assumed),
  };
};

/** Weight put in less weight taken out. */
export const addedWeight = (
  piece: Piece,
  parts: readonly Part[],
  takenOut: readonly [EndCut, EndCut],
): Figure => {
  const out = volumeOf(piece.tube, areaOf(piece.tube), takenOut) * piece.densityLbIn3;
  return figure(
    parts.reduce((sum, p) => sum + p.weightLb.value, 0) - out,
    'lb',
    { kind: 'computed', ref: 'parts less the length cut out' },
    ['weld-metal-not-counted', `density-${piece.densityLbIn3}-lb/in3`],
  );
};
