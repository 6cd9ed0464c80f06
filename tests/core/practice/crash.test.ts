import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../src/core/assessment.ts';
import { jobFromModel } from '../../../src/core/job/jobFromModel.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { merge } from '../../../src/core/job/merge.ts';
import { readJob } from '../../../src/core/job/read.ts';
import { standing } from '../../../src/core/job/standing.ts';
import { writeJob } from '../../../src/core/job/write.ts';
import { crash, exerciseFrom } from '../../../src/core/practice/crash.ts';
import type { Exercise, Level } from '../../../src/core/practice/exercise.ts';
import { exerciseJob, exerciseOf, truthJob } from '../../../src/core/practice/exerciseFile.ts';
import { fullMarks, looksAllowed, type Round, scoreRound } from '../../../src/core/practice/hiddenDamage.ts';
import { type LookWay, reveal, waysThatShow } from '../../../src/core/practice/look.ts';
import { expandTruss } from '../../../src/core/truss/truss.ts';
import { checkAgainstTruss } from '../../../src/core/walkRound/checkAgainstTruss.ts';
import { expectNear } from '../../kit/near.ts';
import { soak } from '../../kit/soak.ts';
import { assessed, called, judgeOn, lookRecord, madeOf, modelNames, modelOf, withRecords } from './kit.ts';

const LONG = 3_600_000;

const level = (k: number): Level => ([1, 2, 3] as const)[k % 3]!;

/** Chord of a half-sine bow of depth e and arc length L, by its own sum of short pieces. */
const chordOfBow = (depthIn: number, lengthIn: number): number => {
  const arc = (chord: number): number => {
    let sum = 0;
    for (let k = 0; k < 400; k++) {
      const dx = chord / 400;
      const dy = depthIn * (Math.sin((Math.PI * (k + 1)) / 400) - Math.sin((Math.PI * k) / 400));
      sum += Math.hypot(dx, dy);
    }
    return sum;
  };
  let [low, high] = [lengthIn * 0.9, lengthIn];
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2;
    if (arc(mid) < lengthIn) low = mid;
    else high = mid;
  }
  return low;
};

interface Judged {
  readonly mine: Assessment;
  readonly truth: Assessment;
}
type Judge = (job: Job, exercise: Exercise) => Judged;

/** Both jobs of a round through `assess`; the truth of an exercise is the same for every player. */
const judgeOf = (): Judge => {
  const judge = judgeOn();
  let latest: { readonly of: Exercise; readonly truth: Assessment } | undefined;
  return (job, exercise) => {
    if (latest?.of !== exercise) latest = { of: exercise, truth: judge(truthJob(job, exercise)) };
    return { mine: judge(job), truth: latest.truth };
  };
};

/** A player who knows the truth: eye first, then the plainest way that shows it, then the call as read. */
const perfect = (exercise: Exercise, model: ReturnType<typeof modelOf>, judged: Judge): Round => {
  const truss = expandTruss(model);
  const job = exerciseJob(model, exercise, 'Round');
  const records = [];
  let n = 0;
  const looked = new Set<string>();
  const look = (way: LookWay) => {
    looked.add(JSON.stringify(way));
    records.push(lookRecord(way, n++));
    return reveal(exercise, truss, way, 0);
  };
  for (const id of new Set(exercise.truth.findings.map((f) => f.of))) {
    let wanted = exercise.truth.findings.filter((f) => f.of === id);
    const eye = { of: id, method: 'eye', finishRemoved: false } as const;
    const tries: LookWay[] = [eye];
    for (const way of tries) {
      if (looked.has(JSON.stringify(way))) continue;
      for (const seen of look(way))
        if (seen.kind === 'damage' && wanted.some((f) => f.id === seen.finding.id)) {
          records.push(called(seen.finding, n++));
          wanted = wanted.filter((f) => f.id !== seen.finding.id);
        }
      const next = wanted[0];
      if (next && way === tries.at(-1)) {
        const best = waysThatShow(exercise.truth, truss, next)[0];
        if (best) tries.push({ of: id, ...best });
      }
    }
  }
  const { mine, truth } = judged(withRecords(job, records), exercise);
  return scoreRound(exercise, truss, records, mine, truth);
};

/** A player who strips and penetrant-tests whatever comes first, and calls what he likes. */
const careless = (exercise: Exercise, model: ReturnType<typeof modelOf>, judged: Judge): Round => {
  const truss = expandTruss(model);
  const job = exerciseJob(model, exercise, 'Round');
  const hurt = new Set(exercise.truth.findings.map((f) => f.of));
  const sound = truss.members.filter((m) => !hurt.has(m.id));
  const looks = truss.members
    .slice(0, 12)
    .map((m, k) => lookRecord({ of: m.id, method: 'penetrant', finishRemoved: k % 2 === 0 }, k));
  const call = called({ ...exercise.truth.findings[0]!, of: sound[0]!.id, place: undefined } as never, 90);
  const records = [...looks, call];
  const { mine, truth } = judged(withRecords(job, records), exercise);
  return scoreRound(exercise, truss, records, mine, truth);
};

const runs = soak(1000);

describe('seeded crashes', () => {
  const models = modelNames.map((name) => [name, modelOf(name)] as const);

  it(
    `seeds 0…${runs - 1}: each gives findings on the truss, every one shown by some way of looking`,
    () => {
      for (let k = 0; k < runs; k++) {
        const [name, model] = models[k % models.length]!;
        const exercise = madeOf(model, `${k}`, level(k));
        const truss = expandTruss(model);
        const { findings, moves } = exercise.truth;
        const where = `${name} seed ${k}`;
        expect(findings.length, where).toBeGreaterThan(1);
        expect(checkAgainstTruss({ findings }, truss), where).toEqual([]);
        for (const f of findings)
          expect(waysThatShow(exercise.truth, truss, f).length, `${where} ${f.id}`).toBeGreaterThan(0);
        expect(looksAllowed(exercise.truth), where).toBeGreaterThanOrEqual(3 * findings.length);
        // a crash moves clusters by fractions of an inch to a few inches, never by a bay
        for (const m of moves) expect(Math.hypot(...m.moveIn), `${where} ${m.id}`).toBeLessThan(12);
        expect(madeOf(model, `${k}`, level(k)), where).toEqual(exercise);
      }
    },
    LONG,
  );

  it(
    `seeds 0…${runs - 1}: the truth stands in assess as it was made`,
    () => {
      const judges = models.map(() => judgeOn());
      for (let k = 0; k < runs; k++) {
        const [name, model] = models[k % models.length]!;
        const exercise = madeOf(model, `${k}`, level(k));
        const job = exerciseJob(model, exercise, 'Round');
        const truth = judges[k % models.length]!(truthJob(job, exercise));
        const where = `${name} seed ${k}`;
        expect(truth.coverage.findings.map((f) => f.id).toSorted(), where).toEqual(
          exercise.truth.findings.map((f) => f.id),
        );
        expect(truth.coverage.issues, where).toEqual([]);
        expect(truth.lockedIn.issues, where).toEqual([]);
        const bends = exercise.truth.findings.filter((f) => f.damage === 'bow' || f.damage === 'kink');
        expect(truth.lockedIn.sources.toSorted(), where).toEqual(
          [...new Set(bends.map((f) => f.of))].toSorted(),
        );
        expect(
          truth.disposition.rows.map((r) => r.id),
          where,
        ).toEqual(expect.arrayContaining(exercise.truth.findings.map((f) => f.of)));
      }
    },
    LONG,
  );

  it(
    `seeds 0…${runs - 1}: a player who sees everything has full marks, a careless one has not`,
    () => {
      const judges = models.map(judgeOf);
      for (let k = 0; k < runs; k++) {
        const [name, model] = models[k % models.length]!;
        const judged = judges[k % models.length]!;
        const exercise = madeOf(model, `${k}`, level(k));
        const best = perfect(exercise, model, judged);
        expect(best.marked.misses, `${name} seed ${k}`).toEqual([]);
        expect(fullMarks(best), `${name} seed ${k} ${JSON.stringify(best.shares)}`).toBe(true);
        const worst = careless(exercise, model, judged);
        expect(fullMarks(worst), `${name} seed ${k}`).toBe(false);
        expect(worst.marked.falseCalls.length, `${name} seed ${k}`).toBe(1);
        expect(worst.wasted.length, `${name} seed ${k}`).toBeGreaterThan(0);
      }
    },
    LONG,
  );

  it('seeds 0…5: what the players are marked by is what the whole assess gives', () => {
    for (let k = 0; k < 6; k++) {
      const model = models[k % models.length]![1];
      const exercise = madeOf(model, `${k}`, level(k));
      const job = truthJob(exerciseJob(model, exercise, 'Round'), exercise);
      const [quick, whole] = [judgeOn()(job), assessed(job)];
      for (const part of ['coverage', 'disposition', 'loadPath'] as const)
        expect(quick[part], `seed ${k} ${part}`).toEqual(whole[part]);
    }
  });

  // geometry of the arc, summed in short pieces; a box held by nothing else than its tubes follows a short longeron
  it('moves clusters nearer by what a bow takes up, where nothing else holds them apart', () => {
    const base = modelOf('practice-truss');
    const model = {
      ...base,
      joints: 'pinned' as const,
      bracing: base.bracing.map((b) => ({ ...b, left: b.left === 'crossed' ? ('rising' as const) : b.left })),
    };
    const bow = {
      kind: 'finding',
      id: 'x',
      by: 't',
      at: '2024-01-01T00:00:00Z',
      device: 't',
      of: 'L2R-L3R',
      damage: 'bow',
      shape: 'smooth',
      depthIn: 0.75,
      clock: 3,
      origin: 'thisAccident',
    } as never;
    const made = exerciseFrom(
      model,
      [bow],
      { seed: 'a', level: 1 },
      { cluster: 'L3R', direction: [0, -1, 0] },
    );
    if (made.kind !== 'made') return expect.fail(made.kind);
    const truss = expandTruss(model);
    const move = new Map(made.exercise.truth.moves.map((m) => [m.id, m.moveIn]));
    const at = (id: string) =>
      truss.clusters.find((c) => c.id === id)!.at.map((v, d) => v + (move.get(id)?.[d] ?? 0));
    const [a, b] = [at('L2R'), at('L3R')];
    const now = Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
    expectNear(24 - now, 24 - chordOfBow(0.75, 24), {
      abs: 0.004,
      because: 'moves under 1/64 in are left out, small moves',
    });
  });

  it('gives the same for a seed and another for another seed or level', () => {
    const model = modelOf('high-wing-tandem');
    expect(madeOf(model, 'a', 2)).toEqual(madeOf(model, 'a', 2));
    expect(madeOf(model, 'a', 2).truth).not.toEqual(madeOf(model, 'b', 2).truth);
    expect(madeOf(model, 'a', 2).truth).not.toEqual(madeOf(model, 'a', 3).truth);
  });

  it('strikes where, which way and as hard as an instructor says', () => {
    const model = modelOf('practice-truss');
    const ask = { seed: 'a', level: 1, cluster: 'L2R', direction: [0, -2, 0] } as const;
    const light = crash(model, { ...ask, energyInLbf: 200 });
    const heavy = crash(model, { ...ask, energyInLbf: 20_000 });
    if (light.kind !== 'made' || heavy.kind !== 'made') return expect.fail('not made');
    expect(light.exercise.truth.blow).toMatchObject({
      cluster: 'L2R',
      direction: [0, -1, 0],
      energyInLbf: 200,
    });
    expect(heavy.exercise.truth.findings.length).toBeGreaterThan(light.exercise.truth.findings.length);
    // energy of a spring goes with the square of its force
    expectNear(heavy.exercise.truth.blow!.forceLbf / light.exercise.truth.blow!.forceLbf, 10, {
      rel: 0.01,
      because: 'forces rounded to 1 lbf',
    });
  });
});

describe('an exercise file', () => {
  const model = modelOf('practice-truss');
  const exercise = madeOf(model, 'share', 3);
  const job = exerciseJob(model, exercise, 'For the class');

  it('is a practice job that hides the truth from a glance and gives it back whole', () => {
    const text = writeJob(job);
    for (const f of exercise.truth.findings) expect(text).not.toContain(`"${f.of}"`);
    const read = readJob(text);
    if (!read.ok) return expect.fail('not read');
    expect(read.value.purpose).toBe('practice');
    expect(exerciseOf(read.value)).toEqual(exercise);
  });

  it('is never taken for a job: no merge, and no exercise in one', () => {
    expect(merge(jobFromModel(model, 'A job'), job).ok).toBe(false);
    expect(exerciseOf({ ...job, purpose: 'job' })).toBeNull();
  });

  it('says null for garbage', () => {
    for (const garbage of ['', '!!', 'AAAA', 'e30=', 7, null])
      expect(exerciseOf({ ...job, exercise: garbage } as never)).toBeNull();
  });

  it('is made of what was found in a job, without who found it', () => {
    const found = standing(truthJob(job, exercise).records).findings.map((f) => ({
      ...f,
      by: 'Ada',
      note: 'hers',
    }));
    const made = exerciseFrom(model, found as never, { seed: 's', level: 1 }, exercise.truth.blow);
    if (made.kind !== 'made') return expect.fail(made.kind);
    expect(JSON.stringify(made.exercise)).not.toMatch(/Ada|hers/);
    expect(made.exercise.truth.findings.map((f) => [f.of, f.damage])).toEqual(
      exercise.truth.findings.map((f) => [f.of, f.damage]),
    );
    expect(made.exercise.truth.moves).toEqual(exercise.truth.moves);
  });
});
