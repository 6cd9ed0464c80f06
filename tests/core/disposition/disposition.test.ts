import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { disposition } from '../../../src/core/disposition/disposition.ts';
import { rules } from '../../../src/core/disposition/rules.ts';
import { choices, type Finding } from '../../../src/core/job/jobSchema.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { soak } from '../../kit/soak.ts';
import { box, closeLook, decision, disposed, finding, LONG, manual, mid, rowFor, SHORT } from './shop.ts';

const bow = finding('f1', { damage: 'bow', place: mid, depthIn: 0.25 });

describe('dispositions', () => {
  it('list every choice once, in the order of the choices, none preselected', () => {
    const row = rowFor({ findings: [bow] });
    expect(row.options.map((o) => o.choice)).toEqual([...choices]);
    expect(row.decided).toBeUndefined();
    for (const o of row.options) expect(o.reasons.length).toBeGreaterThan(0);
  });

  it('put undecided first, then the order of counts, then stations', () => {
    const on = (id: string, of: string): Finding => ({ ...bow, id, of });
    const { rows, groups } = disposed({
      findings: [on('a', SHORT), on('b', LONG), on('c', 'L1R-L2R'), on('d', 'L2R-L3R'), on('e', 'L1L-L2L')],
      decisions: [
        decision(LONG, 'replace'),
        decision('L1R-L2R', 'splice'),
        decision('L2R-L3R', 'straighten'),
      ],
    });
    expect(rows.map((r) => r.state)).toEqual(['undecided', 'undecided', 'straighten', 'splice', 'replace']);
    expect(rows.slice(0, 2).map((r) => r.id)).toEqual(['L1L-L2L', SHORT]);
    expect(groups.map((g) => g.state)).toEqual([
      'undecided',
      'straighten',
      'splitSleeve',
      'splice',
      'replace',
    ]);
    expect(groups[4]).toEqual({ state: 'replace', members: [LONG], clusters: [] });
  });

  it('hold a decision against the rules, and see whether a reason is written', () => {
    const crack = finding('f2', { damage: 'crack', place: mid, crackIn: 0.3, where: 'tube' });
    const with_ = (reason?: string) =>
      rowFor({ findings: [bow, crack], decisions: [decision(LONG, 'straighten', reason)] }).decided;
    expect(with_()).toMatchObject({ against: true, reasonNeeded: true, reasonWritten: false });
    expect(with_('   ')).toMatchObject({ against: true, reasonWritten: false });
    expect(with_('the maker says so, letter of 3 March')).toMatchObject({
      against: true,
      reasonWritten: true,
    });
    expect(rowFor({ findings: [bow], decisions: [decision(LONG, 'replace')] }).decided).toMatchObject({
      answer: 'applies',
      against: false,
      reasonNeeded: false,
    });
  });

  it('take a decision without a finding as it is, and say that nothing was found', () => {
    const row = rowFor({ decisions: [decision(LONG, 'splice')] });
    expect(row.decided).toMatchObject({ answer: 'cannotSay', reasonNeeded: true });
    expect(row.missing).toContainEqual({ name: 'finding' });
  });

  it('have no row for what has neither finding nor decision', () => {
    expect(disposed({ looks: [closeLook(LONG)] }).rows).toEqual([]);
  });
});

/** Jobs that between them meet every rule. */
const cases = [
  { findings: [bow] },
  { findings: [finding('f1', { damage: 'crack', place: mid, crackIn: 0.3, where: 'tube' as const })] },
  { findings: [bow, finding('f2', { damage: 'crack', place: mid })] },
  { findings: [bow, finding('f2', { damage: 'oval', place: mid })] },
  { findings: [finding('f1', { damage: 'kink', place: mid })] },
  { findings: [finding('f1', { damage: 'break', place: mid, gapIn: 36 })] },
  { findings: [finding('f1', { damage: 'oval', place: mid })] },
  { findings: [finding('f1', { damage: 'hole', place: mid, alongIn: 0.5, widthIn: 0.5 })] },
  { findings: [finding('f1', { damage: 'thinned', place: mid })] },
  { findings: [finding('f1', { damage: 'other', what: 'burnt' })] },
  {
    findings: [
      finding('f1', {
        damage: 'dent',
        place: { from: 'U1R', atIn: 2.2 },
        depthIn: 0.05,
        alongIn: 0.2,
        widthIn: 0.2,
        widthBy: 'across' as const,
      }),
    ],
  },
  {
    findings: [1, 2].map((k) =>
      finding(`f${k}`, {
        damage: 'dent',
        place: { from: 'U1R', atIn: 18 + k },
        depthIn: 0.05,
        alongIn: 0.9,
        widthIn: 0.2,
        widthBy: 'across' as const,
      }),
    ),
  },
  {
    findings: [finding('f1', { damage: 'dent', place: { from: 'U1R', atIn: 0.2 } })],
    model: box(undefined, { clusters: [{ id: 'U1R', at: [0, 12, 24], fitting: 'lug' }] }),
  },
  {
    findings: [finding('f1', { damage: 'crack', place: { from: 'U1R', atIn: 0.2 }, where: 'bead' as const })],
  },
  { decisions: [decision(LONG, 'splice')] },
  { findings: [bow], manual: [manual('allow:straighten')] },
  { findings: [bow], model: box(undefined, { members: [{ from: 'U1R', to: 'U2R', material: 'ht125' }] }) },
  {
    findings: [bow],
    model: box(undefined, {
      members: [
        {
          from: 'U1R',
          to: 'U2R',
          material: 'unknown',
          section: { elasticPsi: 29e6, shearPsi: 11e6, yieldPsi: 50e3, densityLbIn3: 0.283 },
        },
      ],
    }),
  },
  ...['brazed', 'cold worked', 'mount ring', 'axle', 'streamline', 'mine'].map((words) => ({
    findings: [bow],
    manual: [manual(`scope:${LONG}`, { words })],
  })),
];

describe('the rows of rules', () => {
  it('have one id each, and a source with its place, or say that it is common practice', () => {
    expect(new Set(rules.map((r) => r.id)).size).toBe(rules.length);
    for (const row of rules) {
      expect(row.says.length).toBeGreaterThan(10);
      if (row.source === 'common practice, no source') expect(row.place).toBe('');
      else expect(row.place).toMatch(/\d/);
      expect(row.value === undefined).toBe(row.unit === undefined);
    }
  });

  it('are each quoted by some job, or read for their number', () => {
    const quoted = new Set(
      cases.flatMap((c) =>
        disposed(c).rows.flatMap((r) =>
          r.options.flatMap((o) => [...o.reasons.map((x) => x.rule), ...o.conditions]),
        ),
      ),
    );
    const numbers = ['inner-sleeve-reach', 'outer-sleeve-reach', 'larger-short-stub', 'larger-long-stub'];
    // What places a finding rather than answers a choice, and what says that nothing is published.
    const stated = ['at-cluster', 'dent-left', 'bow', 'oval', 'wall'];
    const known = new Set([...quoted, ...numbers, ...stated]);
    expect(rules.map((r) => r.id).filter((id) => !known.has(id))).toEqual([]);
  });

  it('never let a number stand without source: a row of common practice has none', () => {
    for (const row of rules)
      if (row.source !== 'FAA AC 43.13-1B with CHG 1 (1998/2001)') expect(row.value).toBeUndefined();
  });
});

const damages = ['bow', 'kink', 'dent', 'crack', 'oval', 'thinned', 'hole', 'break', 'other'] as const;
const size = fc.option(fc.double({ min: 0, max: 3, noNaN: true }), { nil: undefined });
const anyFinding = fc
  .record({
    damage: fc.constantFrom(...damages),
    of: fc.constantFrom(LONG, SHORT, 'U2R', 'L1R-L2R'),
    depthIn: size,
    alongIn: size,
    widthIn: size,
    crackIn: size,
    largestIn: size,
    smallestIn: size,
    wallLeftIn: size,
    atIn: size,
  })
  .map(({ atIn, ...f }) => ({
    ...f,
    ...(atIn !== undefined && f.of.includes('-')
      ? { place: { from: f.of.split('-')[0]!, atIn: atIn * 3 } }
      : {}),
  }));
const defined = <T extends object>(o: T): T =>
  Object.fromEntries(Object.entries(o).filter(([, v]) => v !== undefined)) as T;

describe('any set of findings (seed 5013)', () => {
  const truss = expandTruss(box());
  const run = (findings: readonly Finding[]) =>
    disposition(truss, walkRound(truss, [], findings, [], [], []), []);
  const some = fc
    .array(anyFinding, { minLength: 1, maxLength: 4 })
    .map((list) => list.map((f, k) => finding(`f${k}`, defined(f) as never)));

  it('is answered for every choice, with a reason or a missing thing named', () => {
    fc.assert(
      fc.property(some, (findings) => {
        for (const row of run(findings).rows)
          for (const o of row.options) {
            expect(o.reasons.length + o.missing.length).toBeGreaterThan(0);
            if (o.answer === 'doesNotApply') expect(o.reasons[0]?.says).toBe('doesNotApply');
            if (o.answer === 'applies') expect(o.missing).toEqual([]);
            if (o.answer === 'cannotSay')
              expect(
                o.missing.length + o.reasons.filter((r) => r.says === 'cannotSay').length,
              ).toBeGreaterThan(0);
          }
      }),
      { seed: 5013, numRuns: soak(400) },
    );
  });

  it('never opens a repair by adding damage to a member', () => {
    fc.assert(
      fc.property(some, (findings) => {
        const [less, more] = [run(findings.slice(0, -1)), run(findings)];
        for (const row of less.rows)
          for (const o of row.options) {
            if (o.answer !== 'doesNotApply' || row.findings.length === 0) continue;
            const now = more.rows.find((r) => r.id === row.id)!.options.find((p) => p.choice === o.choice)!;
            const nothingToDo = o.reasons.every(
              (r) => r.says !== 'doesNotApply' || /^nothing-to|^not-at-a-cluster$/.test(r.rule),
            );
            if (!nothingToDo) expect(now.answer).toBe('doesNotApply');
          }
      }),
      { seed: 5013, numRuns: soak(400) },
    );
  });

  it('does not depend on the order they were entered in', () => {
    fc.assert(
      fc.property(some, (findings) => {
        const answers = (list: readonly Finding[]) =>
          run(list).rows.map((r) => [r.id, r.options.map((o) => o.answer)]);
        expect(answers(findings.toReversed())).toEqual(answers(findings));
      }),
      { seed: 5013, numRuns: soak(200) },
    );
  });
});
