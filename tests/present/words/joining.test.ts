import { describe, expect, it } from 'vitest';
import type { JobRecord } from '../../../src/core/job/jobSchema.ts';
import { recordSchemas } from '../../../src/core/job/jobSchema.ts';
import { recordWords } from '../../../src/present/words/joining.ts';
import { smallModel } from '../../kit/garbage.ts';

const stamp = { id: 'r1', by: 'Ana', at: '2031-05-04T10:00:00Z', device: 'tablet 1' };
const at = { mark: 'axis' } as const;
/** One record of each kind, and what a person would call it; written by hand. */
const said: readonly (readonly [Record<string, unknown>, string])[] = [
  [
    {
      kind: 'look',
      of: 'U1L-U2L',
      state: 'lookAgain',
      method: 'penetrant',
      finishRemoved: true,
      note: 'dusk',
    },
    'look on U1L-U2L: look again, dye penetrant, finish off, dusk',
  ],
  [
    { kind: 'area', bay: '4', face: 'left', access: 'stripped', bothSidesHurt: true },
    'area: Bay 4, left side, stripped, both sides are hurt',
  ],
  [
    { kind: 'finding', damage: 'bow', of: 'U1L-U2L', origin: 'older', depthIn: 0.25 },
    'finding on U1L-U2L: Bow, 0.250 in · 1/4 deep over cluster to cluster, older',
  ],
  [
    {
      kind: 'reading',
      ends: [
        { cluster: 'U1L', ...at },
        { cluster: 'L2L', ...at },
      ],
      lengthIn: 23.5,
      instrument: 'trammel',
      hold: 'beforeTacking',
    },
    'reading: U1L tube axis to L2L tube axis, 23.500 in · 23 1/2, trammel bar, before tacking',
  ],
  [
    { kind: 'decision', of: 'U1L-U2L', choice: 'splice', reason: 'kinked' },
    'decision on U1L-U2L: Splice a section, kinked',
  ],
  [
    { kind: 'held', held: [{ cluster: 'L1L', fixed: ['x', 'z'] }], note: 'blocks' },
    'way of holding: L1L held in x z, blocks',
  ],
  [
    { kind: 'mishap', cases: ['left wheel'], blow: { cluster: 'L3L', direction: [0, 1, 0] }, story: 'ditch' },
    'mishap: blow at L3L toward 1.00 right, load cases left wheel, ditch',
  ],
  [
    { kind: 'manual', topic: 'limit:bow', valueIn: 0.125, source: 'shop sheet 3' },
    'value of your own: limit bow, 0.125 in · 1/8, source: shop sheet 3',
  ],
  [{ kind: 'rate', operation: 'labour', amount: 85, currency: 'EUR' }, '85 EUR'],
  [
    { kind: 'progress', step: 'straighten:U1L-U2L', done: true, secondPerson: 'Ben' },
    'work step: Straighten U1L-U2L, done, second person Ben',
  ],
  [
    {
      kind: 'photo',
      of: 'U1L-U2L',
      hash: '0123456789abcdef',
      looking: 'from below',
      marks: [
        { mark: 'ring', at: [0.5, 0.5], to: [0.6, 0.5] },
        { mark: 'text', at: [0.1, 0.1], words: 'crack' },
      ],
    },
    'photo on U1L-U2L: from below, 1 ring, "crack", picture 01234567',
  ],
  [{ kind: 'note', words: 'rust under the floor' }, 'note: rust under the floor'],
  [{ kind: 'model', model: smallModel }, 'change of the model: Small box, 2 stations'],
];

describe('records side by side', () => {
  it('are in words for every kind of record there is', () => {
    expect(said.map(([record]) => record.kind)).toEqual(Object.keys(recordSchemas));
    for (const [record, words] of said)
      expect(recordWords({ ...stamp, ...record } as JobRecord, 'inFraction')).toContain(words);
  });

  it('say which parts of the model two tablets changed differently', () => {
    const one = { ...stamp, kind: 'model', model: smallModel } as JobRecord;
    const stations = smallModel.stations.map((station) => ({ ...station, stationIn: station.stationIn * 2 }));
    const other = { ...stamp, kind: 'model', model: { ...smallModel, stations } } as JobRecord;
    expect(recordWords(one, 'inFraction', [one, other])).toContain('other in: stations');
  });
});
