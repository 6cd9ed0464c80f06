import type { BasisKind } from '../../core/base/figure.ts';
import type {
  Damage,
  Finding,
  farSides,
  Hold,
  Look,
  photoTimes,
  Reading,
  ReadingEnd,
} from '../../core/job/jobSchema.ts';
import type { DistanceKind, Verdict } from '../../core/trammel/result.ts';
import type { Zone } from '../../core/walkRound/result.ts';

/** Words for what people enter and how things were measured. */

export const basisWords = {
  drawing: 'drawing',
  manual: 'your data',
  rule: 'published rule',
  practice: 'common practice',
  measured: 'measured',
  computed: 'computed',
  assumed: 'assumed',
} as const satisfies Record<BasisKind, string>;

export const verdictWords = {
  inside: 'inside the stated limit',
  outside: 'outside the stated limit',
  cannotTell: 'cannot tell',
  noLimit: 'difference only, no limit loaded',
} as const satisfies Record<Verdict, string>;

/** What to do about a verdict. */
export const verdictMends = {
  inside: '',
  outside: 'hold the target before tacking, then take it again',
  cannotTell: 'repeat the reading or use a finer instrument',
  noLimit: "enter the maker's limit, or decide on the difference",
} as const satisfies Record<Verdict, string>;

export const holdWords = {
  beforeCutting: 'as found, before cutting',
  afterCutting: 'after cutting',
  afterSpreading: 'after spreading',
  beforeTacking: 'before tacking',
  afterTacking: 'after tacking',
  afterWelding: 'as left, after welding',
} as const satisfies Record<Hold, string>;

export const distanceWords = {
  longeron: 'Longeron',
  vertical: 'Vertical',
  crossMember: 'Cross member',
  diagonal: 'Diagonal',
  ringDiagonal: 'Diagonal across the station',
  long: 'Long distance',
} as const satisfies Record<DistanceKind, string>;

export const methodWords = {
  eye: 'by eye',
  magnifier: 'magnifier',
  penetrant: 'dye penetrant',
  magneticParticle: 'magnetic particle',
  ultrasonic: 'ultrasonic',
  borescope: 'borescope',
  other: 'other method',
} as const satisfies Record<Look['method'], string>;

/** Was the side of a weld seen that lies away from the eye? */
export const farSideWords = {
  seen: 'seen',
  mirror: 'seen with a mirror',
  notSeen: 'could not be seen',
} as const satisfies Record<(typeof farSides)[number], string>;

export const photoTimeWords = {
  asFound: 'as found',
  atWork: 'during the work',
  asLeft: 'as left',
} as const satisfies Record<(typeof photoTimes)[number], string>;

export const instrumentWords = {
  trammel: 'trammel bar',
  tape: 'tape',
  caliper: 'caliper',
  laser: 'laser',
  other: 'other instrument',
} as const satisfies Record<Reading['instrument'], string>;

export const markWords = {
  axis: 'tube axis',
  surface: 'tube surface',
  nearEdge: 'near edge',
  farEdge: 'far edge',
  hole: 'hole',
} as const satisfies Record<ReadingEnd['mark'], string>;

export const accessWords = {
  covered: 'covered',
  open: 'open',
  stripped: 'stripped',
  blasted: 'blasted',
} as const satisfies Record<NonNullable<Zone['access']>, string>;

/** What a state of access cannot rule out. */
export const accessHides = {
  covered: 'nothing can be said of what is under the cover',
  open: 'cracks and rust under paint stay hidden',
  stripped: 'fine cracks under scale stay hidden',
  blasted: 'the inside of the tubes stays hidden',
} as const satisfies Record<NonNullable<Zone['access']>, string>;

export const originWords = {
  thisAccident: 'this accident',
  older: 'older',
  unknown: 'origin not known',
} as const satisfies Record<Finding['origin'], string>;

/** The sizes a kind of damage is known by; the first is the one without which its size is missing. */
export const sizeWanted = {
  bow: ['depth'],
  kink: ['depth'],
  dent: ['depth', 'length', 'width'],
  crack: ['length'],
  oval: ['largest and smallest diameter, or the gap under a template'],
  thinned: ['wall left'],
  hole: ['length and width'],
  break: ['gap'],
  other: [],
} as const satisfies Record<Damage, readonly string[]>;

export const crackPlaceWords = {
  weldToe: 'at the weld toe',
  bead: 'in the weld bead',
  tube: 'in the tube',
  gusset: 'in a gusset',
  fitting: 'in a fitting',
} as const;
