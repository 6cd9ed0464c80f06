import type { Finding } from '../../core/job/jobSchema.ts';
import { fixed, showLength, showUncertainty, type Units } from '../show.ts';
import { damageTags } from '../tags.ts';
import { crackPlaceWords } from './record.ts';

/** Small sizes are read off a scale or caliper: nearest 1/64. */
const size = (valueIn: number, units: Units): string => showLength(valueIn, units, 64);

const parts = (...all: readonly (string | undefined | false)[]): string =>
  all.filter((part): part is string => typeof part === 'string' && part !== '').join(', ');

const named = (name: string, valueIn: number | undefined, units: Units): string | undefined =>
  valueIn === undefined ? undefined : `${name} ${size(valueIn, units)}`;

const bowed = (f: Finding & { damage: 'bow' | 'kink' }, units: Units): string =>
  parts(
    f.depthIn !== undefined &&
      `${size(f.depthIn, units)} deep over ${f.chordIn === undefined ? 'cluster to cluster' : size(f.chordIn, units)}`,
    f.stdIn !== undefined && `± ${showUncertainty(f.stdIn, 'in', units)}`,
    f.damage === 'bow' && f.shape,
  );

/** The measured sizes of a finding, every figure with its name and unit; what is missing is said. */
export const findingSize = (finding: Finding, units: Units): string => {
  const words = sizes(finding, units);
  return words === '' ? 'size not yet given' : words;
};

const sizes = (f: Finding, units: Units): string => {
  switch (f.damage) {
    case 'bow':
    case 'kink':
      return bowed(f, units);
    case 'dent':
      return parts(
        named('depth', f.depthIn, units),
        named('length', f.alongIn, units),
        named(
          f.widthBy === undefined
            ? 'width'
            : f.widthBy === 'around'
              ? 'width by tape around'
              : 'width by caliper across',
          f.widthIn,
          units,
        ),
      );
    case 'crack':
      return parts(named('length', f.crackIn, units), f.where && crackPlaceWords[f.where]);
    case 'oval':
      return parts(
        named('largest', f.largestIn, units),
        named('smallest', f.smallestIn, units),
        named('gap under template', f.templateGapIn, units),
      );
    case 'thinned':
      return parts(
        f.wallLeftIn !== undefined &&
          `wall left ${showLength(f.wallLeftIn, units === 'mm' ? 'mm' : 'inDecimal')}`,
        f.cause !== undefined && f.cause !== 'unknown' && `by ${f.cause}`,
      );
    case 'hole':
      return parts(named('length', f.alongIn, units), named('width', f.widthIn, units));
    case 'break':
      return parts(named('gap', f.gapIn, units));
    case 'other':
      return f.what;
    default: {
      const never: never = f;
      return never;
    }
  }
};

/** Where on the tube: distance from a cluster and clock position; empty when neither was given. */
export const findingPlace = (finding: Pick<Finding, 'place' | 'clock'>, units: Units): string =>
  parts(
    finding.place && `${showLength(finding.place.atIn, units)} from ${finding.place.from}`,
    finding.clock !== undefined && `at ${fixed(finding.clock, finding.clock % 1 === 0 ? 0 : 1)} o'clock`,
  );

/** A finding in one line: "Bow 0.250 in · 1/4 deep over cluster to cluster, 12.000 in · 12 from U3L, at 6 o'clock". */
export const findingWords = (finding: Finding, units: Units): string =>
  `${damageTags[finding.damage].word}: ${parts(findingSize(finding, units), findingPlace(finding, units))}`;
