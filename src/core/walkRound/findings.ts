import { type Figure, figure, type Unit } from '../base/figure.ts';
import type { Damage, Finding, Known } from '../job/jobSchema.ts';

type Of<D extends Damage> = Extract<Finding, { damage: D }>;
type Field<D extends Damage> = Exclude<keyof Known<Of<D>>, number | symbol>;

/**
 * What must be measured for each kind of damage, in the order of the form.
 * Source: common practice, no source; dents and holes by what AC 43.13-1B 4-94 limits.
 */
export const measured = {
  bow: ['depthIn', 'place', 'clock'],
  kink: ['depthIn', 'place', 'clock'],
  dent: ['depthIn', 'alongIn', 'widthIn', 'widthBy', 'place', 'clock'],
  crack: ['crackIn', 'where', 'place', 'clock'],
  oval: ['largestIn', 'smallestIn', 'place'],
  thinned: ['wallLeftIn', 'cause', 'place', 'clock'],
  hole: ['alongIn', 'widthIn', 'place', 'clock'],
  break: ['gapIn', 'place'],
  other: ['what', 'place'],
} as const satisfies { readonly [D in Damage]: readonly Field<D>[] };
export type MeasuredField = (typeof measured)[Damage][number];

/** A cluster is a place itself: only along a tube are these asked. */
const alongTubeOnly: ReadonlySet<string> = new Set(['place', 'clock']);
/** A measurement that answers as well as the one asked for. */
const answersToo: Readonly<Record<string, string>> = {
  largestIn: 'templateGapIn',
  smallestIn: 'templateGapIn',
};

/** Fields of a finding that are still to be measured, in the order of the form. */
export const missingSizes = (finding: Finding, on: 'member' | 'cluster'): readonly MeasuredField[] => {
  const said = (field: string): boolean => {
    const value = (finding as Readonly<Record<string, unknown>>)[field];
    return value !== undefined && value !== '';
  };
  return (measured[finding.damage] as readonly MeasuredField[]).filter(
    (field) =>
      !said(field) && !said(answersToo[field] ?? field) && (on === 'member' || !alongTubeOnly.has(field)),
  );
};

/** A size set against the tube it is on. */
export interface Share {
  readonly of:
    | 'depthOfDiameter'
    | 'lengthOfDiameter'
    | 'widthOfCircumference'
    | 'ovality'
    | 'wallLost'
    | 'depthOfChord';
  readonly figure: Figure;
}

/** The numbers of the tube a finding is on. */
export interface OnTube {
  readonly odIn: number;
  readonly wallIn: number;
  /** Cluster to cluster. */
  readonly lengthIn: number;
}

/**
 * Share of the circumference under a width w on a tube of outside diameter D.
 *
 *   across, by caliper: asin(w/D)/π        around, by tape: w/(πD)
 *
 * @returns null when the width cannot lie on the tube (w > D across, w > πD around)
 * Assumes: a round tube. At a quarter of the circumference the two differ by 11 %.
 * Source: geometry of the circle.
 */
export const shareOfCircumference = (
  widthIn: number,
  odIn: number,
  by: 'across' | 'around',
): number | null => {
  const share = by === 'across' ? Math.asin(widthIn / odIn) / Math.PI : widthIn / (Math.PI * odIn);
  return share <= 1 ? share : null;
};

const widthShare = (finding: Of<'dent'> | Of<'hole'>, odIn: number, say: Say): readonly Share[] => {
  const { widthIn } = finding;
  if (widthIn === undefined) return [];
  const by = finding.damage === 'dent' ? finding.widthBy : undefined;
  if (by !== undefined) {
    const share = shareOfCircumference(widthIn, odIn, by);
    const how = by === 'across' ? 'asin(w/D)/π' : 'w/(πD)';
    return share === null ? [] : [say('widthOfCircumference', share, '1', how)];
  }
  const low = shareOfCircumference(widthIn, odIn, 'around');
  const high = shareOfCircumference(widthIn, odIn, 'across');
  if (low === null) return [];
  if (high === null)
    return [say('widthOfCircumference', low, '1', 'w/(πD)', ['width taken around: wider than the tube'])];
  const assumed = ['width not said to be across or around: low is around, high is across'];
  return [say('widthOfCircumference', high, '1', 'w/(πD) … asin(w/D)/π', assumed, { low, high })];
};

type Say = (
  of: Share['of'],
  value: number,
  unit: Unit,
  how: string,
  assumed?: readonly string[],
  spread?: { low?: number; high?: number },
) => Share;

/**
 * The sizes of a finding as shares of its tube, as far as they were measured.
 *
 *   ovality % = 100 (Dmax − Dmin)/D      wall lost = 1 − t/t_nominal
 *
 * Assumes: D and t nominal, as the model gives them.
 * Source: common practice, no source; the shares of diameter and circumference are those AC 43.13-1B 4-94 limits.
 */
export const sharesOf = (finding: Finding, tube: OnTube): readonly Share[] => {
  const { odIn, wallIn } = tube;
  const say: Say = (of, value, unit, how, assumed = [], spread = {}) => ({
    of,
    figure: figure(value, unit, { kind: 'computed', ref: `${how}; finding ${finding.id}` }, assumed, spread),
  });
  const ratio = (of: Share['of'], size: number | undefined, over: number, how: string): readonly Share[] =>
    size === undefined ? [] : [say(of, size / over, '1', how)];
  switch (finding.damage) {
    case 'bow':
    case 'kink':
      return ratio('depthOfChord', finding.depthIn, finding.chordIn ?? tube.lengthIn, 'depth/chord');
    case 'dent':
      return [
        ...ratio('depthOfDiameter', finding.depthIn, odIn, 'depth/D'),
        ...widthShare(finding, odIn, say),
        ...ratio('lengthOfDiameter', finding.alongIn, odIn, 'length/D'),
      ];
    case 'hole':
      return [
        ...widthShare(finding, odIn, say),
        ...ratio('lengthOfDiameter', finding.alongIn, odIn, 'length/D'),
      ];
    case 'oval': {
      const { largestIn, smallestIn } = finding;
      if (largestIn === undefined || smallestIn === undefined) return [];
      return [say('ovality', (100 * (largestIn - smallestIn)) / odIn, '%', '100 (Dmax − Dmin)/D')];
    }
    case 'thinned': {
      const left = finding.wallLeftIn;
      return left === undefined ? [] : [say('wallLost', 1 - left / wallIn, '1', '1 − t/t nominal')];
    }
    case 'crack':
    case 'break':
    case 'other':
      return [];
    default:
      return finding satisfies never;
  }
};
