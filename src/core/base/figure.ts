/** What a number rests on. Order of rank when two compete: drawing, manual, measured, rule, computed, practice, assumed. */
export type BasisKind = 'drawing' | 'manual' | 'rule' | 'practice' | 'measured' | 'computed' | 'assumed';

export interface Basis {
  readonly kind: BasisKind;
  /** Document and place in it, the record's id, or the method's name. */
  readonly ref: string;
}

/** The units a figure may carry. Inside core nothing else exists. */
export type Unit =
  | 'in'
  | 'in2'
  | 'lbf'
  | 'psi'
  | 'in-lbf'
  | 'lb'
  | 'lb-in'
  | 'h'
  | 'deg'
  | 'rad'
  | '1'
  | '%'
  | 'count';

/** A number that a person may act on: value, unit, what it rests on, what it assumed. A range has `low` and `high`. */
export interface Figure {
  readonly value: number;
  readonly unit: Unit;
  readonly low?: number;
  readonly high?: number;
  /** One standard deviation, same unit. */
  readonly std?: number;
  readonly basis: Basis;
  readonly assumed: readonly string[];
}

export const figure = (
  value: number,
  unit: Unit,
  basis: Basis,
  assumed: readonly string[] = [],
  spread: { low?: number; high?: number; std?: number } = {},
): Figure => ({ value, unit, ...spread, basis, assumed });
