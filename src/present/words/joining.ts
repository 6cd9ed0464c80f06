import type { JobRecord, RecordKind } from '../../core/job/jobSchema.ts';
import type { Conflict, Joining } from '../../core/job/joining.ts';
import { jsonText } from '../../core/job/jsonText.ts';
import { showLength, showTime, type Units } from '../show.ts';
import { choiceWords, damageTags } from '../tags.ts';
import { findingPlace, findingSize } from './findings.ts';
import { countWords } from './names.ts';

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

const stamped = new Set(['kind', 'id', 'by', 'at', 'device', 'replaces', 'withdraws', 'typed']);

const rest = (record: JobRecord): string =>
  jsonText(Object.fromEntries(Object.entries(record).filter(([key]) => !stamped.has(key)))).slice(0, 300);

const content = (record: JobRecord, units: Units): string => {
  if (record.withdraws !== undefined) return `takes out record ${record.withdraws.slice(0, 8)}`;
  switch (record.kind) {
    case 'finding':
      return [damageTags[record.damage].word, findingSize(record, units), findingPlace(record, units)]
        .filter((part) => part !== '')
        .join(', ');
    case 'decision':
      return `${choiceWords[record.choice]}${record.reason ? `: ${record.reason}` : ''}`;
    case 'reading':
      return `${record.ends.map(({ cluster }) => cluster).join(' to ')}${record.lengthIn === undefined ? '' : ` ${showLength(record.lengthIn, units, 64)}`}`;
    case 'note':
      return record.words;
    default:
      return rest(record);
  }
};

/** A record in words, as two tablets' versions of it are laid side by side. */
export const recordWords = (record: JobRecord, units: Units): string => {
  const of = 'of' in record && typeof record.of === 'string' ? ` on ${record.of}` : '';
  return `${kindWords[record.kind]}${of}: ${content(record, units)}`;
};

export const whoWords = ({ by, at, device }: JobRecord): string => `${by}, ${showTime(at)}, ${device}`;

/** What kind of conflict it is and what the joined job does about it. */
export const conflictWords = {
  sameId: 'One record with two contents. Both are kept; the later counts until one is removed.',
  corrections: 'Corrected on both tablets. Both corrections stand until one is removed.',
  severalStand: 'Decided on both tablets. Both are kept; the later counts until one is removed.',
  field: 'The two jobs say this differently.',
} as const satisfies Record<Conflict['kind'], string>;
