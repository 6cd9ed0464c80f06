import { describe, expect, it } from 'vitest';
import { disposition } from '../../../src/core/disposition/disposition.ts';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { cutAt } from '../../../src/core/splice/cut.ts';
import type { Splices } from '../../../src/core/splice/result.ts';
import { spliceRules } from '../../../src/core/splice/rules.ts';
import { splice, spliceFor } from '../../../src/core/splice/splice.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { expectNear } from '../../kit/near.ts';
import { frozen } from '../../kit/trusses.ts';
import { emptyJob } from '../../present/made.ts';

let next = 0;
const record = (r: Record<string, unknown>): JobRecord =>
  ({
    id: `s${next++}`,
    by: 'Mira Tannahill',
    at: '2026-03-02T08:00:00Z',
    device: 'tablet-a',
    ...r,
  }) as unknown as JobRecord;

const dent = (of: string, from: string, clock: number): JobRecord =>
  record({
    kind: 'finding',
    of,
    origin: 'thisAccident',
    damage: 'dent',
    depthIn: 0.25,
    alongIn: 1.5,
    widthIn: 0.5,
    widthBy: 'across',
    place: { from, atIn: 9 },
    clock,
  });

const stageOf = (records: readonly JobRecord[]) => {
  const job: Job = { ...emptyJob(), records };
  const live = standing(job.records);
  const truss = expandTruss(job.model);
  const coverage = walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
  return { truss, coverage, manual: live.manual, judged: disposition(truss, coverage, live.manual) };
};
const run = (records: readonly JobRecord[]): Splices => {
  const { truss, coverage, manual, judged } = frozen(stageOf(records));
  return splice(truss, coverage, judged, manual);
};

describe('stage splice', () => {
  it('works out the members decided to be spliced, sleeved, patched or replaced, and no others', () => {
    const { members, issues } = run([
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
      record({ kind: 'decision', of: 'U3L-U4L', choice: 'replace' }),
      record({ kind: 'decision', of: 'U4L-U5L', choice: 'straighten' }),
    ]);
    expect(members.map((m) => m.member)).toEqual(['U3L-U4L', 'L5R-L6R']);
    expect(issues).toEqual([]);
    expect(members[1]!.designs.find((d) => d.method === 'innerSleeve')!.fits).toBe('fits');
  });

  it('gives opposite-hand twins the mirrored splice', () => {
    const { members } = run([
      dent('L5R-L6R', 'L5R', 5),
      dent('L5L-L6L', 'L5L', 7),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
      record({ kind: 'decision', of: 'L5L-L6L', choice: 'splice' }),
    ]);
    const [left, right] = members as [(typeof members)[0], (typeof members)[0]];
    for (const [k, d] of left.designs.entries()) {
      const twin = right.designs[k]!;
      expect(twin.fits).toBe(d.fits);
      for (const [n, part] of (d.plan?.parts ?? []).entries())
        for (let clock = 0; clock <= 12; clock += 0.8)
          for (const end of [0, 1] as const)
            expectNear(
              cutAt(part.ends[end], part.tube.odIn / 2, clock),
              cutAt(twin.plan!.parts[n]!.ends[end], part.tube.odIn / 2, 12 - clock),
              { abs: 1e-9, because: 'the model is the same on both hands' },
            );
    }
  });

  it('works any member that is asked for, decided or not, and says nothing of one the truss has not', () => {
    const { truss, coverage, manual, judged } = stageOf([dent('L5R-L6R', 'L5R', 6)]);
    expect(spliceFor(truss, coverage, judged, manual, 'L5R-L6R')!.choice).toBeNull();
    expect(spliceFor(truss, coverage, null, manual, 'L5R-L6R')!.designs).toHaveLength(6);
    expect(spliceFor(truss, coverage, null, manual, 'nowhere')).toBeNull();
  });

  it('closes the weld choices where the user puts the member out of scope', () => {
    const { members } = run([
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
      record({ kind: 'manual', topic: 'scope:L5R-L6R', words: 'brazed by a former owner', source: 'Log' }),
    ]);
    for (const d of members[0]!.designs) {
      expect(d.closed).toEqual(['brazed']);
      expect([d.fits, d.plan]).toEqual(['cannotSay', null]);
    }
  });

  it('says what is wrong with a tube at hand, and with a table it cannot read', () => {
    const { issues } = run([
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
      record({ kind: 'manual', topic: 'splice-section:L5R-L6R', words: '7/8 x .028, 1025', source: 'Rack' }),
      record({ kind: 'manual', topic: 'sleeve:seven eighths', words: '3/4 x .035', source: 'Sheet' }),
      record({ kind: 'manual', topic: 'splice-sleeve:L5R-L6R', words: 'the short one', source: 'Rack' }),
    ]);
    expect([...new Set(issues.map((i) => i.code))].sort()).toEqual([
      'sleeve-table-unreadable',
      'splice-other-material',
      'splice-tube-unreadable',
      'splice-wall-too-thin',
    ]);
  });

  it('names a section of another diameter, and a sleeve that does not go in', () => {
    const { issues } = run([
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
      record({ kind: 'manual', topic: 'splice-section:L5R-L6R', words: '1 x .035', source: 'Rack' }),
      record({ kind: 'manual', topic: 'splice-sleeve:L5R-L6R', words: '1-1/8 x .035', source: 'Rack' }),
    ]);
    const codes = issues.map((i) => i.code);
    expect(codes).toContain('splice-other-diameter');
    expect(codes).toContain('splice-sleeve-does-not-fit');
    for (const i of issues) expect(i.at).toBe('L5R-L6R');
  });

  it('gives equal bytes for equal jobs, whatever the order of the records', () => {
    next = 0;
    const records = [
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
    ];
    expect(JSON.stringify(run(records))).toBe(JSON.stringify(run([...records].reverse())));
  });

  it('quotes no rule without a row, and no row without a source', () => {
    const ids = new Set(spliceRules.map((r) => r.id));
    const { members } = run([
      dent('L5R-L6R', 'L5R', 6),
      record({ kind: 'decision', of: 'L5R-L6R', choice: 'splice' }),
    ]);
    for (const d of members[0]!.designs) {
      for (const r of d.rules) expect(ids.has(r.rule), r.rule).toBe(true);
      for (const f of d.failing) expect(ids.has(f.rule), f.rule).toBe(true);
    }
    for (const r of spliceRules)
      expect(r.source === 'common practice, no source' || r.place !== '', r.id).toBe(true);
    expect(ids.size).toBe(spliceRules.length);
  });
});
