import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { distance, type Vec3 } from '../../../src/core/base/vec3.ts';
import { type Job, jobSchema, type RecordKind, type RecordOf } from '../../../src/core/job/jobSchema.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { trammel } from '../../../src/core/trammel/trammel.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { expectNear } from '../../kit/near.ts';

const text = readFileSync(new URL('../../../demo-data/ground-loop.json', import.meta.url), 'utf8');
const read = z.safeParse(jobSchema, JSON.parse(text));
const job = read.data as Job;
const truss = expandTruss(job.model);
const of = <K extends RecordKind>(kind: K): RecordOf<K>[] =>
  job.records.filter((r): r is RecordOf<K> => r.kind === kind);
const members = new Map(truss.members.map((m) => [m.id, m]));
const clusters = new Map(truss.clusters.map((c) => [c.id, c.at]));

// How the readings were made: these clusters moved by so much before cutting, 1/64 in noise (one standard deviation),
// rounded to 1/32; read-33 was written 3/8 long.
const moves: Readonly<Record<string, Vec3>> = {
  L3R: [0.12, -0.1, 0.25],
  L2R: [0.03, -0.02, 0.1],
  U3R: [0.02, -0.05, 0.03],
};
const MISREAD = 'read-33';

describe('the ground-loop demo', () => {
  it('is a job the schema takes, on the tandem as the model file has it', () => {
    expect(read.success, JSON.stringify(read.error?.issues)).toBe(true);
    const model = readFileSync(new URL('../../../models/high-wing-tandem.json', import.meta.url), 'utf8');
    expect(job.model).toEqual(JSON.parse(model));
  });

  it('has record ids once each, in the year 2026, and names only parts that exist', () => {
    expect(new Set(job.records.map((r) => r.id)).size).toBe(job.records.length);
    for (const r of job.records) expect(r.at).toMatch(/^2026-/);
    for (const r of [...of('look'), ...of('finding'), ...of('decision')])
      expect(members.has(r.of) || clusters.has(r.of), r.of).toBe(true);
    for (const e of of('reading').flatMap((r) => r.ends)) expect(clusters.has(e.cluster)).toBe(true);
  });

  it('has findings of many kinds on twelve members at least, near and far from the blow', () => {
    const findings = of('finding');
    expect(findings.length).toBeGreaterThanOrEqual(15);
    expect(new Set(findings.map((f) => f.of).filter((id) => members.has(id))).size).toBeGreaterThanOrEqual(
      12,
    );
    for (const kind of ['bow', 'crack', 'dent', 'oval', 'thinned', 'kink'])
      expect(findings.some((f) => f.damage === kind)).toBe(true);
    expect(findings.some((f) => f.damage === 'bow' && f.depthIn === undefined)).toBe(true);
    expect(findings.some((f) => f.damage === 'dent' && f.widthBy === 'around')).toBe(true);
  });

  it('places each finding on its tube', () => {
    for (const f of of('finding')) {
      if (!f.place) continue;
      const m = members.get(f.of)!;
      expect([m.from, m.to]).toContain(f.place.from);
      expect(f.place.atIn).toBeLessThan(m.lengthIn);
    }
  });

  it('leaves about four members in ten not looked at', () => {
    const seen = new Set([...of('look'), ...of('finding')].map((r) => r.of));
    const share = truss.members.filter((m) => !seen.has(m.id)).length / truss.members.length;
    expectNear(share, 0.4, { abs: 0.05, because: 'about 40 %' });
  });

  it('has readings that fit the shape they were made of, but for the one misread', () => {
    const moved = (id: string): Vec3 => {
      const [x, y, z] = clusters.get(id)!;
      const [dx, dy, dz] = moves[id] ?? [0, 0, 0];
      return [x + dx, y + dy, z + dz];
    };
    const axis = of('reading').filter(
      (r) => r.hold === 'beforeCutting' && r.ends.every((e) => e.mark === 'axis'),
    );
    expect(axis.length).toBeGreaterThan(50);
    expect(axis.filter((r) => r.setAndMiss).length).toBeGreaterThan(3);
    for (const r of axis) {
      const lengthIn = r.lengthIn ?? r.setAndMiss!.setIn - r.setAndMiss!.missIn;
      const off = lengthIn - distance(moved(r.ends[0].cluster), moved(r.ends[1].cluster));
      if (r.id === MISREAD) expectNear(off, 0.375, { abs: 0.08, because: 'planted, with noise' });
      // Five standard deviations of 1/64 in noise and rounding to 1/32 (0.009 in).
      else expectNear(off, 0, { abs: 0.09, because: 'noise and rounding' });
    }
  });

  it('lets the adjustment find the misread and the pushed-up gear fitting', () => {
    const live = standing(job.records);
    const { byHold } = trammel(truss, job.model, live.readings, live.findings, live.manual);
    const before = byHold.beforeCutting!;
    expect(before.cause).toMatchObject({ kind: 'misread', reading: MISREAD });
    const gear = before.clusters.find((c) => c.id === 'L3R')!;
    expect(gear.moved).toBe('moved');
    for (const k of [0, 1, 2] as const)
      expectNear(gear.moveIn[k], moves.L3R![k], {
        abs: 0.05,
        because: 'readings of 0.018 in, about three to a direction, three standard deviations',
      });
  });
});
