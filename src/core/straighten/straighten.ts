import { type Issue, issue } from '../base/issue.ts';
import { weldToe } from '../disposition/weldToe.ts';
import { atRecord } from '../job/corrections.ts';
import type { Finding, RecordOf } from '../job/jobSchema.ts';
import { groupBy } from '../truss/groupBy.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { axisFit } from './axisFit.ts';
import { calibrate } from './calibrate.ts';
import { checksOf, roundnessOf, saysOf } from './checks.ts';
import { fitOfFinding } from './fitOfFinding.ts';
import type { AxisFit, Push, Straighten, StraightenRow } from './result.ts';
import { type Bench, gain, nextPush, setUps } from './setups.ts';
import { type Epoch, type ShopLog, shopLog, stepOf } from './shopLog.ts';
import { stops } from './stops.ts';
import { yieldAfter, yieldOf } from './yieldOf.ts';

type Manual = readonly RecordOf<'manual'>[];
type Progress = readonly RecordOf<'progress'>[];

const bent: ReadonlySet<string> = new Set(['bow', 'kink', 'oval']);

const fitOfEpoch = (epoch: Epoch): AxisFit | null =>
  axisFit(
    epoch.edges.map((e) => e.entry),
    { kind: 'measured', ref: epoch.edges.map((e) => e.record).join(', ') },
    [...new Set(epoch.edges.map((e) => e.record))],
  );

/** Clock positions more than a quarter turn apart push against each other. */
const against = (a: number, b: number): boolean => Math.cos(((a - b) * Math.PI) / 6) < 0;

const pushesOf = (member: Member, log: ShopLog): readonly Push[] => {
  const { odIn, wallIn, elasticPsi } = member.section;
  return log.pushes.map(({ record, entry }, i): Push => {
    const before = log.pushes[i - 1]?.entry.clock;
    const { atIn, spanIn, pressedIn, leftIn, forceLbf, clock } = entry;
    const { says, yieldPsi } = calibrate({ odIn, wallIn }, elasticPsi, entry, record);
    const reversal = before !== undefined && clock !== undefined && against(before, clock);
    return {
      record,
      atIn,
      spanIn,
      pressedIn,
      leftIn,
      ...(forceLbf !== undefined && { forceLbf }),
      reversal,
      yieldPsi,
      says,
    };
  });
};

/** Departure still there when nothing was read since: the last read, less what the pushes since took off. */
const leftAfter = (fit: AxisFit, log: ShopLog, readAt: number): number => {
  return log.pushes.slice(readAt).reduce((left, { entry }) => {
    const sign = fit.clock !== null && entry.clock !== undefined && against(fit.clock, entry.clock) ? -1 : 1;
    return left - (sign * gain(entry.atIn, fit) * 4 * entry.leftIn) / entry.spanIn;
  }, fit.bowIn.value);
};

const deepest = (findings: readonly Finding[]): Extract<Finding, { damage: 'bow' }> | undefined =>
  findings
    .flatMap((f) => (f.damage === 'bow' && f.depthIn !== undefined ? [f] : []))
    .toSorted((a, b) => b.depthIn! - a.depthIn!)[0];

const benchOf = (truss: Truss, member: Member, manual: Manual): Bench => {
  const { odIn, wallIn, elasticPsi } = member.section;
  const toe = (cluster: string): number => weldToe(truss, member, cluster, manual).value;
  const own = [`blocks:${member.id}`, 'blocks'].flatMap((topic) => {
    const record = manual.findLast((m) => m.topic === topic && (m.valueIn ?? 0) > 0);
    return record ? [record.valueIn!] : [];
  })[0];
  return {
    tube: { odIn, wallIn },
    elasticPsi,
    yieldPsi: yieldOf(member, manual),
    clearIn: [toe(member.from), member.lengthIn - toe(member.to)],
    ...(own !== undefined && { spanIn: own }),
  };
};

/** Diameters of an oval as found, to plan the blocks with until the first is read at the bench. */
const asFoundOval = (
  member: Member,
  findings: readonly Finding[],
  log: ShopLog,
  manual: Manual,
  yieldPsi: StraightenRow['yieldPsi'],
): StraightenRow['roundness'] => {
  if (log.pushes.length > 0) return [];
  const read = findings.flatMap((f) => {
    if (f.damage !== 'oval' || f.largestIn === undefined || f.smallestIn === undefined) return [];
    const { place, largestIn, smallestIn } = f;
    const atIn = place && (place.from === member.to ? member.lengthIn - place.atIn : place.atIn);
    return [{ record: f.id, entry: { largestIn, smallestIn, ...(atIn !== undefined && { atIn }) } }];
  });
  return roundnessOf(member, read, manual, yieldPsi);
};

const rowOf = (
  truss: Truss,
  member: Member,
  findings: readonly Finding[],
  manual: Manual,
  progress: Progress,
): StraightenRow => {
  const log = shopLog(progress, member.id);
  const bench = benchOf(truss, member, manual);
  const fits = log.epochs.map(fitOfEpoch);
  const now = log.epochs.at(-1)!;
  const fitNow = fits.at(-1) ?? null;
  const readAt = fits.findLastIndex((f) => f !== null);
  const bow = deepest(findings);
  const described = bow ? fitOfFinding(member, bow) : null;
  const fit = fits[readAt] ?? described;
  const asFound = fits[0] ?? described;
  const pushes = pushesOf(member, log);
  const yieldPsi = yieldAfter(bench.yieldPsi, pushes);
  const stopped = stops(member, findings, manual, log);
  const roundness = roundnessOf(member, now.roundness, manual, yieldPsi);
  const checks = checksOf(member, fitNow, roundness, now, manual);
  const says = saysOf(log, stopped.length > 0, checks);
  const left = fit && leftAfter(fit, log, Math.max(0, readAt));
  const goOn = pushes.length > 0 && fit && left !== null && says !== 'stop' && says !== 'straight';
  const next = goOn ? nextPush(fit, left, pushes.length + 1, { ...bench, yieldPsi }) : null;
  // a chord nobody measured is the length between two guesses
  const guessed = member.guessed !== undefined && asFound === described && bow?.chordIn === undefined;
  const setups = asFound && stopped.length === 0 && !guessed ? setUps(asFound, bench) : [];
  const reversals = pushes.filter((p) => p.reversal).length;
  const edges = log.epochs.some((e) => e.edges.length > 0);
  const cautions = [
    ...(reversals > 0 ? ['reversed'] : []),
    ...(pushes.length > 0 && !fitNow ? ['not-read-since-push'] : []),
    ...(fit && !fit.allRound ? ['one-side-read'] : []),
    ...(log.pushes.some((p) => p.entry.clock === undefined) ? ['ram-side-not-noted'] : []),
    ...(guessed ? ['length-guessed'] : []),
    ...(asFound && !guessed && asFound.bowIn.value > 1 / 64 && setups.length === 0 && stopped.length === 0
      ? ['no-set-up-fits']
      : []),
  ];
  return {
    member: member.id,
    fit,
    ...(!fit && { noFit: edges ? 'too-few-stations' : 'no-readings' }),
    setups,
    ...(next && { next }),
    pushes,
    reversals,
    cautions,
    yieldPsi,
    roundness: roundness.length > 0 ? roundness : asFoundOval(member, findings, log, manual, yieldPsi),
    stops: stopped,
    checks,
    says,
    ...(now.done && { accepted: now.done }),
  };
};

/** Shop records that name no member of the truss, and readings whose two lists differ in length. */
const issuesOf = (truss: Truss, progress: Progress): readonly Issue[] => {
  const steps = new Set(truss.members.map((m) => stepOf(m.id)));
  return progress
    .filter((r) => r.step.startsWith('straighten:'))
    .flatMap((r) => [
      ...(steps.has(r.step)
        ? []
        : [
            issue(
              'unknown-member',
              `${atRecord(r.id)}.step`,
              { id: r.step.slice('straighten:'.length) },
              'name-one-of-the-truss',
            ),
          ]),
      ...(r.straightEdge ?? []).flatMap((e, i) =>
        e.stationsIn.length === e.offsetsIn.length
          ? []
          : [
              issue(
                'lists-differ-in-length',
                `${atRecord(r.id)}.straightEdge[${i}]`,
                { stations: e.stationsIn.length, offsets: e.offsetsIn.length },
                'one-offset-a-station',
              ),
            ],
      ),
    ]);
};

/**
 * Every member with a bow, kink or oval, or decided to be straightened or rounded out: its axis from the straight edge,
 * where to push and how far, what the pushes so far say of the tube, and what must still be read and looked at before
 * it is called straight. Never called straight without the user's own limits.
 *
 * Manual topics read: `limit:bow|ovality…`, `yield[:ID]` (psi), `blocks[:ID]` (block spacing), `toe:MEMBER:CLUSTER`.
 */
export const straighten = (
  truss: Truss,
  coverage: Coverage,
  manual: Manual,
  progress: Progress,
): Straighten => {
  const findings = groupBy(coverage.findings, (f) => f.of);
  const marks = new Map(coverage.marks.map((m) => [m.id, m]));
  const logged = new Set(progress.map((r) => r.step));
  const members = truss.members.filter((m) => {
    const mark = marks.get(m.id);
    const chosen = mark?.choice === 'straighten' || mark?.choice === 'roundOut';
    return chosen || mark?.damage.some((d) => bent.has(d)) || logged.has(stepOf(m.id));
  });
  return {
    members: members.map((m) => rowOf(truss, m, findings.get(m.id) ?? [], manual, progress)),
    issues: issuesOf(truss, progress),
  };
};
