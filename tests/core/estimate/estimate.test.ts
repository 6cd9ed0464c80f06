import { describe, expect, it, vi } from 'vitest';
import { assess, rememberingStages } from '../../../src/core/assess.ts';
import { bayRoute, sideBySide } from '../../../src/core/estimate/compare.ts';
import { inventedRates } from '../../../src/core/estimate/rates.ts';
import { stockCuts } from '../../../src/core/estimate/stockCuts.ts';
import { supplement } from '../../../src/core/estimate/supplement.ts';
import { takeoff } from '../../../src/core/estimate/takeoff.ts';
import type { Job, JobRecord } from '../../../src/core/job/jobSchema.ts';
import { stepKinds } from '../../../src/core/plan/kinds.ts';
import { states } from '../../../src/core/walkRound/result.ts';
import { expectNear } from '../../kit/near.ts';
import { groundLoop, rec } from '../plan/planJob.ts';

// Whole assessments: seconds on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const job = groundLoop();
const use = rememberingStages();
const withRecords = (...records: JobRecord[]): Job => ({ ...job, records: [...job.records, ...records] });
const of = (...records: JobRecord[]) => assess(withRecords(...records), {}, use);
const plain = of();
const manual = (topic: string, fields: Readonly<Record<string, unknown>>): JobRecord =>
  rec({ kind: 'manual', topic, source: 'shop', ...fields });

describe('lengths to buy', () => {
  it('are the fewest, with the kerf of each cut but the last of a bar', () => {
    // Three 10 in pieces and two 1/8 kerfs are 30.25 in: in one bar of 30.25, not in one of 30.2.
    const pieces = ['a', 'b', 'c'].map((id) => ({ id, takesIn: 10.125 }));
    expect(stockCuts(pieces, 30.25, 0.125).bars).toEqual([{ pieces: ['a', 'b', 'c'], leftIn: 0 }]);
    expect(stockCuts(pieces, 30.2, 0.125).bars.length).toBe(2);
  });

  it('never hold a piece that is longer than they are: it is named', () => {
    expect(stockCuts([{ id: 'a', takesIn: 31 }], 30, 0.125)).toMatchObject({ bars: [], tooLong: ['a'] });
  });

  it('hold every part of every design once, and the waste is what is bought and not used', () => {
    for (const line of plain.takeoff.stock) {
      const placed = line.bars.flatMap((b) => b.pieces).toSorted();
      expect(placed).toEqual(line.pieces.map((p) => p.id).toSorted());
      const net = line.pieces.reduce((sum, p) => sum + p.netIn.value, 0);
      expectNear(line.wasteIn.value, line.bars.length * 240 - net, {
        rel: 1e-12,
        because: 'one subtraction',
      });
    }
  });

  it('take the user’s stock length and kerf before the starting values', () => {
    const mine = of(manual('stock-length', { valueIn: 72 }), manual('kerf', { valueIn: 0.1 })).takeoff;
    for (const line of mine.stock) {
      expect(line.stockIn).toMatchObject({ value: 72, basis: { kind: 'manual' } });
      expect(line.pieces.every((p) => p.kerfIn.value === 0.1)).toBe(true);
    }
    expect(plain.takeoff.stock[0]!.stockIn).toMatchObject({ value: 240, assumed: ['starting-value'] });
  });

  it('are only those of whole tubes while nothing is designed, and say so', () => {
    const bare = takeoff(plain.truss, plain.coverage, null, []);
    const pieces = bare.stock.flatMap((s) => s.pieces);
    expect(pieces.length).toBeGreaterThan(0);
    for (const p of pieces) expect(p.netIn.assumed).toContain('no-design');
    expect(bare.issues.map((i) => i.code)).toContain('takeoff-without-design');
    expect(bare.ledger.notKnown.length).toBe(bare.repairs.length);
  });
});

describe('the weight ledger', () => {
  it('is weight times arm, row by row, and adds up', () => {
    const { rows, addedLb, momentLbIn } = plain.takeoff.ledger;
    expect(rows.length).toBeGreaterThan(0);
    const near = { rel: 1e-12, abs: 1e-12, because: 'rounding only' };
    for (const r of rows) expectNear(r.momentLbIn.value, r.addedLb.value * r.armIn.value, near);
    expectNear(
      addedLb.value,
      rows.reduce((s, r) => s + r.addedLb.value, 0),
      near,
    );
    expectNear(
      momentLbIn.value,
      rows.reduce((s, r) => s + r.momentLbIn.value, 0),
      near,
    );
    const at = (id: string): number => plain.truss.clusters.find((c) => c.id === id)!.at[0];
    const spliced = rows.find((r) => r.member === 'L4R-L5R')!;
    expect(spliced.armIn.value).toBeGreaterThan(at('L4R'));
    expect(spliced.armIn.value).toBeLessThan(at('L5R'));
  });

  it('cannot say without empty weight and chord, nor while a repair is not designed, and names what is missing', () => {
    const [weight, shift] = plain.takeoff.ledger.thresholds;
    expect(weight).toMatchObject({ says: 'cannotSay', missing: ['empty-weight-lb'] });
    expect(shift).toMatchObject({ says: 'cannotSay', missing: ['empty-weight-lb', 'empty-cg', 'chord'] });
    const known = of(
      manual('empty-weight-lb', { value: 900 }),
      manual('empty-cg', { valueIn: 40 }),
      manual('chord', { valueIn: 60 }),
    ).takeoff.ledger;
    expect(known.shiftIn?.value).toBeGreaterThan(0);
    expect(known.notKnown.length).toBeGreaterThan(0);
    for (const t of known.thresholds) expect(['cannotSay', 'outside']).toContain(t.says);
  });

  it('does not use the pound on an aircraft of 5,000 lb or more', () => {
    const heavy = of(manual('empty-weight-lb', { value: 6000 })).takeoff.ledger;
    expect(heavy.thresholds[0]).toMatchObject({ says: 'cannotSay', missing: [] });
  });
});

describe('the estimate', () => {
  it('has an invented rate for every kind of step, and every line says what it rests on', () => {
    for (const kind of stepKinds) expect(inventedRates[kind], kind).toBeDefined();
    for (const line of plain.estimate.lines) expect(line.basis).toBe('invented');
  });

  it('takes the user’s rate in place of ours, and says by which record', () => {
    const mine = rec({ kind: 'rate', operation: 'tack', hours: 2, bestHours: 1, worstHours: 4 });
    const { lines } = of(mine).estimate;
    const tacks = lines.filter((l) => l.operation === 'tack');
    expect(tacks.length).toBeGreaterThan(0);
    for (const l of tacks)
      expect(l).toMatchObject({ basis: 'rate', record: mine.id, hours: { best: 1, likely: 2, worst: 4 } });
  });

  it('refuses a rate whose best is over its worst and keeps ours', () => {
    const { lines, issues } = of(rec({ kind: 'rate', operation: 'tack', hours: 2, bestHours: 3 })).estimate;
    expect(issues.map((i) => i.code)).toContain('rate-out-of-order');
    expect(lines.filter((l) => l.operation === 'tack').every((l) => l.basis === 'invented')).toBe(true);
  });

  it('shares a set-up among the tubes of a bay', () => {
    const ids = plain.estimate.lines.filter((l) => l.kind === 'setUp').map((l) => l.id);
    expect(new Set(ids).size).toBe(ids.length);
    const welds = plain.plan.steps.filter((s) => s.kind === 'weldFirst');
    const setUps = plain.estimate.lines.filter((l) => l.kind === 'setUp' && l.operation === 'weldFirst');
    expect(setUps.length).toBe(new Set(welds.map((s) => s.bay)).size);
    expect(setUps.length).toBeLessThan(welds.length);
  });

  it('keeps accident, older and unknown damage apart, and together they are everything', () => {
    const { byOrigin, known, lines } = plain.estimate;
    const sum = Object.values(byOrigin).reduce((s, o) => s + o.meanH, 0);
    expectNear(sum, known.meanH.value, { rel: 1e-12, because: 'the same lines added in another order' });
    expect(byOrigin.older.lines).toBe(lines.filter((l) => l.of === 'L9R-L10R').length);
  });

  it('puts its counts in the fixed order, the same as the walk-round’s', () => {
    expect(Object.keys(plain.estimate.counts)).toEqual([...states]);
    expect(plain.estimate.counts).toEqual(plain.coverage.members);
  });

  it('has best under likely under worst, near the closed form', () => {
    const { bestH, likelyH, worstH, meanH, stdH } = plain.estimate.known;
    expect(bestH.value).toBeLessThan(likelyH.value);
    expect(likelyH.value).toBeLessThan(worstH.value);
    // Many lines: close to normal, whose 10 % point is 1.2816 standard deviations under the mean.
    const near = { abs: 0.12 * stdH, because: 'skew of the lines and 4,000 draws' };
    expectNear(likelyH.value, meanH.value, near);
    expectNear(bestH.value, meanH.value - 1.2816 * stdH, near);
    expectNear(worstH.value, meanH.value + 1.2816 * stdH, near);
  });

  it('counts what nobody has looked at, prices none of it unasked, and takes the user’s chance', () => {
    expect(plain.estimate.hidden.flatMap((h) => h.members).toSorted()).toEqual(
      plain.coverage.notLookedAt.members.toSorted(),
    );
    expect(plain.estimate.hidden.every((h) => h.chance === null && h.meanH === null)).toBe(true);
    expect(plain.estimate.nextHour).toBeNull();
    const asked = of(manual('hidden:first', { value: 20, unit: '%' })).estimate;
    const [first] = asked.hidden;
    const rate = inventedRates.hidden.each;
    const mean = first!.members.length * 0.2 * ((rate.best + rate.likely + rate.worst) / 3);
    const near = { rel: 1e-12, because: 'n p μ by hand' };
    expectNear(first!.meanH!, mean, near);
    expectNear(asked.withHidden.meanH.value, asked.known.meanH.value + mean, near);
    expect(asked.known).toEqual(plain.estimate.known);
  });

  it('says what the next hour of looking is worth: p (1 − p) μ² of variance for each tube', () => {
    const { nextHour, withHidden, hidden } = of(manual('hidden:first', { value: 0.5 })).estimate;
    // An hour is 5 tubes of 0.2 h on average.
    expect(nextHour?.members).toEqual(hidden[0]!.members.slice(0, 5));
    const left = withHidden.stdH ** 2 - 5 * 0.25 * 7 ** 2;
    expectNear(nextHour!.stdAfterH, Math.sqrt(left), { rel: 1e-9, because: 'law of total variance by hand' });
    expect(nextHour!.finds).toBe(2.5);
  });

  it('turns hours into money only at the user’s rate, in the user’s currency', () => {
    expect(plain.estimate.money).toBeUndefined();
    const { money, withHidden } = of(
      rec({ kind: 'rate', operation: 'labour', amount: 50, currency: 'shells' }),
    ).estimate;
    expect(money).toMatchObject({ perHour: 50, currency: 'shells' });
    expectNear(money!.likely, 50 * withHidden.likelyH.value, { rel: 1e-12, because: 'one product' });
  });

  it('names a rate of no operation and a chance that is none', () => {
    const { issues } = of(
      rec({ kind: 'rate', operation: 'dancing', hours: 1 }),
      manual('hidden:rest', { value: 7 }),
    ).estimate;
    expect(issues.map((i) => i.code).toSorted()).toEqual([
      'hidden-chance-unreadable',
      'rate-of-no-operation',
    ]);
  });
});

describe('two ways held side by side', () => {
  it('have the same rows, and say what each leaves out', () => {
    const decide = (way: 'spliceEach' | 'replaceBay'): JobRecord[] =>
      bayRoute(plain.truss, plain.coverage, '8', way).map(({ of: member, choice }) => {
        const stands = job.records.findLast((r) => r.kind === 'decision' && r.of === member);
        return rec({ kind: 'decision', of: member, choice, ...(stands ? { replaces: stands.id } : {}) });
      });
    const [spliced, replaced] = [of(...decide('spliceEach')), of(...decide('replaceBay'))];
    const table = sideBySide([
      { name: 'Splice each', ...spliced },
      { name: 'Replace the bay', ...replaced },
    ]);
    expect(table.names).toEqual(['Splice each', 'Replace the bay']);
    for (const row of table.rows) expect(row.values.length).toBe(2);
    const likely = table.rows.find((r) => r.what === 'likelyH')!.values;
    // A whole bay of tubes is more work than the hurt ones of it.
    expect(likely[1]).toBeGreaterThan(likely[0]!);
    expect(bayRoute(plain.truss, plain.coverage, '8', 'replaceBay').map((d) => d.of)).toEqual(
      plain.truss.bays.find((b) => b.id === '8')!.members,
    );
  });
});

describe('a supplement', () => {
  it('of a job with itself is empty', () => {
    expect(supplement(plain, plain)).toMatchObject({ added: [], removed: [], changed: [], meanH: 0, of: [] });
  });

  it('is the difference of the two totals, and turns round with them', () => {
    const stands = job.records.findLast((r) => r.kind === 'decision' && r.of === 'L9R-L10R')!;
    const after = of(rec({ kind: 'decision', of: 'L9R-L10R', choice: 'replace', replaces: stands.id }));
    const there = supplement(plain, after);
    const back = supplement(after, plain);
    expect(there.of).toContain('L9R-L10R');
    expect(there.pieces.added).toContain('L9R-L10R member');
    expect(back.added.map((l) => l.id)).toEqual(there.removed.map((l) => l.id));
    const near = { rel: 1e-9, abs: 1e-9, because: 'sums in another order' };
    expectNear(there.meanH, after.estimate.known.meanH.value - plain.estimate.known.meanH.value, near);
    expectNear(back.meanH, -there.meanH, near);
  });
});
