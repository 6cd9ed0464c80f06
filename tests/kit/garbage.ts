import fc from 'fast-check';
import type { Job, JobRecord } from '../../src/core/job/jobSchema.ts';
import type { Model } from '../../src/core/job/modelSchema.ts';

/** Two stations, four longerons, crossed sides: the least that is a truss. Invented. */
export const smallModel: Model = {
  format: 'tubewright-model',
  version: 1,
  name: 'Small box',
  source: 'invented',
  datum: 'station 0 at the firewall, butt line 0 at the middle, water line 0 at the lower longerons',
  drawnIn: 'in',
  joints: 'welded',
  stations: [
    {
      label: '1',
      stationIn: 0,
      upper: { waterLineIn: 24, halfWidthIn: 12 },
      lower: { waterLineIn: 0, halfWidthIn: 12 },
    },
    {
      label: '2',
      stationIn: 30,
      upper: { waterLineIn: 24, halfWidthIn: 11 },
      lower: { waterLineIn: 0, halfWidthIn: 11 },
    },
  ],
  bracing: [{ at: '1', left: 'rising', right: 'rising', top: 'toRight', bottom: 'toRight', ring: 'toRight' }],
  tubes: {
    material: '4130N',
    roles: {
      upperLongeron: { odIn: 0.875, wallIn: 0.035 },
      lowerLongeron: { odIn: 0.875, wallIn: 0.035 },
      vertical: { odIn: 0.625, wallIn: 0.035 },
      crossMember: { odIn: 0.625, wallIn: 0.035 },
      sideDiagonal: { odIn: 0.625, wallIn: 0.035 },
      topDiagonal: { odIn: 0.5, wallIn: 0.035 },
      bottomDiagonal: { odIn: 0.5, wallIn: 0.035 },
      ringDiagonal: { odIn: 0.5, wallIn: 0.035 },
    },
    overrides: [{ bay: '1', role: 'sideDiagonal', tube: { odIn: 0.5, wallIn: 0.035 } }],
  },
  clusters: [],
  members: [],
  setups: [],
  loadCases: [],
  distances: [],
};

const id = fc.integer({ min: 0, max: 30 }).map((n) => `r${n}`);
const member = fc.constantFrom('U1L-U2L', 'U1R-U2R', 'L1L-L2L', 'U1L-L1L', 'U2R', 'L1R');
const length = fc.double({ min: 0, max: 1200, noNaN: true });
const at = fc
  .tuple(fc.integer({ min: 0, max: 59 }), fc.constantFrom('Z', '+02:00', '-05:30', '.25Z'))
  .map(([s, zone]) => `2026-03-01T09:00:${String(s).padStart(2, '0')}${zone}`);
const strange = fc.dictionary(
  fc.string({ maxLength: 6 }).map((s) => `x-${s}`),
  fc.jsonValue({ maxDepth: 3 }),
  { maxKeys: 2 },
);

const stampArb = fc.record(
  {
    id,
    by: fc.constantFrom('Ana', 'Ben'),
    at,
    device: fc.constantFrom('tablet 1', 'tablet 2'),
    replaces: id,
    withdraws: id,
    typed: fc.constant({ lengthIn: '23 5/16' }),
  },
  { requiredKeys: ['id', 'by', 'at', 'device'] },
);
const some = <T extends Record<string, fc.Arbitrary<unknown>>>(fields: T, needed: (keyof T)[]) =>
  fc.record(fields, { requiredKeys: needed as never });

const body = fc.oneof(
  some(
    {
      kind: fc.constant('finding'),
      damage: fc.constant('bow'),
      of: member,
      origin: fc.constant('unknown'),
      depthIn: length,
      clock: fc.integer({ min: 0, max: 12 }),
    },
    ['kind', 'damage', 'of', 'origin'],
  ),
  some(
    {
      kind: fc.constant('finding'),
      damage: fc.constant('crack'),
      of: member,
      origin: fc.constant('thisAccident'),
      crackIn: length,
    },
    ['kind', 'damage', 'of', 'origin'],
  ),
  some(
    {
      kind: fc.constant('look'),
      of: member,
      state: fc.constantFrom('lookedAt', 'lookAgain'),
      method: fc.constantFrom('eye', 'penetrant'),
      finishRemoved: fc.boolean(),
    },
    ['kind', 'of', 'state', 'method', 'finishRemoved'],
  ),
  some(
    {
      kind: fc.constant('decision'),
      of: member,
      choice: fc.constantFrom('splice', 'replace', 'refer'),
      reason: fc.string(),
    },
    ['kind', 'of', 'choice'],
  ),
  some({ kind: fc.constant('note'), words: fc.string() }, ['kind', 'words']),
  some({ kind: fc.constant('mishap'), cases: fc.constant([]), story: fc.string() }, ['kind', 'cases']),
  some({ kind: fc.constant('model'), model: fc.constant({ ...smallModel, name: 'Amended' }) }, [
    'kind',
    'model',
  ]),
  some(
    {
      kind: fc.constant('reading'),
      ends: fc.constant([
        { cluster: 'U1L', mark: 'axis' },
        { cluster: 'L2L', mark: 'surface', on: 'L1L-L2L', clock: 3 },
      ]),
      lengthIn: fc.double({ min: 1, max: 1200, noNaN: true }),
      instrument: fc.constant('trammel'),
      hold: fc.constant('beforeCutting'),
    },
    ['kind', 'ends', 'lengthIn', 'instrument', 'hold'],
  ),
);

/** Any record of a few kinds, with links that often point at one another, at nothing, or in rings. */
export const recordArb: fc.Arbitrary<JobRecord> = fc
  .tuple(strange, stampArb, body)
  .map(([unknown, stamp, content]) => ({ ...unknown, ...stamp, ...content }) as unknown as JobRecord);

/** A job of such records, ids unique or not. */
export const jobArb = (ids: 'unique' | 'any' = 'any'): fc.Arbitrary<Job> =>
  fc
    .tuple(
      ids === 'any'
        ? fc.array(recordArb, { maxLength: 14 })
        : fc.uniqueArray(recordArb, { maxLength: 14, selector: (r) => r.id }),
      fc.string({ minLength: 1, maxLength: 20 }),
      strange,
    )
    .map(([records, name, unknown]) => ({
      ...unknown,
      format: 'tubewright-job',
      version: 1,
      purpose: 'job',
      name,
      model: smallModel,
      records,
    }));

const hostile = fc.constantFrom(
  '"__proto__":{"polluted":1},',
  '"constructor":{"prototype":{"polluted":1}},',
  '"toString":null,',
  '1e999',
  '-1e999',
  'NaN',
  '\u0000',
  '\ud800',
  '\\ud800',
  '\u202e',
  '[[[[[[[[[[',
  '{"a":'.repeat(200),
  '[]',
  '{}',
  'null',
  '""',
  '9'.repeat(400),
  '\ufeff',
  '}',
  ']',
  ',',
);

/** The text with pieces cut out, doubled, swapped for hostile ones, or its end cut off. */
export const mutated = (text: string): fc.Arbitrary<string> =>
  fc
    .array(
      fc.record({
        where: fc.double({ min: 0, max: 1, noNaN: true }),
        length: fc.integer({ min: 0, max: 12 }),
        how: fc.constantFrom('cut', 'double', 'swap', 'end'),
        piece: fc.oneof(hostile, fc.string({ maxLength: 8 })),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((steps) =>
      steps.reduce((now, { where, length: n, how, piece }) => {
        const from = Math.floor(where * now.length);
        if (how === 'end') return now.slice(0, from);
        const middle = how === 'cut' ? '' : how === 'double' ? now.slice(from, from + n).repeat(2) : piece;
        return now.slice(0, from) + middle + now.slice(from + n);
      }, text),
    );

/** A document with a value somewhere in it put in place of another: well-formed, and wrong. */
export const misfilled = (doc: unknown): fc.Arbitrary<string> => {
  const ways: (readonly (string | number)[])[] = [];
  const visit = (value: unknown, way: readonly (string | number)[]): void => {
    ways.push(way);
    if (Array.isArray(value))
      value.forEach((item, i) => {
        visit(item, [...way, i]);
      });
    else if (typeof value === 'object' && value !== null)
      for (const [key, item] of Object.entries(value)) visit(item, [...way, key]);
  };
  visit(doc, []);
  const put = (value: unknown, way: readonly (string | number)[], piece: string): string => {
    const [key, ...rest] = way;
    if (key === undefined) return piece;
    if (Array.isArray(value))
      return `[${value.map((v, i) => (i === key ? put(v, rest, piece) : JSON.stringify(v))).join()}]`;
    const fields = Object.entries(value as object).map(
      ([k, v]) => `${JSON.stringify(k)}:${k === key ? put(v, rest, piece) : JSON.stringify(v)}`,
    );
    return `{${fields.join()}}`;
  };
  const pieces = fc.oneof(
    fc.constantFrom(
      'null',
      '[]',
      '{}',
      '""',
      '0',
      '-1',
      '1e999',
      '-1e999',
      'true',
      '{"__proto__":1}',
      '{"constructor":1}',
      '1.5e308',
    ),
    fc.jsonValue({ maxDepth: 2 }).map((value) => JSON.stringify(value)),
  );
  return fc.tuple(fc.constantFrom(...ways), pieces).map(([way, piece]) => put(doc, way, piece));
};
