import type { JobRecord, RecordKind } from '../../core/job/jobSchema.ts';
import type { Conflict, Joining } from '../../core/job/joining.ts';
import { showTime, type Units } from '../show.ts';
import { countWords } from './names.ts';
import { contentWords } from './recordContent.ts';

const kindWords = {
  look: 'look',
  area: 'area',
  finding: 'finding',
  reading: 'reading',
  decision: 'decision',
  held: 'way of holding',
  mishap: 'mishap',
  manual: 'value of your own',
  rate: 'rate',
  progress: 'work step',
  photo: 'photo',
  note: 'note',
  model: 'change of the model',
} as const satisfies Record<RecordKind, string>;

const kindsWords: Readonly<Partial<Record<RecordKind, string>>> = {
  held: 'ways of holding',
  manual: 'values of your own',
  model: 'changes of the model',
};

/** What comes with another tablet's job: "3 findings, 12 looks". */
export const comesWords = ({ comes, comesInAll }: Joining): string =>
  comesInAll === 0
    ? 'nothing that is not here already'
    : (Object.entries(comes) as [RecordKind, number][])
        .map(([kind, n]) => countWords(n, kindWords[kind], kindsWords[kind]))
        .join(', ');

/** A record in words, as two tablets' versions of it are laid side by side. */
export const recordWords = (record: JobRecord, units: Units, others: readonly JobRecord[] = []): string => {
  const of = 'of' in record && typeof record.of === 'string' ? ` on ${record.of}` : '';
  return `${kindWords[record.kind]}${of}: ${contentWords(record, units, others)}`;
};

export const whoWords = ({ by, at, device }: JobRecord): string => `${by}, ${showTime(at)}, ${device}`;

/** What kind of conflict it is and what the joined job does about it. */
export const conflictWords = {
  sameId: 'One record with two contents. Both are kept; the later counts until one is removed.',
  corrections: 'Corrected on both tablets. Both corrections stand until one is removed.',
  severalStand: 'Decided on both tablets. Both are kept; the later counts until one is removed.',
  field: 'The two jobs say this differently.',
} as const satisfies Record<Conflict['kind'], string>;
