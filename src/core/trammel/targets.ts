import { type Figure, figure } from '../base/figure.ts';
import { distance, type Vec3 } from '../base/vec3.ts';
import { type Finding, holds, type ReadingEnd, type RecordOf } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { groupBy } from '../truss/groupBy.ts';
import type { Cluster, Truss } from '../truss/result.ts';
import { aimAt } from './aim.ts';
import { type Observation, pool } from './observations.ts';
import { compareClusters, type Pair, pairId, pairsOf } from './pair.ts';
import type { Compared, Target } from './result.ts';
import { footOf, spanBetween } from './surface.ts';
import { verdictOf } from './verdict.ts';

type Manual = readonly RecordOf<'manual'>[];

/** Pairs a truss asks for by itself: every side and both diagonals of every face and ring, and every tube. */
const ownPairs = (truss: Truss): [string, string][] => {
  const pairs: [string, string][] = truss.members.map((m) => [m.from, m.to]);
  for (const f of truss.faces)
    f.corners.forEach((a, i) => {
      for (const b of f.corners.slice(i + 1)) pairs.push([a, b]);
    });
  return pairs;
};

const drawn = (model: Model, pair: Pair): Model['distances'][number] | undefined =>
  model.distances.findLast(
    (d) => (d.from === pair.from && d.to === pair.to) || (d.from === pair.to && d.to === pair.from),
  );

const toleranceOf = (model: Model, manual: Manual, pair: Pair): Figure | undefined => {
  const drawing = drawn(model, pair);
  if (drawing?.toleranceIn !== undefined)
    return figure(drawing.toleranceIn, 'in', { kind: 'drawing', ref: drawing.source ?? model.source });
  const own = manual.findLast((m) => m.topic === `tolerance:${pair.kind}` && (m.valueIn ?? 0) > 0);
  return own && figure(own.valueIn!, 'in', { kind: 'manual', ref: own.id });
};

const lengthOf = (model: Model, pair: Pair, a: Cluster, b: Cluster): Figure => {
  const drawing = drawn(model, pair);
  return drawing
    ? figure(drawing.lengthIn, 'in', { kind: 'drawing', ref: drawing.source ?? model.source })
    : a.assumed || b.assumed
      ? guess(distance(a.at, b.at))
      : figure(distance(a.at, b.at), 'in', { kind: 'computed', ref: 'station table' });
};

/**
 * The distance to hold between two station points: the drawing's where it gives one, else from the model's
 * coordinates; its tolerance is the drawing's, else the user's for that kind of distance, else none.
 *
 * @returns undefined when a cluster is unknown or both are the same
 */
export const targetBetween = (
  truss: Truss,
  model: Model,
  a: string,
  b: string,
  manual: Manual = [],
): Target | undefined => {
  const p = truss.clusters.find((c) => c.id === a);
  const q = truss.clusters.find((c) => c.id === b);
  if (!p || !q || p === q) return undefined;
  return targetOf(model, manual, pairsOf(truss)(p, q), p, q);
};

const targetOf = (model: Model, manual: Manual, pair: Pair, a: Cluster, b: Cluster): Target => {
  const toleranceIn = toleranceOf(model, manual, pair);
  return {
    ...pair,
    targetIn: lengthOf(model, pair, a, b),
    ...(toleranceIn ? { toleranceIn } : {}),
    compared: [],
  };
};

/**
 * The same distance between marks on the tubes, as the trammel's points stand: the axis target plus what the marks
 * add at drawing positions.
 *
 * @returns undefined when a mark lacks its tube or clock position
 */
export const surfaceTarget = (
  truss: Truss,
  model: Model,
  ends: readonly [ReadingEnd, ReadingEnd],
): Figure | undefined => {
  const target = targetBetween(truss, model, ends[0].cluster, ends[1].cluster);
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const [p, q] = ends.map((e) => footOf(e, (id) => members.get(id)));
  if (!target || !p || !q || 'missing' in p || 'missing' in q) return undefined;
  const span = spanBetween(p, q, (id) => at.get(id)!).lengthIn;
  const axis = distance(at.get(p.cluster)!, at.get(q.cluster)!);
  const { value, basis, assumed } = target.targetIn;
  return figure(value + span - axis, 'in', basis, [...assumed, 'marks-at-drawing-positions']);
};

/** A distance to a cluster whose place is a guess is a guess: nothing may be set, spread or judged by it. */
const guess = (lengthIn: number): Figure =>
  figure(lengthIn, 'in', { kind: 'assumed', ref: 'cluster place assumed' }, ['cluster-place-guessed']);

const compare = (target: Target, seen: readonly Observation[], manual: Manual): Compared[] =>
  holds.flatMap((hold): Compared[] => {
    const repeats = seen.filter((o) => o.hold === hold);
    if (repeats.length === 0) return [];
    const p = pool(repeats);
    const assumed = [
      ...(p.stdAssumed ? ['std-1/32'] : []),
      ...(p.marked ? ['marks-at-drawing-positions'] : []),
    ];
    const basis = { kind: 'measured', ref: p.readings.join(', ') } as const;
    const aimIn = aimAt(target, hold, manual);
    const differenceIn = p.axisIn - aimIn.value;
    const stdIn = Math.hypot(p.stdIn, target.targetIn.std ?? 0);
    return [
      {
        hold,
        readings: p.readings,
        foundIn: figure(p.axisIn, 'in', basis, assumed, { std: p.stdIn }),
        ...(aimIn === target.targetIn ? {} : { aimIn }),
        differenceIn: figure(differenceIn, 'in', basis, assumed, { std: stdIn }),
        verdict: verdictOf(
          differenceIn,
          stdIn,
          target.targetIn.basis.kind === 'assumed' ? undefined : target.toleranceIn?.value,
        ),
        ...(p.scatterIn === undefined ? {} : { scatterIn: p.scatterIn }),
      },
    ];
  });

/** The mirror pair of a pair, when it has one that is not itself. */
const mirrorOf = (truss: Truss): ((pair: Pair) => [string, string] | undefined) => {
  const twin = new Map<string, string>();
  for (const p of truss.pairs)
    if (p.kind === 'cluster') {
      twin.set(p.left, p.right);
      twin.set(p.right, p.left);
    }
  return ({ from, to }) => {
    const a = twin.get(from) ?? from;
    const b = twin.get(to) ?? to;
    const itself = (a === from && b === to) || (a === to && b === from);
    return itself ? undefined : [a, b];
  };
};

/**
 * Every distance to hold, with what was measured at each hold: all sides and both diagonals of every bay face and ring,
 * every tube, and any other pair that was read, planned or that the drawing gives. Sorted by station, then id.
 * A pair that touches a cluster whose place is guessed takes the measured distance of its opposite-hand pair, if neither
 * of that pair's clusters has a finding on it; and says so.
 */
export const targets = (
  truss: Truss,
  model: Model,
  observed: readonly Observation[],
  findings: readonly Finding[],
  manual: Manual,
  planned: readonly (readonly [string, string])[] = [],
): readonly Target[] => {
  const observations = observed.filter((o) => o.plane === undefined);
  const clusters = new Map(truss.clusters.map((c) => [c.id, c]));
  const pairOf = pairsOf(truss);
  const seen = groupBy(observations, (o) => pairId(...o.clusters));
  const wanted: readonly (readonly [string, string])[] = [
    ...ownPairs(truss),
    ...model.distances.map((d): [string, string] => [d.from, d.to]),
    ...observations.map((o): [string, string] => [o.clusters[0].id, o.clusters[1].id]),
    ...planned,
  ];
  const made = new Map<string, Target>();
  for (const [a, b] of wanted) {
    const p = clusters.get(a);
    const q = clusters.get(b);
    if (!p || !q || p === q || made.has(pairId(p, q))) continue;
    made.set(pairId(p, q), targetOf(model, manual, pairOf(p, q), p, q));
  }
  const mirror = mirrorOf(truss);
  const hurt = new Set(findings.map((f) => f.of));
  const fromMirror = (t: Target): Target => {
    if (t.targetIn.basis.kind !== 'assumed') return t;
    const twin = mirror(t);
    const ends = twin?.map((id) => clusters.get(id)!) as [Cluster, Cluster] | undefined;
    const repeats = ends && twin?.every((id) => !hurt.has(id)) ? seen.get(pairId(...ends)) : undefined;
    const first = repeats && holds.map((h) => repeats.filter((o) => o.hold === h)).find((o) => o.length > 0);
    if (!first) return t;
    const p = pool(first);
    const basis = { kind: 'measured', ref: p.readings.join(', ') } as const;
    return {
      ...t,
      targetIn: figure(p.axisIn, 'in', basis, ['opposite-hand-equal'], { std: p.stdIn }),
    };
  };
  const order = (a: Target, b: Target): number =>
    compareClusters(clusters.get(a.from)!, clusters.get(b.from)!) ||
    compareClusters(clusters.get(a.to)!, clusters.get(b.to)!);
  return [...made.values()]
    .map(fromMirror)
    .map((t) => ({ ...t, compared: compare(t, seen.get(t.id) ?? [], manual) }))
    .sort(order);
};

/** Positions of a truss's clusters by id. */
export const placesOf = (truss: Truss): ReadonlyMap<string, Vec3> =>
  new Map(truss.clusters.map((c) => [c.id, c.at]));
