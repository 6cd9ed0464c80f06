import type { Unit } from './figure.ts';

/** What the number of a row is a share of, when it is one. D = outside diameter of the tube. */
export type ShareOf = 'outsideDiameter' | 'circumference';

/** A published limit or rule, or the statement that none is published: then there is no number, and never one of ours. */
export type LimitRow =
  | {
      readonly id: string;
      /** What it limits, in plain words. */
      readonly says: string;
      readonly value: number;
      readonly unit: Unit;
      readonly shareOf?: ShareOf;
      readonly source: string;
      /** Paragraph, table or page in the source. */
      readonly place: string;
    }
  | {
      readonly id: string;
      readonly says: string;
      readonly value: null;
      readonly source: 'no published limit';
      /** What was searched. */
      readonly place: string;
    };
