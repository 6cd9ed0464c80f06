import { describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import { states } from '../../src/core/walkRound/result.ts';
import { allTables } from '../../src/present/tables/allTables.ts';
import { inPairs } from '../../src/present/tables/pairs.ts';
import { tags } from '../../src/present/tags.ts';
import { expectNear } from '../kit/near.ts';
import { demoJob, madeJob } from './made.ts';

const job = demoJob();
const assessment = assess(job);
const tables = new Map(
  allTables({ job, assessment, units: 'inFraction' }).map((table) => [table.name, table]),
);
const inMm = new Map(allTables({ job, assessment, units: 'mm' }).map((table) => [table.name, table]));

describe('tables', () => {
  it('have their own names, one cell to each column, and a text in words', () => {
    expect(tables.size).toBe(allTables({ job, assessment, units: 'mm' }).length);
    for (const table of tables.values()) {
      expect(new Set(table.columns.map(({ id }) => id)).size, table.name).toBe(table.columns.length);
      for (const row of table.rows) {
        expect(row.cells).toHaveLength(table.columns.length);
        for (const { text } of row.cells)
          expect(text, table.name).not.toMatch(/undefined|NaN|\[object|Infinity/);
      }
    }
  });

  it('give every number in a CSV its unit, but for counts, ranks and shares of evidence', () => {
    const bare =
      /^(Members|Clusters|Not looked at|Order|Cluster|Load path|Locked in|Takes over|Photos|Into force|Into force, pinned|Stability without it|Numbers resting on it|No\.|Pushes|Reversals|Lengths|Count|Lines)$/;
    for (const table of tables.values()) {
      const heads = table.columns.flatMap((head) => head.csv ?? [head]);
      const rows = table.rows.map((row) => row.cells.flatMap((cell) => cell.csv ?? [cell.raw]));
      for (const row of rows) expect(row, table.name).toHaveLength(heads.length);
      heads.forEach(({ title, unit }, c) => {
        if (rows.some((row) => typeof row[c] === 'number') && unit === undefined)
          expect(`${table.name}: ${title}`, 'no unit').toMatch(
            new RegExp(`^[a-z-]+: ${bare.source.slice(1)}`),
          );
      });
    }
  });

  it('say what a number rests on in words, never by a code of ours', () => {
    const rests = tables.get('sources')!.rows.map((row) => row.cells[1]!.text);
    expect(rests.length).toBeGreaterThan(30);
    expect(rests.filter((words) => /-/.test(words) && !/\s/.test(words))).toEqual([]);
  });

  it('count states in the fixed order, and the counts add up to the truss', () => {
    const rows = tables.get('counts')!.rows;
    expect(rows.map((row) => row.cells[0]!.text)).toEqual(states.map((state) => tags[state].word));
    const sum = (column: number): number =>
      rows.reduce((all, row) => all + Number(row.cells[column]!.raw), 0);
    expect(sum(2)).toBe(assessment.truss.members.length);
    expect(sum(3)).toBe(assessment.truss.clusters.length);
  });

  it('have a row for every member, every target, every finding, every id not looked at', () => {
    const { truss, coverage, trammel } = assessment;
    const ids = (name: string) => tables.get(name)!.rows.map((row) => row.id);
    expect(ids('members')).toEqual(truss.members.map(({ id }) => id));
    expect([...ids('trammel-targets')].sort()).toEqual(trammel.targets.map(({ id }) => id).sort());
    expect(ids('findings')).toEqual(coverage.findings.map(({ of }) => of));
    expect(ids('not-looked-at')).toEqual([...coverage.notLookedAt.members, ...coverage.notLookedAt.clusters]);
  });

  // 25.4 mm to the inch, by definition
  it('give raw lengths in the unit their title says', () => {
    const column = tables.get('members')!.columns.findIndex(({ id }) => id === 'length');
    expect(tables.get('members')!.columns[column]!.unit).toBe('in');
    expect(inMm.get('members')!.columns[column]!.unit).toBe('mm');
    tables.get('members')!.rows.forEach((row, k) => {
      expectNear(
        Number(inMm.get('members')!.rows[k]!.cells[column]!.raw),
        Number(row.cells[column]!.raw) * 25.4,
        {
          abs: 2e-5,
          because: 'both are rounded to 1e-6, the inch one times 25.4',
        },
      );
    });
  });

  it('put the left and the right of a pair of distances together, left first', () => {
    const ordered = inPairs(assessment.trammel.targets).map(({ id }) => id);
    expect(ordered.indexOf('U3R–L4R') - ordered.indexOf('U3L–L4L')).toBe(1);
    expect(ordered.indexOf('L3R–L4R') - ordered.indexOf('L3L–L4L')).toBe(1);
    expect(new Set(ordered).size).toBe(assessment.trammel.targets.length);
  });

  it('stand with nothing entered, each saying what that means', () => {
    const empty = { ...madeJob(), records: [] };
    for (const table of allTables({ job: empty, assessment: assess(empty), units: 'inFraction' }))
      expect(table.empty, table.name).toMatch(/\w/);
  });
});
