import { type Issue, issue } from '../base/issue.ts';
import type { JobRecord, Reading, RecordKind, RecordOf } from './jobSchema.ts';

const readingFaults = (reading: Reading): readonly Issue[] => {
  const [a, b] = reading.ends;
  const said = [reading.lengthIn, reading.setAndMiss, reading.plane].filter(
    (one) => one !== undefined,
  ).length;
  const { setIn, missIn } = reading.setAndMiss ?? { setIn: 1, missIn: 0 };
  return [
    ...(a.cluster === b.cluster && reading.plane === undefined
      ? [issue('reading-between-same-point', 'ends', { cluster: a.cluster }, 'name-two-clusters')]
      : []),
    ...reading.ends.flatMap((end, i) =>
      (['on', 'clock'] as const)
        .filter((field) => end.mark !== 'axis' && end[field] === undefined)
        .map((field) =>
          issue('mark-needs', `ends[${i}].${field}`, { mark: end.mark, field }, 'say-tube-and-clock'),
        ),
    ),
    ...(said === 1
      ? []
      : [issue('reading-needs-one-length', 'lengthIn', { said }, 'give-length-or-set-and-miss')]),
    ...(setIn - missIn > 0
      ? []
      : [issue('length-not-positive', 'setAndMiss.missIn', { got: setIn - missIn }, 'read-again')]),
  ];
};

const findingFaults = (finding: RecordOf<'finding'>): readonly Issue[] => {
  if (finding.damage !== 'oval') return [];
  const { largestIn = Number.POSITIVE_INFINITY, smallestIn = 0 } = finding;
  return largestIn < smallestIn
    ? [
        issue(
          'largest-below-smallest',
          'largestIn',
          { got: largestIn, least: smallestIn },
          'swap-or-measure-again',
        ),
      ]
    : [];
};

const mishapFaults = (mishap: RecordOf<'mishap'>): readonly Issue[] =>
  mishap.blow?.direction.every((part) => part === 0)
    ? [issue('blow-without-direction', 'blow.direction', {}, 'say-where-the-blow-went')]
    : [];

const byKind: { readonly [K in RecordKind]?: (record: RecordOf<K>) => readonly Issue[] } = {
  reading: readingFaults,
  finding: findingFaults,
  mishap: mishapFaults,
};

/** What contradicts itself in one record whose fields are each readable. Paths start at the record. */
export const recordFaults = (record: JobRecord): readonly Issue[] =>
  (byKind[record.kind] as ((record: JobRecord) => readonly Issue[]) | undefined)?.(record) ?? [];
