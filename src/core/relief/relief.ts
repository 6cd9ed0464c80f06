import type { Model } from '../job/modelSchema.ts';
import type { LockedIn } from '../lockedIn/result.ts';
import type { Frame } from '../statics/frame.ts';
import type { HeldNow } from '../statics/held.ts';
import { isFrame, type MovesFreely } from '../statics/prepareFrame.ts';
import type { Statics } from '../statics/result.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import { reliefOf } from './reliefOf.ts';
import type { Relief } from './result.ts';
import { shop } from './shop.ts';

/**
 * For each target: what can be let go without a saw, and which cut takes out what is locked in, best first.
 *
 * Not ranked, only worked out, while nobody has said how the truss is held: on supports of our own choosing a just-rigid
 * truss relieves itself by folding.
 * @param shown  targets whose cuts are to be drawn: theirs carry the moves of every cluster
 * Source: methods section 4.
 */
export const relief = (
  truss: Truss,
  model: Model,
  support: HeldNow,
  frame: Frame | MovesFreely,
  coverage: Coverage,
  locked: LockedIn,
  solved: Statics,
  targets: readonly string[],
  shown: readonly string[] = [],
): Relief => {
  if (!isFrame(frame)) return { kind: 'movesFreely', targets: [], issues: [] };
  const asked = targets.filter((id) => frame.memberIndex.has(id));
  const kind = support.ranked ? 'ranked' : 'notRanked';
  if (asked.length === 0) return { kind, targets: [], issues: [] };
  const all = shop(truss, frame, coverage, locked, solved);
  if (!all) return { kind: 'movesFreely', targets: [], issues: [] };
  return {
    kind,
    targets: asked.map((id) => reliefOf(all, model, id, support.ranked, shown.includes(id))),
    issues: [],
  };
};
