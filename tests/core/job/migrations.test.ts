import { describe, expect, it } from 'vitest';
import { JOB_VERSION } from '../../../src/core/job/jobSchema.ts';
import { climb, jobSteps, modelSteps, type Step } from '../../../src/core/job/migrations.ts';
import { MODEL_VERSION } from '../../../src/core/job/modelSchema.ts';
import { frozen } from '../../kit/trusses.ts';

const ladder: readonly Step[] = [
  { from: 2, name: 'add a list', lift: (doc) => ({ ...doc, list: [doc.title] }) },
  { from: 1, name: 'call it title', lift: ({ name, ...doc }) => ({ ...doc, title: name }) },
];

describe('climb', () => {
  it('takes an old document up one step at a time and leaves the old one as it was', () => {
    const old = frozen({ version: 1, name: 'Box', other: 1 });
    expect(climb(old, 3, ladder)).toEqual({
      ok: true,
      value: { version: 3, title: 'Box', other: 1, list: ['Box'] },
      issues: [],
    });
    expect(old).toEqual({ version: 1, name: 'Box', other: 1 });
  });

  it('leaves a document of the newest version alone', () => {
    const now = { version: 3 };
    expect(climb(now, 3, ladder)).toMatchObject({ ok: true, value: now });
  });

  it('refuses a newer version, a version that never was, and what is no version', () => {
    const code = (version: unknown): string | undefined => climb({ version }, 3, ladder).issues[0]?.code;
    expect(code(4)).toBe('version-newer');
    expect(code(0)).toBe('version-unknown');
    expect(code(-1e9)).toBe('version-unknown');
    expect(code(1.5)).toBe('version-unreadable');
    expect(code('1')).toBe('version-unreadable');
    expect(code(undefined)).toBe('version-unreadable');
  });

  it('has one step for every version before the newest', () => {
    const froms = (steps: readonly Step[]): readonly number[] => steps.map((s) => s.from).sort();
    expect(froms(jobSteps)).toEqual(Array.from({ length: JOB_VERSION - 1 }, (_, i) => i + 1));
    expect(froms(modelSteps)).toEqual(Array.from({ length: MODEL_VERSION - 1 }, (_, i) => i + 1));
  });
});
