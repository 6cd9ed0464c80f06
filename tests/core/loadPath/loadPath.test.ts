import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Choice, Decision, Finding, Look, Mishap } from '../../../src/core/job/jobSchema.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import { hopsFrom } from '../../../src/core/loadPath/hops.ts';
import { inertiaRelief, lumpedWeights } from '../../../src/core/loadPath/inertia.ts';
import { loadPath } from '../../../src/core/loadPath/loadPath.ts';
import { redistribution } from '../../../src/core/loadPath/redistribution.ts';
import type { NextRow } from '../../../src/core/loadPath/result.ts';
import { samePath, sharedLoad } from '../../../src/core/loadPath/samePath.ts';
import { lockedIn } from '../../../src/core/lockedIn/lockedIn.ts';
import { capacityLbf } from '../../../src/core/statics/capacity.ts';
import { type HeldNow, heldBySetup } from '../../../src/core/statics/held.ts';
import { isFrame, prepareFrame } from '../../../src/core/statics/prepareFrame.ts';
import { statics } from '../../../src/core/statics/statics.ts';
import type { Truss } from '../../../src/core/truss/result.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { walkRound } from '../../../src/core/walkRound/walkRound.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { noReadings } from '../relief/job.ts';
import { naive } from '../relief/oracle.ts';
import { freeEnds } from '../relief/softTube.ts';
import { bow, boxModel, fixedOf, heldAt, randomFrame, seeded } from '../relief/trusses.ts';

const stamp = { by: 'test', at: '2026-01-01T00:00:00Z', device: 'test' } as const;
const look = (of: string, finishRemoved: boolean): Look => ({
  id: `l-${of}`,
  kind: 'look',
  of,
  state: 'lookedAt',
  method: finishRemoved ? 'penetrant' : 'eye',
  finishRemoved,
  ...stamp,
});

interface Asked {
  readonly truss: Truss;
  readonly model: Model;
  readonly support: HeldNow;
  readonly findings: readonly Finding[];
  readonly looks?: readonly Look[];
  readonly decisions?: Readonly<Record<string, Choice>>;
  readonly mishap?: Mishap;
}

const work = (s: Asked, targets: readonly string[] = []) => {
  const frame = prepareFrame(s.truss, s.support);
  const decisions = Object.entries(s.decisions ?? {}).map(
    ([of, choice]): Decision => ({ id: `d-${of}`, kind: 'decision', of, choice, ...stamp }),
  );
  const coverage = walkRound(s.truss, s.looks ?? [], s.findings, decisions, [], []);
  const solved = statics(s.truss, s.model, s.support, frame);
  const locked = lockedIn(s.truss, frame, s.findings, noReadings);
  return loadPath(s.truss, s.model, frame, solved, coverage, locked, s.mishap, targets);
};

const box = (bays: number, more = {}): Pick<Asked, 'truss' | 'model' | 'support'> => {
  const model = boxModel({ bays, ...more });
  const support = heldAt(
    new Map([
      ['L1L', ['x', 'y', 'z']],
      ['L1R', ['x', 'z']],
      [`L${bays + 1}L`, ['y', 'z']],
      [`L${bays + 1}R`, ['z']],
    ] as const),
  );
  return { model, truss: expandTruss(model), support };
};
const tandem = () => {
  const url = new URL('../../../models/high-wing-tandem.json', import.meta.url);
  const model = JSON.parse(readFileSync(url, 'utf8')) as Model;
  const truss = expandTruss(model);
  return { model, truss, support: heldBySetup(truss, model, 'jig') };
};

describe('energy shares', () => {
  for (let seed = 1; seed <= soak(200); seed++)
    it(`are those of a frame solved by another library, and add up to one, random frame, seed ${seed}`, () => {
      const truss = randomFrame(seed);
      const support = heldAt(new Map([['P0', ['x', 'y', 'z', 'rx', 'ry', 'rz']]]));
      const frame = prepareFrame(truss, support);
      if (!isFrame(frame)) throw new Error('random frame does not stand');
      const i = Math.floor(seeded(seed + 7)() * truss.members.length);
      const m = truss.members[i]!;
      const [r] = redistribution(frame, [i]);
      const misfit = { member: m.id, shortIn: 0.1 } as never;
      const found = naive({
        truss,
        fixed: fixedOf(support),
        free: new Map([[m.id, freeEnds(truss, misfit, false)]]),
      });
      const stiff = (m.section.elasticPsi * m.section.areaIn2) / m.lengthIn;
      // N = r_N EA δ/L, whole energy r_N EA δ²/2L.
      const near = { abs: 1e-8, because: 'two factorings in double precision' };
      expectNear(r!.rN, found.members.get(m.id)!.axial / (stiff * 0.1), near);
      if (!r!.share || r!.rN < 1e-5) return;
      const at = new Map(truss.clusters.map((c, k) => [c.id, k]));
      // The error is stretched to fit by r_N and the truss gives by 1 − r_N, so the rest holds EAδ²/2L · r_N(1 − r_N).
      const rest = (stiff * 0.01 * r!.rN * (1 - r!.rN)) / 2;
      let sum = 0;
      truss.members.forEach((x, j) => {
        const ends = found.members.get(x.id)!.ends;
        const u = [x.from, x.to].flatMap((c) =>
          Array.from({ length: 6 }, (_, d) => found.moves[at.get(c)! * 6 + d]!),
        );
        const energy = 0.5 * ends.reduce((s, q, k) => s + q * u[k]!, 0);
        if (j !== i) {
          expectNear(r!.share![j]!, energy / rest, { abs: 1e-8 / r!.rN, because: 'shares are taken of r_N' });
          sum += energy / rest;
        }
      });
      // What is missing to one is i's own bending.
      expect(sum).toBeLessThanOrEqual(1 + 1e-6);
    });
});

describe('members on the same load path', () => {
  const { model, truss } = box(3, { sides: ['crossed'], taper: 0.8 });
  const weights = lumpedWeights(truss, model);
  const balance = inertiaRelief(truss, weights)!;

  it('are worked from loads that are in balance, and what balances them is a rigid acceleration', () => {
    const size = truss.clusters.length * 6;
    const loads = new Float64Array(size);
    loads[7 * 6 + 1] = 1;
    loads[5 * 6 + 3] = 4;
    const raw = loads.slice();
    balance(loads, 1);
    const sum = (f: Float64Array, d: number): number =>
      truss.clusters.reduce((s, _, c) => s + f[c * 6 + d]!, 0);
    const moment = (f: Float64Array, d: number): number =>
      truss.clusters.reduce((s, { at }, c) => {
        const [p, q] = [(d + 1) % 3, (d + 2) % 3];
        return s + at[p]! * f[c * 6 + q]! - at[q]! * f[c * 6 + p]! + f[c * 6 + d + 3]!;
      }, 0);
    for (let d = 0; d < 3; d++) {
      expectNear(sum(loads, d), 0, { abs: 1e-10, because: 'rounding of a unit load' });
      expectNear(moment(loads, d), 0, { abs: 1e-9, because: 'rounding of a unit load times the arm' });
    }
    // Relative accelerations of two clusters are square to the line between them.
    const pull = (c: number): number[] =>
      [0, 1, 2].map((d) => (raw[c * 6 + d]! - loads[c * 6 + d]!) / weights[c]!);
    for (const [p, q] of [
      [0, 9],
      [3, 6],
      [2, 11],
    ] as const) {
      const along = [0, 1, 2].reduce(
        (s, d) => s + (pull(p)[d]! - pull(q)[d]!) * (truss.clusters[p]!.at[d]! - truss.clusters[q]!.at[d]!),
        0,
      );
      expectNear(along, 0, { abs: 1e-10, because: 'a rigid body does not stretch' });
    }
  });

  it('couple as a frame solved by another library says, whatever holds it', () => {
    const free = prepareFrame(truss, heldBySetup(truss, model, 'free'));
    if (!isFrame(free)) throw new Error('the box stands');
    const asked = [2, 9];
    const path = samePath(free, balance, asked);
    const size = truss.clusters.length * 6;
    const n = truss.members.length;
    const own = new Array<number>(n).fill(0);
    const rows = asked.map(() => new Array<number>(n).fill(0));
    // Other determinate supports than the code's: forces of balanced loads do not depend on them.
    const fixed = new Map([
      ['U2L', [0, 1, 2]],
      ['U4R', [1, 2]],
      ['L1R', [1]],
    ]);
    for (let c = 0; c < truss.clusters.length; c++)
      for (let d = 0; d < 3; d++) {
        const loads = new Float64Array(size);
        loads[c * 6 + d] = 1;
        balance(loads, 1);
        const found = naive({ truss, fixed, loads: [...loads] });
        const axial = truss.members.map((m) => found.members.get(m.id)!.axial);
        axial.forEach((v, j) => {
          own[j]! += v * v;
          asked.forEach((i, r) => {
            rows[r]![j]! += axial[i]! * v;
          });
        });
      }
    const near = { rel: 1e-7, abs: 1e-9, because: 'two factorings in double precision' };
    for (let j = 0; j < n; j++) {
      expectNear(path.own[j]!, own[j]!, near);
      for (const r of [0, 1]) expectNear(path.rows[r]![j]!, rows[r]![j]!, near);
    }
  });

  it('share all when every load they see is the same, and less when they are lightly used', () => {
    // Two bars in line: forces f and f/2 in every load: ρ = 1, uses 1 and ½.
    const path = { own: Float64Array.of(4, 1), rows: [Float64Array.of(4, 2)] };
    expectNear(sharedLoad(path, 0, 0, 1, Float64Array.of(100, 100)), 0.5, {
      abs: 1e-12,
      because: 'arithmetic',
    });
    expectNear(sharedLoad(path, 0, 0, 1, Float64Array.of(100, 50)), 1, { abs: 1e-12, because: 'arithmetic' });
  });
});

describe('hops', () => {
  it('count clusters: one when the two share one', () => {
    const { truss } = box(4);
    const hops = hopsFrom(truss, ['L2L', 'L3L'], 2);
    expect(hops.get('L3L-L4L')).toBe(1);
    expect(hops.get('L2L-L2R')).toBe(1);
    expect(hops.get('L4L-L5L')).toBe(2);
    expect(hops.get('U5L-U5R')).toBeUndefined();
  });
});

describe('look here next', () => {
  const s = box(4);
  const findings = [bow('L2L-L3L', 0.3, { shape: 'smooth' })];

  it('scores 1 − (1 − a)(1 − l)(1 − b), best first, with the strongest reason first', () => {
    const { next } = work({ ...s, findings });
    expect(next.map((r) => r.rank)).toEqual(next.map((_, k) => k + 1));
    next.forEach((r, k) => {
      expectNear(r.score, 100 * (1 - (1 - r.a) * (1 - r.l) * (1 - r.b)), {
        abs: 1e-9,
        because: 'the formula',
      });
      if (k > 0) expect(r.score).toBeLessThanOrEqual(next[k - 1]!.score);
      expect(r.reasons.length).toBeGreaterThan(0);
    });
  });

  it('leaves out what has a finding or decision, and what was looked at with the finish off', () => {
    const { next } = work({
      ...s,
      findings,
      looks: [look('L3L-L4L', true), look('L2L-L2R', false)],
      decisions: { 'U2L-U3L': 'replace' },
    });
    const ids = next.map((r) => r.id);
    for (const gone of ['L2L-L3L', 'L3L-L4L', 'U2L-U3L']) expect(ids).not.toContain(gone);
    expect(ids).toContain('L2L-L2R');
  });

  it('counts half what was looked at with the finish on', () => {
    const score = (looks: readonly Look[]): number =>
      work({ ...s, findings, looks }).next.find((r) => r.id === 'L2L-L2R')!.score;
    expectNear(score([look('L2L-L2R', false)]), score([]) / 2, { rel: 1e-12, because: 'half' });
  });

  it('names the twin of a hurt member as a reason without score', () => {
    const row = work({ ...s, findings }).next.find((r) => r.id === 'L2R-L3R')!;
    expect(row.reasons).toContainEqual({ kind: 'twin', with: 'L2L-L3L' });
  });

  it('goes along the longeron and into the bay first, the far end of the fuselage last', () => {
    // What a mechanic would expect (methods section 5 lists the same order on another truss). Common practice, no source.
    const t = tandem();
    const { byMember } = work({ ...t, findings: [bow('L6R-L7R', 0.4, { shape: 'smooth' })] }, ['L6R-L7R']);
    const ids = byMember['L6R-L7R']!.map((r) => r.id);
    expect(ids.slice(0, 3)).toEqual(expect.arrayContaining(['L7R-L8R', 'L5R-L6R']));
    const place = (id: string): number => (ids.indexOf(id) < 0 ? ids.length : ids.indexOf(id));
    expect(place('U1L-U1R')).toBeGreaterThan(place('L8R-L9R'));
    expect(ids).not.toContain('L6R-L7R');
  });

  it('starts at the struck cluster when a blow is given, before anything is found', () => {
    const mishap: Mishap = {
      id: 'm',
      kind: 'mishap',
      blow: { cluster: 'L3L', direction: [0, 0, 1] },
      cases: [],
      ...stamp,
    };
    const { next } = work({ ...s, findings: [], mishap });
    expect(next.length).toBeGreaterThan(0);
    expect(next[0]!.reasons[0]).toEqual({ kind: 'blow', cluster: 'L3L' });
    const at = s.truss.members.filter((m) => m.from === 'L3L' || m.to === 'L3L').map((m) => m.id);
    expect(next.map((r) => r.id)).toEqual(expect.arrayContaining(at));
    expect(next.slice(0, 3).some((r) => at.includes(r.id))).toBe(true);
  });

  it('uses the load case chosen: its forces in proportion, and puts no tube beyond its capacity', () => {
    const model: Model = {
      ...s.model,
      loadCases: [
        {
          id: 'tail',
          name: 'tail',
          gravity: [0, 0, 0],
          loads: ['U2L', 'U3L', 'U4L'].map((id) => ({
            cluster: id,
            forceLbf: [0, 0, -300] as [number, number, number],
          })),
        },
      ],
    };
    const mishap: Mishap = { id: 'm', kind: 'mishap', cases: ['tail'], ...stamp };
    const frame = prepareFrame(s.truss, s.support);
    const solved = statics(s.truss, model, s.support, frame);
    if (solved.kind !== 'stands') throw new Error('the box stands');
    const force = new Map(solved.cases[0]!.members.map((m) => [m.id, Math.abs(m.axialLbf)]));
    const use = (id: string): number => {
      const m = s.truss.members.find((one) => one.id === id)!;
      return force.get(id)! / Math.min(capacityLbf(m, 'tension'), capacityLbf(m, 'compression'));
    };
    const byUse = s.truss.members.map((m) => m.id).sort((p, q) => use(q) - use(p));
    const [hurt, light] = [byUse[0]!, byUse[5]!];
    const told = (rows: readonly NextRow[]): readonly NextRow[] =>
      rows.filter((r) => r.reasons.some((x) => x.kind === 'samePath' && x.case === 'tail'));
    const rows = told(work({ ...s, model, findings: [bow(hurt, 0.01, { shape: 'smooth' })], mishap }).next);
    expect(rows.length).toBeGreaterThan(3);
    // The hurt tube is the most used one: every other tube's b is its use over the hurt tube's.
    for (const row of rows) expectNear(row.b, use(row.id) / use(hurt), { rel: 1e-9, because: 'one ratio' });
    // A second, more lightly used hurt tube does not put every other tube at capacity.
    const both = [hurt, light].map((id) => bow(id, 0.01, { shape: 'smooth' }));
    for (const row of told(work({ ...s, model, findings: both, mishap }).next)) expect(row.b).toBeLessThan(1);
  });

  it('says so when a truss moves freely', () => {
    expect(work({ ...s, support: heldAt(new Map()), findings }).kind).toBe('movesFreely');
  });
});

describe('the rank', () => {
  for (let seed = 1; seed <= soak(20); seed++)
    it(`does not care how clusters and members are numbered, seed ${seed}`, () => {
      const s = box(3, { sides: ['crossed'], taper: 0.7 });
      const next = seeded(seed);
      const shuffle = <T>(list: readonly T[]): T[] =>
        list
          .map((v) => [next(), v] as const)
          .sort((p, q) => p[0] - q[0])
          .map(([, v]) => v);
      const truss = { ...s.truss, clusters: shuffle(s.truss.clusters), members: shuffle(s.truss.members) };
      const findings = [bow('L2L-L3L', 0.3, { shape: 'smooth', clock: 12 })];
      const scores = (t: Truss) =>
        new Map(work({ ...s, truss: t, findings }).next.map((r) => [r.id, r.score]));
      const [a, b] = [scores(s.truss), scores(truss)];
      expect([...b.keys()].sort()).toEqual([...a.keys()].sort());
      for (const [id, score] of a)
        expectNear(b.get(id)!, score, { abs: 1e-6, because: 'another order of elimination' });
    });
});
