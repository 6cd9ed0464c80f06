import { leftNow, type TargetView } from './effect.ts';
import type { Ranked } from './order.ts';
import type { Shop } from './shop.ts';
import type { TargetNote } from './why.ts';

/** Below this a length error in the target only changes the truss's shape. */
const NO_CLAMP = 1e-9;
/** Full end slopes that leave more than this share of the target's own moment: bending is local. */
const LOCAL = 0.85;

/** What is said once for a target. */
export const notesOf = (shop: Shop, view: TargetView, rows: readonly Ranked[]): TargetNote[] => {
  const singles = rows.filter((r) => r.candidate.cuts.length === 1);
  const notes: TargetNote[] = [];
  if (view.rN < NO_CLAMP) notes.push('length-error-only-changes-shape');
  if (singles.every((r) => r.candidate.verdict === 'needsFixture' || r.candidate.verdict === 'refused'))
    notes.push('every-cut-needs-a-fixture');
  if (!rows.some((r) => r.candidate.helps)) notes.push('no-cut-helps');
  const before = leftNow(shop.now, view.target).momentInLbf.high;
  const others = singles.filter((r) => r.candidate.tier !== 'target' && r.candidate.verdict !== 'refused');
  const isBent = shop.now.sources.some((s) => s.member === view.target);
  if (isBent && before > 0 && others.every((r) => r.candidate.left.momentInLbf.high >= LOCAL * before))
    notes.push('bending-is-local-cut-at-the-tube');
  return notes;
};
