import * as z from 'zod/mini';
import { modelSchema } from './modelSchema.ts';

/**
 * The job document: the model as it stood when the job began, and records that never change.
 * A correction is a new record with `replaces`, a removal one with `withdraws`. Unknown fields are kept.
 */
export const JOB_VERSION = 1;

const text = z.string().check(z.minLength(1), z.maxLength(200));
const longText = z.string().check(z.maxLength(20_000));
const lengthIn = z.number().check(z.minimum(0), z.maximum(1200));
const clock = z.number().check(z.minimum(0), z.maximum(12));

const stamp = {
  id: text,
  by: text,
  /** ISO 8601 time, handed in by the rim. */
  at: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/)),
  device: text,
  replaces: z.optional(text),
  withdraws: z.optional(text),
  /** Lengths as the person typed them, by field name. */
  typed: z.optional(z.record(z.string(), z.string())),
};

export const lookMethods = [
  'eye',
  'magnifier',
  'penetrant',
  'magneticParticle',
  'ultrasonic',
  'borescope',
  'other',
] as const;
const lookSchema = z.looseObject({
  kind: z.literal('look'),
  ...stamp,
  /** Member or cluster id. */
  of: text,
  state: z.enum(['lookedAt', 'lookAgain']),
  method: z.enum(lookMethods),
  finishRemoved: z.boolean(),
  note: z.optional(longText),
});

export const accessStates = ['covered', 'open', 'stripped', 'blasted'] as const;
const areaSchema = z.looseObject({
  kind: z.literal('area'),
  ...stamp,
  /** Bay (label of its forward station), and face when only one. */
  bay: text,
  face: z.optional(z.enum(['left', 'right', 'top', 'bottom', 'ring'])),
  access: z.enum(accessStates),
  /** Answer to "same side?" for this bay: both sides are hurt. */
  bothSidesHurt: z.optional(z.boolean()),
});

const findingStamp = {
  kind: z.literal('finding'),
  ...stamp,
  /** Member or cluster id. */
  of: text,
  origin: z.enum(['thisAccident', 'older', 'unknown']),
  /** Place along the member: distance `atIn` from cluster `from`. */
  place: z.optional(z.looseObject({ from: text, atIn: lengthIn })),
  clock: z.optional(clock),
  note: z.optional(longText),
};
const share = z.optional(lengthIn);

const bow = z.looseObject({
  damage: z.literal('bow'),
  ...findingStamp,
  /** Depth over `chordIn` (cluster to cluster when left out). */
  depthIn: share,
  chordIn: share,
  shape: z.optional(z.enum(['smooth', 'kinked'])),
  stdIn: share,
  /** Length of the bent part, when it is not the whole chord. */
  alongIn: share,
});
const kink = z.looseObject({
  damage: z.literal('kink'),
  ...findingStamp,
  depthIn: share,
  chordIn: share,
  stdIn: share,
  alongIn: share,
});
const dent = z.looseObject({
  damage: z.literal('dent'),
  ...findingStamp,
  depthIn: share,
  alongIn: share,
  widthIn: share,
  /** Caliper across the dent, or tape around the tube: the two differ by 11 % at a quarter. */
  widthBy: z.optional(z.enum(['across', 'around'])),
  /** Bottom of the dent: a sharp corner closes the welded patch. */
  corner: z.optional(z.enum(['smooth', 'sharp'])),
});
const crack = z.looseObject({
  damage: z.literal('crack'),
  ...findingStamp,
  crackIn: share,
  where: z.optional(z.enum(['weldToe', 'bead', 'tube', 'gusset', 'fitting'])),
});
const oval = z.looseObject({
  damage: z.literal('oval'),
  ...findingStamp,
  largestIn: share,
  smallestIn: share,
  /** Gap under a roundness template, when no caliper was used. */
  templateGapIn: share,
  alongIn: share,
});
const thinned = z.looseObject({
  damage: z.literal('thinned'),
  ...findingStamp,
  wallLeftIn: share,
  cause: z.optional(z.enum(['rust', 'chafe', 'unknown'])),
  alongIn: share,
});
const hole = z.looseObject({ damage: z.literal('hole'), ...findingStamp, alongIn: share, widthIn: share });
const broken = z.looseObject({ damage: z.literal('break'), ...findingStamp, gapIn: share });
const other = z.looseObject({ damage: z.literal('other'), ...findingStamp, what: longText });

export const findingSchema = z.discriminatedUnion('damage', [
  bow,
  kink,
  dent,
  crack,
  oval,
  thinned,
  hole,
  broken,
  other,
]);

export const markKinds = ['axis', 'surface', 'nearEdge', 'farEdge', 'hole'] as const;
const readingEnd = z.looseObject({
  cluster: text,
  mark: z.enum(markKinds),
  /** Tube that carries the mark; needed by every mark but `axis`, with `clock`. */
  on: z.optional(text),
  clock: z.optional(clock),
  alongIn: z.optional(lengthIn),
});
export const holds = [
  'beforeCutting',
  'afterCutting',
  'afterSpreading',
  'beforeTacking',
  'afterTacking',
  'afterWelding',
] as const;
export const instruments = ['trammel', 'tape', 'caliper', 'laser', 'other'] as const;
/** Lines a point can be measured from square: the string down the middle, a level line. */
export const planeLines = ['centreLine', 'level'] as const;
const readingSchema = z.looseObject({
  kind: z.literal('reading'),
  ...stamp,
  ends: z.tuple([readingEnd, readingEnd]),
  lengthIn: z.optional(z.number().check(z.positive(), z.maximum(1200))),
  /** Trammel set to `setIn`; the far point stood `missIn` beyond (+) or inside (−) the mark. */
  setAndMiss: z.optional(
    z.looseObject({ setIn: z.number().check(z.positive(), z.maximum(1200)), missIn: z.number() }),
  ),
  /** In place of a length: how far the first end stands off a string or a level line (both ends name the same cluster). */
  plane: z.optional(
    z.looseObject({
      line: z.enum(planeLines),
      /** Right of the centre-line string, or above the level line: positive. */
      offIn: z.number().check(z.minimum(-600), z.maximum(600)),
      /** Butt line or water line that the string or level line lies at; 0 when left out. */
      lineAtIn: z.optional(z.number().check(z.minimum(-600), z.maximum(600))),
    }),
  ),
  instrument: z.enum(instruments),
  /** One standard deviation; 1/32 in assumed when left out. */
  stdIn: z.optional(z.number().check(z.positive(), z.maximum(12))),
  hold: z.enum(holds),
});

export const choices = [
  'straighten',
  'roundOut',
  'patch',
  'splitSleeve',
  'splice',
  'replace',
  'fingerPlate',
  'rebuild',
  'refer',
] as const;
const decisionSchema = z.looseObject({
  kind: z.literal('decision'),
  ...stamp,
  of: text,
  choice: z.enum(choices),
  reason: z.optional(longText),
});

const heldSchema = z.looseObject({
  kind: z.literal('held'),
  ...stamp,
  /** Set-up of the model. */
  setup: z.optional(text),
  /** Or clusters held, named here. */
  held: z.optional(
    z.array(z.looseObject({ cluster: text, fixed: z.array(z.enum(['x', 'y', 'z', 'rx', 'ry', 'rz'])) })),
  ),
  braces: z.optional(
    z.array(
      z.looseObject({
        from: text,
        to: text,
        odIn: z.number().check(z.positive()),
        wallIn: z.number().check(z.positive()),
      }),
    ),
  ),
  note: z.optional(longText),
});

const mishapSchema = z.looseObject({
  kind: z.literal('mishap'),
  ...stamp,
  blow: z.optional(
    z.looseObject({ cluster: text, direction: z.tuple([z.number(), z.number(), z.number()]) }),
  ),
  cases: z.array(text),
  story: z.optional(longText),
});

/** The user's own data, which outranks the general rules: limits, sleeve table, rules. */
const manualSchema = z.looseObject({
  kind: z.literal('manual'),
  ...stamp,
  topic: text,
  valueIn: z.optional(z.number()),
  /** A value that is no length, with its unit. */
  value: z.optional(z.number()),
  unit: z.optional(z.enum(['in', 'psi', '1', '%'])),
  words: z.optional(longText),
  source: longText,
});
/** Whether the side of a weld that lies away from the eye was seen. */
export const farSides = ['seen', 'mirror', 'notSeen'] as const;
const rateSchema = z.looseObject({
  kind: z.literal('rate'),
  ...stamp,
  operation: text,
  hours: z.optional(z.number()),
  /** `hours` is the most likely; least and most. */
  bestHours: z.optional(z.number()),
  worstHours: z.optional(z.number()),
  /** Once a bay. */
  setUpHours: z.optional(z.number()),
  /** Money an hour, for the operation `labour`, and in what. */
  amount: z.optional(z.number()),
  currency: z.optional(text),
});
/** Lengths along a member are from its `from` cluster. */
const progressSchema = z.looseObject({
  kind: z.literal('progress'),
  ...stamp,
  /** What was done: `straighten:MEMBER` … */
  step: text,
  done: z.boolean(),
  of: z.optional(text),
  /** Why it counts as done although something asked for is not as asked. */
  reason: z.optional(longText),
  /** A gate opened by name: why. Page one of the report repeats it. */
  opened: z.optional(longText),
  /** Who else looked. */
  secondPerson: z.optional(text),
  /** What shows size and material: certificate, tag, measured wall. */
  proof: z.optional(longText),
  /** One spreading or drawing: distance while pushed, and after letting go. */
  spread: z.optional(
    z.looseObject({
      from: text,
      to: text,
      beforeIn: lengthIn,
      pushedIn: lengthIn,
      leftIn: lengthIn,
      forceLbf: z.optional(z.number().check(z.minimum(0))),
    }),
  ),
  /** How a joint fitted before tacking, seen by a second person: it cannot be seen afterwards. */
  fitUp: z.optional(
    z.looseObject({
      gapIn: z.optional(lengthIn),
      overlapIn: z.optional(lengthIn),
      marksCentred: z.optional(z.boolean()),
      secondPerson: z.optional(text),
    }),
  ),
  /** Gap from a straight edge or string to the tube, the edge lying on the side `clock`. */
  straightEdge: z.optional(
    z
      .array(
        z.looseObject({
          stationsIn: z.array(lengthIn).check(z.maxLength(100)),
          offsetsIn: z.array(z.number().check(z.minimum(-120), z.maximum(120))).check(z.maxLength(100)),
          clock,
          stdIn: z.optional(z.number().check(z.positive(), z.maximum(12))),
        }),
      )
      .check(z.maxLength(24)),
  ),
  /** One press: travel of the ram from where the tube lay, and what stayed after letting go. */
  push: z.optional(
    z.looseObject({
      atIn: lengthIn,
      spanIn: z.number().check(z.positive(), z.maximum(1200)),
      pressedIn: lengthIn,
      leftIn: lengthIn,
      forceLbf: z.optional(z.number().check(z.minimum(0))),
      /** Side the ram stood on. */
      clock: z.optional(clock),
    }),
  ),
  roundness: z.optional(
    z.looseObject({ atIn: z.optional(lengthIn), largestIn: lengthIn, smallestIn: lengthIn, stdIn: share }),
  ),
  /** One weld of a repair: how it was made, and what was seen of it. Its step is `weldAt:MEMBER:JOINT`. */
  weld: z.optional(
    z.looseObject({
      /** Cluster the joint lies at or towards; left out: the one joint there is. */
      joint: z.optional(text),
      process: z.optional(longText),
      filler: z.optional(longText),
      farSide: z.optional(z.enum(farSides)),
      method: z.optional(z.enum(lookMethods)),
      result: z.optional(z.enum(['clear', 'crack'])),
    }),
  ),
  /** Looked at again for cracks. */
  inspected: z.optional(
    z.looseObject({
      method: z.enum(lookMethods),
      place: z.enum(['bend', 'pressPoints', 'endWelds']),
      result: z.enum(['clear', 'crack']),
    }),
  ),
});
/** Shares of a photo's width and height, from its upper left corner. */
const spot = z.tuple([
  z.number().check(z.minimum(0), z.maximum(1)),
  z.number().check(z.minimum(0), z.maximum(1)),
]);
/** What a photo shows of a repair: the damage as found, the work under way, the repair as left. */
export const photoTimes = ['asFound', 'atWork', 'asLeft'] as const;
export const photoMarks = ['arrow', 'ring', 'text'] as const;
const photoSchema = z.looseObject({
  kind: z.literal('photo'),
  ...stamp,
  /** Member or cluster id. */
  of: text,
  /** SHA-256 of the picture's bytes, which are kept beside the job. */
  hash: text,
  looking: z.optional(longText),
  /** The finding it shows. */
  finding: z.optional(text),
  /** Left out: told by its time, before the first tick of the repair or after the last. */
  shows: z.optional(z.enum(photoTimes)),
  /** Drawn on it: an arrow from `at` to `to`, a ring about `at` through `to`, words at `at`. */
  marks: z.optional(
    z
      .array(
        z.looseObject({
          mark: z.enum(photoMarks),
          at: spot,
          to: z.optional(spot),
          words: z.optional(longText),
        }),
      )
      .check(z.maxLength(50)),
  ),
});
const noteSchema = z.looseObject({
  kind: z.literal('note'),
  ...stamp,
  of: z.optional(text),
  words: longText,
});
const modelRecordSchema = z.looseObject({ kind: z.literal('model'), ...stamp, model: modelSchema });

/** Each record kind, once. `withdraws` alone makes a record whose own content no longer counts. */
export const recordSchemas = {
  look: lookSchema,
  area: areaSchema,
  finding: findingSchema,
  reading: readingSchema,
  decision: decisionSchema,
  held: heldSchema,
  mishap: mishapSchema,
  manual: manualSchema,
  rate: rateSchema,
  progress: progressSchema,
  photo: photoSchema,
  note: noteSchema,
  model: modelRecordSchema,
} as const;

export const recordSchema = z.union([
  lookSchema,
  areaSchema,
  findingSchema,
  readingSchema,
  decisionSchema,
  heldSchema,
  mishapSchema,
  manualSchema,
  rateSchema,
  progressSchema,
  photoSchema,
  noteSchema,
  modelRecordSchema,
]);

export const jobSchema = z.looseObject({
  format: z.literal('tubewright-job'),
  version: z.literal(JOB_VERSION),
  purpose: z.enum(['job', 'practice']),
  name: text,
  /** Whose aircraft and what, as entered: free words, no look-up. */
  aircraft: z.optional(longText),
  model: modelSchema,
  records: z.array(recordSchema),
});

/** The named fields of a loose type: without the index signature that would turn them all to `unknown`. */
export type Known<T> = { [K in keyof T as string extends K ? never : K]: T[K] };

export type Job = Readonly<Omit<Known<z.infer<typeof jobSchema>>, 'records'>> & {
  readonly records: readonly JobRecord[];
  /** Records that could not be read, as they came. Not a field of the file: they are written back among the records. */
  readonly setAside?: readonly unknown[];
};
export type JobRecord = z.infer<typeof recordSchema>;
export type RecordKind = keyof typeof recordSchemas;
export type RecordOf<K extends RecordKind> = z.infer<(typeof recordSchemas)[K]>;
export type Look = RecordOf<'look'>;
export type Finding = RecordOf<'finding'>;
export type Damage = Finding['damage'];
export type Reading = RecordOf<'reading'>;
export type ReadingEnd = Reading['ends'][number];
export type Hold = (typeof holds)[number];
export type Photo = RecordOf<'photo'>;
export type PhotoMark = NonNullable<Photo['marks']>[number];
export type Decision = RecordOf<'decision'>;
export type Choice = (typeof choices)[number];
export type Held = RecordOf<'held'>;
export type Mishap = RecordOf<'mishap'>;
