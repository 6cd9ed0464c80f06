import type { Mishap } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import type { LockedIn } from '../lockedIn/result.ts';
import type { Frame } from '../statics/frame.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Statics } from '../statics/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { type Evidence, type Told, together } from './evidence.ts';
import { gather } from './gather.ts';
import type { LoadPath, NextRow } from './result.ts';

/** Rows below one in a hundred, and those of which no single reason is worth reading, are left out. */
const LEAST_SCORE = 0.01;
/** Around one member the nearest in rank are enough. */
const MOST_AROUND = 24;
/** Starting value: a member looked at with the finish on counts half. Common practice, no source. */
const LOOKED_AT = 0.5;

/**
 * Where to look next: for the whole job, and around each member asked for.
 *
 * Whole job: members with a finding or a decision are left out, so is what was looked at with the finish off; looked at
 * with the finish on counts half. Around one member nothing is left out or discounted.
 *
 * Source: methods section 5.
 */
export const loadPath = (
  truss: Truss,
  model: Model,
  frame: Frame | MovesFreely,
  statics: Statics,
  coverage: Coverage,
  locked: LockedIn,
  mishap: Mishap | undefined,
  targets: readonly string[],
): LoadPath => {
  if (!isFrame(frame)) return { kind: 'movesFreely', next: [], byMember: {}, noOtherPath: [], issues: [] };
  const marks = new Map(coverage.marks.map((m) => [m.id, m]));
  const isHurt = (id: string): boolean => {
    const mark = marks.get(id);
    return mark !== undefined && (mark.findings.length > 0 || mark.choice !== undefined);
  };
  const hurt = truss.members.map((m) => m.id).filter(isHurt);
  const hurtClusters = truss.clusters.map((c) => c.id).filter(isHurt);
  const asked = [...new Set([...hurt, ...targets])];
  const evidence = gather(truss, model, frame, statics, mishap, asked, hurtClusters);
  const lockedOf = lockedEvidence(truss, locked, evidence.capacity);
  const twinOf = new Map(
    truss.pairs
      .filter((p) => p.kind === 'member')
      .flatMap((p) => [
        [p.left, p.right],
        [p.right, p.left],
      ]),
  );
  const row = (id: string, found: readonly Evidence[], from: ReadonlySet<string>, weight: number): Draft => {
    const l = lockedOf.get(id);
    const twin = twinOf.get(id);
    const told: Told[] = l ? [l.told] : [];
    if (twin !== undefined && from.has(twin))
      told.push({ strength: 0, reason: { kind: 'twin', with: twin } });
    const all = together(found, l?.share ?? 0, told);
    return { id, ...all, score: all.score * weight };
  };
  const all = new Set(hurt);
  const next = truss.members.flatMap(({ id }) => {
    const mark = marks.get(id);
    if (all.has(id) || (mark?.state === 'lookedAt' && mark.finishRemoved)) return [];
    const found = evidence.on(id, [...hurt, ...hurtClusters], true);
    return [row(id, found, all, mark?.state === 'lookedAt' ? LOOKED_AT : 1)];
  });
  const around = (target: string): NextRow[] => {
    const from = new Set([target]);
    return ranked(
      truss.members.flatMap(({ id }) =>
        id === target ? [] : [row(id, evidence.on(id, [target], false), from, 1)],
      ),
    ).slice(0, MOST_AROUND);
  };
  return {
    kind: 'worked',
    next: ranked(next),
    byMember: Object.fromEntries(targets.map((id) => [id, around(id)])),
    noOtherPath: targets.filter((id) => evidence.noOtherPath.has(id)),
    issues: evidence.issues,
  };
};

type Draft = Omit<NextRow, 'rank'>;

/** Best first; equal ones by energy share, then in the truss's order, which they come in. */
const ranked = (rows: readonly Draft[]): NextRow[] =>
  rows
    .filter((r) => r.score >= LEAST_SCORE && r.reasons.length > 0)
    .toSorted((p, q) => q.score - p.score || (q.w ?? 0) - (p.w ?? 0))
    .map((r, k) => ({ ...r, score: 100 * r.score, rank: k + 1 }));

/** l = min(1, |N|/cap) from the locked-in stage, with the bends that put it there. */
const lockedEvidence = (
  truss: Truss,
  locked: LockedIn,
  capacity: ReadonlyMap<string, number>,
): ReadonlyMap<string, { share: number; told: Told }> => {
  const area = new Map(truss.members.map((m) => [m.id, m.section.areaIn2]));
  return new Map(
    locked.members.flatMap((m) => {
      const share = Math.min(1, Math.abs(m.axialLbf.value) / capacity.get(m.id)!);
      if (share < LEAST_SCORE) return [];
      const stressPsi = Math.abs(m.axialLbf.value) / area.get(m.id)!;
      const reason = { kind: 'lockedIn', from: m.because, stressPsi, share } as const;
      return [[m.id, { share, told: { strength: share, reason } }] as const];
    }),
  );
};
