import type { Finding, Reading, RecordOf } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';

const stamp = { by: 'Test', at: '2024-05-01T10:00:00Z', device: 'test' };

/** A straight box of `bays` bays, 24 long, 20 wide at the top, 16 at the bottom, 22 high; single diagonals and rings. */
export const boxModel = (bays: number, distances: Model['distances'] = []): Model => ({
  format: 'tubewright-model',
  version: 1,
  name: 'Box',
  source: 'invented for tests',
  datum: 'first station',
  drawnIn: 'in',
  joints: 'welded',
  stations: Array.from({ length: bays + 1 }, (_, k) => ({
    label: String(k + 1),
    stationIn: 24 * k,
    upper: { waterLineIn: 22 - 0.5 * k, halfWidthIn: 10 - 0.25 * k },
    lower: { waterLineIn: 0.4 * k, halfWidthIn: 8 - 0.2 * k },
  })),
  bracing: Array.from({ length: bays + 1 }, (_, k) => ({
    at: String(k + 1),
    left: 'rising' as const,
    right: 'rising' as const,
    top: 'toRight' as const,
    bottom: 'toRight' as const,
    ring: 'toRight' as const,
  })),
  tubes: {
    material: '4130N',
    roles: {
      upperLongeron: { odIn: 0.875, wallIn: 0.049 },
      lowerLongeron: { odIn: 0.875, wallIn: 0.049 },
      vertical: { odIn: 0.75, wallIn: 0.035 },
      crossMember: { odIn: 0.75, wallIn: 0.035 },
      sideDiagonal: { odIn: 0.625, wallIn: 0.035 },
      topDiagonal: { odIn: 0.625, wallIn: 0.035 },
      bottomDiagonal: { odIn: 0.625, wallIn: 0.035 },
      ringDiagonal: { odIn: 0.5, wallIn: 0.035 },
    },
    overrides: [],
  },
  clusters: [],
  members: [],
  setups: [],
  loadCases: [],
  distances,
});

export const box = (bays: number) => {
  const model = boxModel(bays);
  return { model, truss: expandTruss(model) };
};

export const axisReading = (
  id: string,
  a: string,
  b: string,
  lengthIn: number,
  more: Partial<Reading> = {},
): Reading => ({
  kind: 'reading',
  id,
  ...stamp,
  ends: [
    { cluster: a, mark: 'axis' },
    { cluster: b, mark: 'axis' },
  ],
  lengthIn,
  instrument: 'trammel',
  hold: 'beforeCutting',
  ...more,
});

export const bowOn = (id: string, of: string): Finding =>
  ({ kind: 'finding', damage: 'bow', id, ...stamp, of, origin: 'thisAccident', depthIn: 0.5 }) as Finding;

export const manualOf = (
  id: string,
  topic: string,
  valueIn?: number,
  words?: string,
): RecordOf<'manual'> => ({
  kind: 'manual',
  id,
  ...stamp,
  topic,
  source: 'shop book',
  ...(valueIn === undefined ? {} : { valueIn }),
  ...(words === undefined ? {} : { words }),
});
