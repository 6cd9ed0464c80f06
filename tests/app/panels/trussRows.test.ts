import { describe, expect, it } from 'vitest';
import { findIndex } from '../../../src/app/find.ts';
import { rowGroups, shownRows, trussRows } from '../../../src/app/panels/trussRows.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { emptyJob } from '../kit.ts';

const truss = expandTruss(emptyJob().model);
const rows = trussRows(truss.members, truss.clusters, new Map());
const index = findIndex(truss);
const place = { by: 'place', down: false } as const;

describe('the table of the truss', () => {
  it('has a row for every member and cluster, all not looked at when nothing is entered', () => {
    const shown = shownRows(rows, index, '', [], place);
    expect(shown.map(({ id }) => id)).toEqual([...truss.members, ...truss.clusters].map(({ id }) => id));
    expect(new Set(shown.map(({ state }) => state))).toEqual(new Set(['notLookedAt']));
  });

  it('leaves out states switched off in the legend, and what the search does not name', () => {
    expect(shownRows(rows, index, '', ['notLookedAt'], place)).toEqual([]);
    expect(shownRows(rows, index, 'upper left longeron', [], place).map(({ id }) => id)).toEqual([
      'U1L-U2L',
      'U2L-U3L',
      'U3L-U4L',
    ]);
  });

  it('sorts by length both ways, equal ones in the order of the truss', () => {
    const up = shownRows(rows, index, '', [], { by: 'length', down: false });
    const lengths = up.map(({ member }) => member?.lengthIn ?? 0);
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
    const down = shownRows(rows, index, '', [], { by: 'length', down: true });
    expect(down.map(({ id }) => id)).toEqual([...up.map(({ id }) => id)].reverse());
  });

  it('keeps every row and every group that a tag did not touch', () => {
    const mark = {
      id: 'U1L-U2L',
      kind: 'member',
      state: 'undecided',
      findings: ['f'],
      damage: ['bow'],
      finishRemoved: false,
    } as const;
    const tagged = trussRows(truss.members, truss.clusters, new Map([[mark.id, mark]]), rows);
    expect(tagged.filter((row, k) => row !== rows[k]).map(({ id }) => id)).toEqual(['U1L-U2L']);
    expect(trussRows(truss.members, truss.clusters, new Map(), rows)).toBe(rows);
    const long = Array.from({ length: 5 }, () => rows).flat();
    const groups = rowGroups(long, []);
    const place = long.length - rows.length + rows.findIndex(({ id }) => id === 'U1L-U2L');
    const after = rowGroups(long.with(place, tagged.find(({ id }) => id === 'U1L-U2L')!), groups);
    expect(after.flat()).toHaveLength(long.length);
    expect(after.filter((group, k) => group !== groups[k])).toHaveLength(1);
  });
});
