import { describe, expect, it } from 'vitest';
import { ghostedIds, zoneIds } from '../../../src/app/state/apart.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { emptyJob } from '../kit.ts';

const truss = expandTruss(emptyJob().model);
const all = [...truss.members, ...truss.clusters].map(({ id }) => id);

describe('setting apart', () => {
  it('takes for a bay all between its two stations, rings and clusters with it', () => {
    const ids = zoneIds(truss, '2');
    for (const id of ['U2L', 'L3R', 'U2L-U3L', 'U2L-L2L', 'U3L-L3L']) expect(ids.has(id), id).toBe(true);
    for (const id of ['U4L', 'U1L-U2L', 'U3L-U4L']) expect(ids.has(id), id).toBe(false);
  });

  it('fades either the rest or the zone itself, and every id is in one of the two', () => {
    const rest = ghostedIds(truss, new Map(), { zone: '2', how: 'isolate' }, []);
    const zone = ghostedIds(truss, new Map(), { zone: '2', how: 'ghost' }, []);
    expect([...rest, ...zone].sort()).toEqual([...all].sort());
  });

  it('keeps the clusters of listed members', () => {
    const faded = ghostedIds(truss, new Map(), { zone: '', ids: ['U2L-U3L'], how: 'isolate' }, []);
    expect(all.filter((id) => !faded.has(id)).sort()).toEqual(['U2L', 'U2L-U3L', 'U3L']);
  });

  it('fades nothing when nothing is set apart, and all when their only state is switched off', () => {
    expect(ghostedIds(truss, new Map(), null, []).size).toBe(0);
    expect(ghostedIds(truss, new Map(), null, ['notLookedAt']).size).toBe(all.length);
  });
});
