import { describe, expect, it } from 'vitest';
import type { Finding, Reading } from '../../../src/core/job/jobSchema.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { checkAgainstTruss } from '../../../src/core/walkRound/checkAgainstTruss.ts';
import { smallModel } from '../../kit/garbage.ts';

const truss = expandTruss(smallModel);
const stamp = { id: 'r1', by: 'Ana', device: 't', at: '2026-03-01T09:00:00Z' };
const bow = (more: object): Finding =>
  ({ kind: 'finding', damage: 'bow', of: 'U1L-U2L', origin: 'unknown', ...stamp, ...more }) as Finding;
const reading = (a: object, b: object, more: object = { lengthIn: 30 }): Reading =>
  ({
    kind: 'reading',
    ...stamp,
    instrument: 'trammel',
    hold: 'beforeCutting',
    ends: [
      { cluster: 'U1L', mark: 'axis', ...a },
      { cluster: 'U2L', mark: 'axis', ...b },
    ],
    ...more,
  }) as Reading;
const found = (records: Parameters<typeof checkAgainstTruss>[0]): readonly string[] =>
  checkAgainstTruss(records, truss).map((i) => `${i.code} ${i.at}`);

describe('checkAgainstTruss', () => {
  it('has nothing to say of a sound job, a whole standing or a part of it', () => {
    const records = [
      bow({ place: { from: 'U2L', atIn: 4 } }),
      { ...reading({}, { mark: 'surface', on: 'U1L-U2L', clock: 3 }), id: 'r2' },
    ];
    expect(checkAgainstTruss(standing(records), truss)).toEqual([]);
    expect(checkAgainstTruss({}, truss)).toEqual([]);
  });

  it('names unknown members and clusters, and the one that was most likely meant', () => {
    const [issue] = checkAgainstTruss({ findings: [bow({ of: 'u2l-u1l' })] }, truss);
    expect(issue).toEqual({
      code: 'unknown-id',
      at: 'records[id=r1].of',
      facts: { id: 'u2l-u1l', meant: 'U1L-U2L' },
      mend: 'name-one-of-the-truss',
    });
    expect(found({ readings: [reading({ cluster: 'U7L' }, {})] })).toEqual([
      'unknown-cluster records[id=r1].ends[0].cluster',
    ]);
    expect(
      found({
        held: [
          {
            kind: 'held',
            ...stamp,
            held: [{ cluster: 'X', fixed: ['x'] }],
            braces: [{ from: 'U1L', to: 'Y', odIn: 1, wallIn: 0.1 }],
          },
        ],
      }),
    ).toEqual([
      'unknown-cluster records[id=r1].held[0].cluster',
      'unknown-cluster records[id=r1].braces[0].to',
    ]);
    expect(
      found({
        mishap: { kind: 'mishap', ...stamp, cases: [], blow: { cluster: 'X', direction: [1, 0, 0] } },
      }),
    ).toEqual(['unknown-cluster records[id=r1].blow.cluster']);
    expect(
      found({
        notes: [{ kind: 'note', words: 'x', ...stamp }],
        photos: [{ kind: 'photo', of: 'X', hash: 'h', ...stamp }],
      }),
    ).toEqual(['unknown-id records[id=r1].of']);
  });

  it('finds a place off the end of its member or measured from elsewhere', () => {
    // U1L (0, -12, 24) to U2L (30, -11, 24): length √(30² + 1²) = 30.0167 in.
    expect(found({ findings: [bow({ place: { from: 'U1L', atIn: 30.01 } })] })).toEqual([]);
    expect(found({ findings: [bow({ place: { from: 'U1L', atIn: 30.02 } })] })).toEqual([
      'beyond-member records[id=r1].place.atIn',
    ]);
    expect(found({ findings: [bow({ place: { from: 'L1L', atIn: 3 } })] })).toEqual([
      'place-not-from-its-end records[id=r1].place.from',
    ]);
    expect(found({ findings: [bow({ chordIn: 31 })] })).toEqual(['beyond-member records[id=r1].chordIn']);
  });

  it('finds damage that its place cannot have', () => {
    expect(found({ findings: [bow({ of: 'U2R' })] })).toEqual(['not-of-a-cluster records[id=r1].damage']);
    // The upper longeron of the small model is 7/8 in.
    expect(found({ findings: [bow({ damage: 'dent', depthIn: 0.88 })] })).toEqual([
      'deeper-than-tube records[id=r1].depthIn',
    ]);
    expect(
      found({ findings: [bow({ damage: 'dent', depthIn: 0.87, widthIn: 0.88, widthBy: 'across' })] }),
    ).toEqual(['wider-than-tube records[id=r1].widthIn']);
    // π × 0.875 = 2.7489 in around.
    expect(found({ findings: [bow({ damage: 'dent', widthIn: 2.75, widthBy: 'around' })] })).toEqual([
      'wider-than-tube records[id=r1].widthIn',
    ]);
    expect(found({ findings: [bow({ damage: 'dent', widthIn: 2.74, widthBy: 'around' })] })).toEqual([]);
  });

  it('finds readings that contradict themselves or their tube', () => {
    expect(found({ readings: [reading({}, { cluster: 'U1L' })] })).toEqual([
      'reading-between-same-point records[id=r1].ends',
    ]);
    expect(found({ readings: [reading({ mark: 'nearEdge' }, {})] })).toEqual([
      'mark-needs records[id=r1].ends[0].on',
      'mark-needs records[id=r1].ends[0].clock',
    ]);
    expect(found({ readings: [reading({ mark: 'hole', on: 'U1R-U2R', clock: 3 }, {})] })).toEqual([
      'tube-not-at-cluster records[id=r1].ends[0].on',
    ]);
    expect(found({ readings: [reading({ mark: 'hole', on: 'U1L-U9L', clock: 3 }, {})] })).toEqual([
      'unknown-member records[id=r1].ends[0].on',
    ]);
    expect(
      found({ readings: [reading({ mark: 'hole', on: 'U1L-U2L', clock: 3, alongIn: 31 }, {})] }),
    ).toEqual(['beyond-member records[id=r1].ends[0].alongIn']);
    expect(found({ readings: [reading({}, {}, {})] })).toEqual([
      'reading-needs-one-length records[id=r1].lengthIn',
    ]);
    expect(
      found({ readings: [reading({}, {}, { lengthIn: 3, setAndMiss: { setIn: 3, missIn: 0 } })] }),
    ).toEqual(['reading-needs-one-length records[id=r1].lengthIn']);
  });
});
