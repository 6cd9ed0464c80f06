import { describe, expect, it } from 'vitest';
import { find, findIndex } from '../../src/app/find.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { emptyJob } from './kit.ts';

const truss = expandTruss(emptyJob().model);
const index = findIndex(truss);
const ids = (typed: string): readonly string[] => find(index, typed, 50).map(({ id }) => id);

describe('find', () => {
  it('finds by id whatever the case, dash or space', () => {
    for (const typed of ['U3R-U4R', 'u3r-u4r', 'U3R–U4R', 'u3r u4r', ' u3ru4r '])
      expect(ids(typed)[0], typed).toBe('U3R-U4R');
    expect(ids('u4r')[0]).toBe('U4R');
  });

  it('finds by what a tube is', () => {
    expect(ids('upper left longeron, bay 2')).toEqual(['U2L-U3L']);
    expect(ids('top longeron left bay 2')).toEqual(['U2L-U3L']);
    expect(ids('lower right 3')[0]).toBe('L3R');
  });

  it('knows brace, upright, spacer and strut', () => {
    const roleOf = (id: string) => truss.members.find((m) => m.id === id)?.role;
    const roles = (typed: string) => new Set(ids(typed).map(roleOf));
    expect([...roles('left side brace bay 1')]).toEqual(['sideDiagonal']);
    expect([...roles('upright')]).toEqual(['vertical']);
    expect([...roles('spacer')]).toEqual(['crossMember']);
    expect(roles('strut')).not.toContain('upperLongeron');
    expect(roles('strut').size).toBeGreaterThan(2);
  });

  it('tells bay 1 from a bay that only begins with 1', () => {
    for (const id of ids('bay 1')) expect(truss.members.find((m) => m.id === id)?.bay).toBe('1');
  });

  it('gives nothing for nothing and for what is not there', () => {
    expect(ids('')).toEqual([]);
    expect(ids('   ')).toEqual([]);
    expect(ids('wing spar')).toEqual([]);
  });

  it('finds every member and cluster by its own id first', () => {
    for (const { id } of [...truss.members, ...truss.clusters]) expect(ids(id)[0]).toBe(id);
  });
});
