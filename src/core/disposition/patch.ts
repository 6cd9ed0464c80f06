import { sharesOf } from '../walkRound/findings.ts';
import { joined } from './extent.ts';
import type { Here, Placed } from './findingsHere.ts';
import { type Judgement, no, unsure, yes } from './judgement.ts';
import type { Missing, Reason } from './result.ts';
import { numberOf } from './rules.ts';

/** Below this a difference from a limit is arithmetic. */
const SAME = 1e-9;

type Patched = Extract<Placed['finding'], { damage: 'dent' | 'hole' }>;
const isPatched = (f: Placed['finding']): f is Patched => f.damage === 'dent' || f.damage === 'hole';

/** One share against one limit; a share that is a range may leave it open. */
const against = (rule: string, low: number, high: number, finding: string): Reason => {
  const facts = { finding, share: high, limit: numberOf(rule) };
  if (low > numberOf(rule) + SAME) return no(rule, facts);
  return high > numberOf(rule) + SAME ? unsure(rule, { ...facts, low }) : yes(rule, facts);
};

const rulesOf = {
  dent: { depth: 'patch-dent-depth', around: 'patch-dent-around', length: 'patch-dent-length' },
  hole: { depth: null, around: 'patch-hole-around', length: 'patch-hole-length' },
} as const;

/** The sizes of one dent or hole against 4-94, and those that are missing. */
const sizes = (f: Patched, here: Here): { reasons: readonly Reason[]; missing: readonly Missing[] } => {
  const { odIn, wallIn } = here.member!.section;
  const shares = sharesOf(f, { odIn, wallIn, lengthIn: here.member!.lengthIn });
  const rules = rulesOf[f.damage];
  const held = (of: string, rule: string | null, measured: number | undefined, field: string) => {
    if (rule === null) return { reasons: [], missing: [] };
    const share = shares.find((s) => s.of === of)?.figure;
    if (share) {
      const reason = against(rule, share.low ?? share.value, share.high ?? share.value, f.id);
      const unclear = reason.says === 'cannotSay' ? [{ name: 'widthBy', finding: f.id }] : [];
      return { reasons: [reason], missing: unclear };
    }
    // A width that cannot lie on the tube at all is more than any share of it.
    if (measured !== undefined)
      return { reasons: [no(rule, { finding: f.id, limit: numberOf(rule) })], missing: [] };
    return { reasons: [], missing: [{ name: field, finding: f.id }] };
  };
  const parts = [
    held('depthOfDiameter', rules.depth, f.damage === 'dent' ? f.depthIn : undefined, 'depthIn'),
    held('widthOfCircumference', rules.around, f.widthIn, 'widthIn'),
    held('lengthOfDiameter', rules.length, f.alongIn, 'alongIn'),
  ];
  return { reasons: parts.flatMap((p) => p.reasons), missing: parts.flatMap((p) => p.missing) };
};

/** Dents and holes in runs: neighbours nearer than 1.5 diameters count as one long one. */
const runs = (placed: readonly Placed[], odIn: number): readonly (readonly Placed[])[] => {
  const inOrder = placed.filter((p) => p.extent).toSorted((a, b) => a.extent!.fromIn - b.extent!.fromIn);
  const found: Placed[][] = [];
  for (const p of inOrder) {
    const run = found.at(-1);
    const reach = run && joined(run.map((q) => q.extent!)).toIn;
    if (run && reach !== undefined && p.extent!.fromIn - reach < numberOf('split-sleeve-reach') * odIn)
      run.push(p);
    else found.push([p]);
  }
  return found.filter((run) => run.length > 1);
};

/**
 * Welded patch over a small dent or hole in a bay, every finding on the member taken together.
 * Source: AC 43.13-1B, 4-94a and b; how dents side by side and near a cluster are taken is common practice.
 */
export const patch = (here: Here): Judgement => {
  if (!here.member) return { reasons: [no('not-in-a-bay')], missing: [], conditions: [] };
  const { odIn } = here.member.section;
  const mine = here.placed.filter((p) => isPatched(p.finding));
  const held = mine.map((p) => sizes(p.finding as Patched, here));
  const others = here.placed
    .filter((p) => !isPatched(p.finding) && !here.within.has(p.finding.id))
    .map(({ finding }) => {
      if (finding.damage === 'other') return unsure('damage-in-words', { finding: finding.id });
      const rule = finding.damage === 'crack' ? 'patch-no-crack' : 'patch-of-dents-and-holes';
      return no(rule, { leaves: finding.damage, finding: finding.id });
    });
  const sharp = mine.flatMap(({ finding: f }) => (f.damage === 'dent' && f.corner === 'sharp' ? [f.id] : []));
  const long = runs(mine, odIn).flatMap((run) => {
    const { fromIn, toIn } = joined(run.map((p) => p.extent!));
    const findings = run.map((p) => p.finding.id);
    const length = against('patch-dent-length', (toIn - fromIn) / odIn, (toIn - fromIn) / odIn, findings[0]!);
    return length.says === 'doesNotApply' ? [no('dents-side-by-side', { ...length.facts, findings })] : [];
  });
  const near = (here.room?.sides ?? []).filter(
    ({ clearIn }) => clearIn.value > 0 && clearIn.value < numberOf('split-sleeve-reach') * odIn - SAME,
  );
  return {
    reasons: [
      ...others,
      ...mine.flatMap((p) =>
        p.at === 'cluster' ? [no('not-in-a-bay', { finding: p.finding.id, cluster: p.cluster ?? null })] : [],
      ),
      ...(sharp.length > 0 ? [no('patch-no-crack', { corner: 'sharp', findings: sharp })] : []),
      ...held.flatMap((h) => h.reasons),
      ...long,
      ...near.map((s) => unsure('near-cluster', { cluster: s.cluster, clearIn: s.clearIn.value })),
    ],
    missing: [
      ...held.flatMap((h) => h.missing),
      ...mine.flatMap((p) => (p.at === 'notKnown' ? [{ name: 'place', finding: p.finding.id }] : [])),
    ],
    conditions: [
      'patch-gauge',
      'same-material',
      ...(mine.some((p) => p.finding.damage === 'dent')
        ? ['patch-reform', 'patch-no-crack', 'inspect-before-straightening']
        : []),
      'no-filling',
    ],
  };
};
