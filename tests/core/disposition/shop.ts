import { disposition } from '../../../src/core/disposition/disposition.ts';
import type { Disposition, DispositionRow, Option } from '../../../src/core/disposition/result.ts';
import type { Choice, Decision, Finding, Look, RecordOf } from '../../../src/core/job/jobSchema.ts';
import type { Model, Tube } from '../../../src/core/job/modelSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { frozen } from '../../kit/trusses.ts';

export const stamp = { by: 'Ana', at: '2026-03-01T09:00:00Z', device: 'tablet 1' };

/** A box of two bays, 40 in and 12 in long; every tube the one given. Invented. */
export const box = (tube: Tube = { odIn: 1, wallIn: 0.035 }, more: Partial<Model> = {}): Model => ({
  format: 'tubewright-model',
  version: 1,
  name: 'Shop box',
  source: 'invented',
  datum: 'station 0 at the first ring',
  drawnIn: 'in',
  joints: 'welded',
  stations: [0, 40, 52].map((stationIn, k) => ({
    label: `${k + 1}`,
    stationIn,
    upper: { waterLineIn: 24, halfWidthIn: 12 },
    lower: { waterLineIn: 0, halfWidthIn: 12 },
  })),
  bracing: [
    { at: '1', left: 'rising', right: 'rising', top: 'toRight', bottom: 'toRight', ring: 'toRight' },
    { at: '2', left: 'rising', right: 'rising', top: 'toRight', bottom: 'toRight' },
  ],
  tubes: {
    material: '4130N',
    roles: Object.fromEntries(
      [
        'upperLongeron',
        'lowerLongeron',
        'vertical',
        'crossMember',
        'sideDiagonal',
        'topDiagonal',
        'bottomDiagonal',
        'ringDiagonal',
      ].map((role) => [role, tube]),
    ),
    overrides: [],
  },
  clusters: [],
  members: [],
  setups: [],
  loadCases: [],
  distances: [],
  ...more,
});

/** The member the tests damage: an upper longeron in the 40 in bay; `SHORT` lies in the 12 in bay. */
export const LONG = 'U1R-U2R';
export const SHORT = 'U2R-U3R';

type Loose<T> = T extends unknown ? Omit<T, keyof typeof stamp | 'kind' | 'id' | 'origin'> : never;
export const finding = (id: string, f: Partial<Loose<Finding>> & { damage: Finding['damage'] }): Finding =>
  ({ kind: 'finding', id, ...stamp, of: LONG, origin: 'thisAccident', ...f }) as Finding;
export const manual = (
  topic: string,
  more: Partial<RecordOf<'manual'>> = {},
  id = `m ${topic}`,
): RecordOf<'manual'> => ({
  kind: 'manual',
  id,
  ...stamp,
  topic,
  source: 'Invented manual, page 1',
  ...more,
});
export const decision = (of: string, choice: Choice, reason?: string): Decision => ({
  kind: 'decision',
  id: `d ${of}`,
  ...stamp,
  of,
  choice,
  ...(reason !== undefined && { reason }),
});
export const closeLook = (of: string, method: Look['method'] = 'penetrant'): Look => ({
  kind: 'look',
  id: `l ${of}`,
  ...stamp,
  of,
  state: 'lookedAt',
  method,
  finishRemoved: true,
});

export interface Entered {
  readonly findings?: readonly Finding[];
  readonly manual?: readonly RecordOf<'manual'>[];
  readonly decisions?: readonly Decision[];
  readonly looks?: readonly Look[];
  readonly model?: Model;
}

/** The stage on a job with these records, input frozen. */
export const disposed = ({
  findings = [],
  manual: own = [],
  decisions = [],
  looks = [],
  model = box(),
}: Entered): Disposition => {
  const truss = frozen(expandTruss(model));
  const coverage = frozen(walkRound(truss, looks, findings, decisions, [], []));
  return disposition(truss, coverage, frozen(own));
};

export const rowFor = (entered: Entered, id = LONG): DispositionRow => {
  const row = disposed(entered).rows.find((r) => r.id === id);
  if (!row) throw new Error(`no row for ${id}`);
  return row;
};
export const option = (row: DispositionRow, choice: Choice): Option =>
  row.options.find((o) => o.choice === choice)!;
export const answer = (entered: Entered, choice: Choice, id = LONG): Option['answer'] =>
  option(rowFor(entered, id), choice).answer;
export const ruled = (entered: Entered, choice: Choice, id = LONG): readonly string[] =>
  option(rowFor(entered, id), choice).reasons.map((r) => r.rule);

/** Mid-bay place on the long member. */
export const mid = { from: 'U1R', atIn: 20 };
