import { holds } from '../../core/job/jobSchema.ts';
import type { Adjustment, Cause } from '../../core/trammel/adjustment.ts';
import { showLength } from '../show.ts';
import { clusterWords } from '../words/names.ts';
import { holdWords } from '../words/record.ts';
import type { Showing } from './showing.ts';

/** What each hold's readings say of themselves as a whole: do they fit, and if not, every cause found. */
export const fitLines = (showing: Showing): readonly string[] =>
  holds.flatMap((hold) => {
    const adjustment = showing.assessment.trammel.byHold[hold];
    if (!adjustment) return [];
    const head = `${holdWords[hold].charAt(0).toUpperCase()}${holdWords[hold].slice(1)}: ${adjustment.readings.length} readings, ${adjustment.degreesOfFreedom} to spare`;
    return [`${head}; ${fitWords(adjustment, showing)}.`];
  });

const fitWords = ({ fits, causes = [] }: Adjustment, showing: Showing): string => {
  if (fits === 'fits') return 'they agree with each other within their uncertainty';
  if (fits === 'cannotTell') return 'too few to check against each other';
  return ['they do not agree with each other', ...causes.map((cause) => causeWords(cause, showing))].join(
    '; ',
  );
};

/** A reading by its line; a cluster by its id. */
const named = ({ job }: Showing, id: string): string => {
  const record = job.records.find((r) => r.id === id);
  return record?.kind === 'reading' ? record.ends.map(({ cluster }) => cluster).join('–') : id;
};

const causeWords = (cause: Cause, showing: Showing): string => {
  switch (cause.kind) {
    case 'misread':
      return `most likely reading ${named(showing, cause.reading)} is misread and should say ${showLength(cause.shouldBeIn, showing.units)}`;
    case 'datumMoved':
      return `most likely the reference point ${clusterWords(cause.cluster)} (${cause.cluster}) has moved`;
    case 'cannotTell': {
      const between = cause.between ?? [];
      const which =
        between.length > 1 ? ` between ${between.map((id) => named(showing, id)).join(' and ')}` : '';
      return `the cause cannot be told${which}: read ${cause.readAlso.length > 0 ? cause.readAlso.join(', ') : 'more distances'} too`;
    }
    default: {
      const never: never = cause;
      return never;
    }
  }
};
