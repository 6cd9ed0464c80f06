import { holds } from '../../core/job/jobSchema.ts';
import type { Adjustment } from '../../core/trammel/result.ts';
import { showLength } from '../show.ts';
import { clusterWords } from '../words/names.ts';
import { holdWords } from '../words/record.ts';
import type { Showing } from './showing.ts';

/** What each hold's readings say of themselves as a whole: do they fit, and if not, why. */
export const fitLines = ({ assessment, units }: Showing): readonly string[] =>
  holds.flatMap((hold) => {
    const adjustment = assessment.trammel.byHold[hold];
    if (!adjustment) return [];
    const head = `${holdWords[hold].charAt(0).toUpperCase()}${holdWords[hold].slice(1)}: ${adjustment.readings.length} readings, ${adjustment.degreesOfFreedom} to spare`;
    return [`${head}; ${fitWords(adjustment, units)}.`];
  });

const fitWords = ({ fits, cause }: Adjustment, units: Showing['units']): string => {
  if (fits === 'fits') return 'they agree with each other within their uncertainty';
  if (fits === 'cannotTell') return 'too few to check against each other';
  const head = 'they do not agree with each other';
  if (cause === undefined) return head;
  switch (cause.kind) {
    case 'misread':
      return `${head}; most likely reading ${cause.reading} is misread and should say ${showLength(cause.shouldBeIn, units)}`;
    case 'datumMoved':
      return `${head}; most likely the reference point ${clusterWords(cause.cluster)} (${cause.cluster}) has moved`;
    case 'cannotTell':
      return `${head}; the cause cannot be told: read ${cause.readAlso.length > 0 ? cause.readAlso.join(', ') : 'more distances'} too`;
    default: {
      const never: never = cause;
      return never;
    }
  }
};
