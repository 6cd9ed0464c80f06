import type { JobRecord, RecordOf } from '../../core/job/jobSchema.ts';
import { jsonText } from '../../core/job/jsonText.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import { fixed, showLength, type Units } from '../show.ts';
import { choiceWords, damageTags } from '../tags.ts';
import { operationWords, topicWords } from './estimate.ts';
import { findingPlace, findingSize } from './findings.ts';
import { countWords, zoneWords } from './names.ts';
import { accessWords, holdWords, instrumentWords, markWords, methodWords, originWords } from './record.ts';
import { stepWords } from './steps.ts';

/** What stands in a record, in words, for every kind: as two tablets' versions of it are laid side by side. */

const joined = (...parts: readonly (string | undefined | false)[]): string =>
  parts.filter((part): part is string => typeof part === 'string' && part !== '').join(', ');

const small = (valueIn: number, units: Units): string => showLength(valueIn, units, 64);

const named = (name: string, valueIn: number | undefined, units: Units): string | undefined =>
  valueIn === undefined ? undefined : `${name} ${small(valueIn, units)}`;

const clockWords = (clock: number | undefined): string | undefined =>
  clock === undefined ? undefined : `at ${fixed(clock, clock % 1 === 0 ? 0 : 1)} o'clock`;

const look = (r: RecordOf<'look'>): string =>
  joined(
    r.state === 'lookedAt' ? 'looked at' : 'look again',
    methodWords[r.method],
    r.finishRemoved ? 'finish off' : 'finish on',
    r.note,
  );

const area = (r: RecordOf<'area'>): string =>
  joined(
    r.face === undefined ? `bay ${r.bay}` : zoneWords(`${r.bay} ${r.face}`),
    accessWords[r.access],
    r.bothSidesHurt === undefined ? '' : r.bothSidesHurt ? 'both sides are hurt' : 'one side is hurt',
  );

const reading = (r: RecordOf<'reading'>, units: Units): string => {
  const ends = r.ends.map(({ cluster, mark, on, clock }) =>
    joined(`${cluster} ${markWords[mark]}${on === undefined ? '' : ` of ${on}`}`, clockWords(clock)),
  );
  const { setAndMiss, plane } = r;
  return joined(
    plane ? ends[0] : ends.join(' to '),
    r.lengthIn !== undefined && small(r.lengthIn, units),
    setAndMiss &&
      `set to ${small(setAndMiss.setIn, units)}, ${small(Math.abs(setAndMiss.missIn), units)} ${setAndMiss.missIn < 0 ? 'inside' : 'beyond'}`,
    plane &&
      `${small(Math.abs(plane.offIn), units)} ${plane.line === 'centreLine' ? `${plane.offIn < 0 ? 'left' : 'right'} of the string` : `${plane.offIn < 0 ? 'below' : 'above'} the level line`}`,
    instrumentWords[r.instrument],
    r.stdIn !== undefined && `± ${small(r.stdIn, units)}`,
    holdWords[r.hold],
  );
};

const held = (r: RecordOf<'held'>, units: Units): string =>
  joined(
    r.setup !== undefined && `set-up ${r.setup}`,
    ...(r.held ?? []).map(({ cluster, fixed: ways }) => `${cluster} held in ${ways.join(' ')}`),
    ...(r.braces ?? []).map(
      ({ from, to, odIn, wallIn }) =>
        `brace ${from} to ${to}, ${small(odIn, units)} × ${small(wallIn, units)}`,
    ),
    r.note,
  );

const axes = ['aft', 'right', 'up'] as const;
const back = ['forward', 'left', 'down'] as const;

const mishap = ({ blow, cases, story }: RecordOf<'mishap'>): string =>
  joined(
    blow &&
      `blow at ${blow.cluster} toward ${
        blow.direction
          .flatMap((part, k) =>
            part === 0 ? [] : [`${fixed(Math.abs(part), 2)} ${(part > 0 ? axes : back)[k]}`],
          )
          .join(', ') || 'no side'
      }`,
    cases.length > 0 && `load cases ${cases.join(', ')}`,
    story,
  );

const manual = (r: RecordOf<'manual'>, units: Units): string =>
  joined(
    topicWords[r.topic] ?? r.topic.replaceAll(':', ' '),
    r.valueIn !== undefined && small(r.valueIn, units),
    r.value !== undefined && `${r.value}${r.unit === undefined || r.unit === '1' ? '' : ` ${r.unit}`}`,
    r.words,
    `source: ${r.source}`,
  );

const rate = (r: RecordOf<'rate'>): string =>
  joined(
    operationWords(r.operation),
    r.hours !== undefined && `${r.hours} h`,
    r.bestHours !== undefined && `least ${r.bestHours} h`,
    r.worstHours !== undefined && `most ${r.worstHours} h`,
    r.setUpHours !== undefined && `setting up ${r.setUpHours} h`,
    r.amount !== undefined && `${r.amount} ${r.currency ?? ''}`.trim(),
  );

const measured = (r: RecordOf<'progress'>, units: Units): readonly (string | undefined | false)[] => [
  r.spread &&
    `${r.spread.from} to ${r.spread.to}: ${small(r.spread.beforeIn, units)} before, ${small(r.spread.pushedIn, units)} pushed, ${small(r.spread.leftIn, units)} left`,
  r.fitUp && joined(named('gap', r.fitUp.gapIn, units), named('overlap', r.fitUp.overlapIn, units)),
  r.fitUp?.marksCentred !== undefined && (r.fitUp.marksCentred ? 'marks centred' : 'marks not centred'),
  r.fitUp?.secondPerson !== undefined && `seen by ${r.fitUp.secondPerson}`,
  ...(r.straightEdge ?? []).map(
    ({ offsetsIn, clock }) =>
      `straight edge ${clockWords(clock)}: ${offsetsIn.map((one) => small(one, units)).join('; ')}`,
  ),
  r.push &&
    joined(
      `pressed ${small(r.push.pressedIn, units)} at ${small(r.push.atIn, units)}`,
      `left ${small(r.push.leftIn, units)}`,
      clockWords(r.push.clock),
    ),
  r.roundness &&
    `largest ${small(r.roundness.largestIn, units)}, smallest ${small(r.roundness.smallestIn, units)}`,
  r.inspected &&
    `${methodWords[r.inspected.method]}: ${r.inspected.result === 'crack' ? 'crack found' : 'no crack found'}`,
];

const progress = (r: RecordOf<'progress'>, units: Units): string =>
  joined(
    stepWords(r.step),
    r.done ? 'done' : 'not done',
    ...measured(r, units),
    r.reason,
    r.opened !== undefined && `opened: ${r.opened}`,
    r.secondPerson !== undefined && `second person ${r.secondPerson}`,
    r.proof,
  );

const photo = (r: RecordOf<'photo'>): string => {
  const marks = r.marks ?? [];
  const count = (mark: string): number => marks.filter((one) => one.mark === mark).length;
  return joined(
    r.looking,
    count('arrow') > 0 && countWords(count('arrow'), 'arrow'),
    count('ring') > 0 && countWords(count('ring'), 'ring'),
    ...marks.flatMap((one) => (one.mark === 'text' ? [`"${one.words ?? ''}"`] : [])),
    marks.length === 0 && 'no marks',
    `picture ${r.hash.slice(0, 8)}`,
  );
};

const parts = {
  stations: 'stations',
  bracing: 'bracing',
  tubes: 'tube sizes',
  clusters: 'clusters',
  members: 'tubes of its own',
  setups: 'ways of holding',
  loadCases: 'load cases',
  distances: 'distances',
} as const satisfies Partial<Record<keyof Model, string>>;

/** Which parts of a model two tablets changed differently; without another to compare, what it holds. */
const model = ({ model: one }: RecordOf<'model'>, others: readonly JobRecord[]): string => {
  const differing = (Object.keys(parts) as (keyof typeof parts)[]).filter((part) =>
    others.some(
      (other) =>
        other.kind === 'model' &&
        jsonText({ it: (other as RecordOf<'model'>).model[part] }) !== jsonText({ it: one[part] }),
    ),
  );
  return joined(
    one.name,
    countWords(one.stations.length, 'station'),
    differing.length > 0 && `other in: ${differing.map((part) => parts[part]).join(', ')}`,
  );
};

export const contentWords = (record: JobRecord, units: Units, others: readonly JobRecord[]): string => {
  if (record.withdraws !== undefined) return `takes out record ${record.withdraws.slice(0, 8)}`;
  switch (record.kind) {
    case 'look':
      return look(record);
    case 'area':
      return area(record);
    case 'finding':
      return joined(
        damageTags[record.damage].word,
        findingSize(record, units),
        findingPlace(record, units),
        originWords[record.origin],
        record.note,
      );
    case 'reading':
      return reading(record, units);
    case 'decision':
      return joined(choiceWords[record.choice], record.reason);
    case 'held':
      return held(record, units);
    case 'mishap':
      return mishap(record);
    case 'manual':
      return manual(record, units);
    case 'rate':
      return rate(record);
    case 'progress':
      return progress(record, units);
    case 'photo':
      return photo(record);
    case 'note':
      return record.words;
    case 'model':
      return model(record, others);
    default:
      return record satisfies never;
  }
};
