import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../src/core/version.ts';

const files = import.meta.glob<Record<string, unknown>>('../src/core/**/{limits,rules}.ts', { eager: true });

/** What every row of every stage must at least carry. */
interface Row {
  readonly id: string;
  readonly source?: string;
  readonly value?: number | null;
  readonly unit?: string;
}

const isRow = (x: unknown): x is Row =>
  typeof x === 'object' && x !== null && 'id' in x && ('source' in x || 'value' in x || 'unit' in x);

const rowsOf = (exported: unknown): readonly Row[] => {
  if (Array.isArray(exported)) return exported.filter(isRow);
  if (typeof exported !== 'object' || exported === null) return [];
  return isRow(exported) ? [exported] : Object.values(exported).filter(isRow);
};

/** What is missing in a row, in words. */
const wrongIn = (row: Row): readonly string[] => {
  const wrong: string[] = [];
  if (!/^[a-z0-9][\w.:-]*$/i.test(row.id)) wrong.push(`${row.id}: no stable id`);
  if (!row.source || row.source.trim().length < 8) wrong.push(`${row.id}: no source`);
  if (typeof row.value === 'number' && !row.unit) wrong.push(`${row.id}: a value without unit`);
  return wrong;
};

describe('rows of limits and rules', () => {
  const rows = Object.entries(files).flatMap(([path, exported]) =>
    Object.values(exported).flatMap((one) => rowsOf(one).map((row) => ({ path, row }))),
  );

  it('are found at all', () => {
    expect(Object.keys(files).length).toBeGreaterThan(1);
    for (const path of Object.keys(files))
      expect(
        rows.some((one) => one.path === path),
        path,
      ).toBe(true);
  });

  it('have a unit and a source each, or say that there is none', () => {
    expect(rows.flatMap(({ row }) => wrongIn(row))).toEqual([]);
  });

  it('have ids that come once', () => {
    const ids = rows.map(({ path, row }) => `${path} ${row.id}`);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  it('are refused without unit or source', () => {
    expect(wrongIn({ id: 'x', value: 1, source: 'A published text, p. 3' } as Row)).not.toEqual([]);
    expect(wrongIn({ id: 'x', value: 1, unit: 'in', source: '' } as Row)).not.toEqual([]);
  });
});

describe('the version', () => {
  it('in the code is the one in package.json', () => {
    expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
  });
});
