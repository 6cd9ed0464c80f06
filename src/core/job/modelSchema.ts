import * as z from 'zod/mini';

/**
 * The truss model, as a document: lengths inches, forces lbf, moments in-lbf, stresses psi, gravity in g.
 * x = station (aft), y = butt line (right), z = water line (up). Unknown fields are kept.
 */
export const MODEL_VERSION = 1;

const text = z.string().check(z.minLength(1), z.maxLength(200));
const longText = z.string().check(z.maxLength(20_000));
/** Any point of a light aircraft lies within 100 ft of its datum; beyond that the unit is wrong. */
const coordinate = z.number().check(z.minimum(-1200), z.maximum(1200));
const size = z.number().check(z.positive(), z.maximum(1200));
const triple = z.tuple([z.number(), z.number(), z.number()]);

export const tubeSchema = z.looseObject({
  odIn: z.number().check(z.positive(), z.maximum(12)),
  /** Wall = OD/2 is a solid rod. */
  wallIn: z.number().check(z.positive(), z.maximum(6)),
});

export const roles = [
  'upperLongeron',
  'lowerLongeron',
  'vertical',
  'crossMember',
  'sideDiagonal',
  'topDiagonal',
  'bottomDiagonal',
  'ringDiagonal',
  'other',
] as const;
const role = z.enum(roles);

/** One pair of longerons at a station. Half-width 0 merges left and right into one centre cluster, `U9C`. */
const pairSchema = z.looseObject({
  waterLineIn: coordinate,
  halfWidthIn: z.number().check(z.minimum(0), z.maximum(600)),
});

/** Where a place comes from; left out: the drawing. Mirrored places count as not measured. */
export const origins = ['drawing', 'measured', 'mirrored', 'assumed'] as const;
const origin = z.enum(origins);

const stationSchema = z.looseObject({
  /** Text in cluster ids: `4`, `4a`. */
  label: z.string().check(z.regex(/^[0-9]{1,4}[a-z]?$/)),
  stationIn: coordinate,
  upper: z.optional(pairSchema),
  lower: z.optional(pairSchema),
  origin: z.optional(origin),
});

const sideWord = z.enum(['rising', 'falling', 'crossed', 'none']);
const flatWord = z.enum(['toRight', 'toLeft', 'crossed', 'none']);

/** Diagonals of the bay aft of station `at`, and across the station itself (`ring`). A word left out is `none`. */
const bracingSchema = z.looseObject({
  at: text,
  left: z.optional(sideWord),
  right: z.optional(sideWord),
  top: z.optional(flatWord),
  bottom: z.optional(flatWord),
  ring: z.optional(flatWord),
});

/** A member's own numbers in place of those computed from its tube and material. */
const sectionSchema = z.looseObject({
  areaIn2: z.optional(z.number().check(z.positive())),
  inertiaIn4: z.optional(z.number().check(z.positive())),
  torsionIn4: z.optional(z.number().check(z.positive())),
  elasticPsi: z.optional(z.number().check(z.positive())),
  shearPsi: z.optional(z.number().check(z.positive())),
  yieldPsi: z.optional(z.number().check(z.positive())),
  densityLbIn3: z.optional(z.number().check(z.minimum(0))),
});

const tubesSchema = z.looseObject({
  /** Material id from `core/truss/stock.ts`, for every member that names none. */
  material: text,
  roles: z.partialRecord(role, tubeSchema),
  /** Later rows outrank earlier ones. Every condition given must hold. `bay` and `station` are station labels. */
  overrides: z.array(
    z.looseObject({
      bay: z.optional(text),
      station: z.optional(text),
      face: z.optional(z.enum(['left', 'right', 'top', 'bottom', 'ring'])),
      role: z.optional(role),
      member: z.optional(text),
      tube: tubeSchema,
    }),
  ),
});

const clusterSchema = z.looseObject({
  id: text,
  /** Station, butt line, water line. An id the table makes already is moved here. */
  at: z.tuple([coordinate, coordinate, coordinate]),
  /** What sits here: engine mount, landing gear, wing strut … */
  fitting: z.optional(longText),
  origin: z.optional(origin),
  /** The same as origin `assumed`. */
  assumed: z.optional(z.boolean()),
});

const endWord = z.enum(['welded', 'ball']);
const memberSchema = z.looseObject({
  /** Left out: made of the two clusters, forward station first. An id the pattern makes already is overridden. */
  id: z.optional(text),
  from: text,
  to: text,
  role: z.optional(role),
  tube: z.optional(tubeSchema),
  section: z.optional(sectionSchema),
  material: z.optional(text),
  /** End at `from` and at `to`; welded when left out. */
  ends: z.optional(z.tuple([endWord, endWord])),
  /** Column end-fixity coefficient c; a shop or manual value. */
  fixity: z.optional(z.number().check(z.positive(), z.maximum(4))),
  /** A bolted strut can be released without a saw. */
  bolted: z.optional(z.boolean()),
  /** What is nearby and burns or breaks: fabric, fuel, control cable … */
  near: z.optional(z.array(text)),
  /** Shop number or drawing item; searchable, never the key. */
  shopNumber: z.optional(text),
});

const freedoms = ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const;
const setupSchema = z.looseObject({
  id: text,
  name: text,
  held: z.array(z.looseObject({ cluster: text, fixed: z.array(z.enum(freedoms)) })),
});

const loadCaseSchema = z.looseObject({
  id: text,
  name: text,
  /** Set-up that carries the case; left out: how the truss is held now. `free` = balanced by its own inertia. */
  setup: z.optional(text),
  /** Acceleration of gravity as felt, in g: [0, 0, -1] is standing on the ground, [0, 0, 0] is none. */
  gravity: triple,
  loads: z.array(
    z.looseObject({ cluster: text, forceLbf: z.optional(triple), momentInLbf: z.optional(triple) }),
  ),
  /** Weight carried at a cluster (engine, gear), felt through `gravity`. */
  weights: z.optional(z.array(z.looseObject({ cluster: text, weightLbf: z.number().check(z.minimum(0)) }))),
  /** Where the numbers come from, or that they are invented. */
  source: z.optional(longText),
});

const distanceSchema = z.looseObject({
  from: text,
  to: text,
  lengthIn: size,
  toleranceIn: z.optional(z.number().check(z.positive(), z.maximum(12))),
  source: z.optional(longText),
});

export const modelSchema = z.looseObject({
  format: z.literal('tubewright-model'),
  version: z.literal(MODEL_VERSION),
  name: text,
  source: longText,
  /** Where station 0, butt line 0 and water line 0 are, in words. */
  datum: longText,
  drawnIn: z.enum(['in', 'mm']),
  joints: z.enum(['welded', 'pinned']),
  stations: z.array(stationSchema),
  bracing: z.array(bracingSchema),
  tubes: tubesSchema,
  /** Members the pattern would make and the aircraft does not have: openings. */
  omitted: z.optional(z.array(text)),
  clusters: z.array(clusterSchema),
  members: z.array(memberSchema),
  setups: z.array(setupSchema),
  loadCases: z.array(loadCaseSchema),
  distances: z.array(distanceSchema),
});

export type Model = Readonly<z.infer<typeof modelSchema>>;
export type Station = Model['stations'][number];
export type Origin = (typeof origins)[number];
export type Tube = z.infer<typeof tubeSchema>;
export type Role = (typeof roles)[number];
export type Freedom = (typeof freedoms)[number];
export type Setup = Model['setups'][number];
export type LoadCase = Model['loadCases'][number];
export type EndWord = z.infer<typeof endWord>;
