import type { Hold } from '../../core/job/jobSchema.ts';
import type { Target, Trammel } from '../../core/trammel/result.ts';
import { showDifference, showLength, type Units } from '../../present/show.ts';
import { holdWords } from '../../present/words/record.ts';
import type { SceneLine, SceneShape } from '../scene/sceneProps.ts';
import type { AtOnce } from '../state/answer.ts';
import { shapeText } from '../text/trammelShape.ts';

/** Targets that have to do with what is selected: those of its bay and faces, else every measured one. */
export const targetsFor = (now: AtOnce, trammel: Trammel, selected: readonly string[]): readonly Target[] => {
  const last = selected.at(-1);
  const member = last === undefined ? undefined : now.members.get(last);
  const cluster = last === undefined ? undefined : now.clusters.get(last);
  if (member) {
    const bays = new Set([member.bay, member.station].filter((label) => label !== undefined));
    return trammel.targets.filter((target) => bays.has(target.bay));
  }
  if (cluster) return trammel.targets.filter(({ from, to }) => from === cluster.id || to === cluster.id);
  return trammel.targets.filter(({ compared }) => compared.length > 0);
};

const sharesFace = (now: AtOnce, target: Target, id: string | undefined): boolean =>
  now.truss.faces.some(
    (face) =>
      (face.members.includes(id ?? '') || face.corners.includes(id ?? '')) && target.faces.includes(face.id),
  );

/** A reading that says more than its own uncertainty: outside its limit, or with no limit off by over two deviations. */
const shows = ({ compared }: Target): boolean => {
  const latest = compared.at(-1);
  if (!latest) return false;
  const { value, std = 0 } = latest.differenceIn;
  return latest.verdict === 'outside' || (latest.verdict === 'noLimit' && Math.abs(value) > 2 * std);
};

/**
 * The line in hand, strong; those that readings show off, and those in a face of what is selected, thin.
 * The number says target or difference.
 */
export const trammelLines = (
  now: AtOnce,
  trammel: Trammel,
  selected: readonly string[],
  lit: readonly string[],
  units: Units,
): readonly SceneLine[] => {
  const inHand = trammel.targets.find(({ from, to }) => from === lit[0] && to === lit[1]);
  const round = targetsFor(now, trammel, selected).filter(
    (target) => target !== inHand && (sharesFace(now, target, selected.at(-1)) || shows(target)),
  );
  return [...(inHand ? [inHand] : []), ...round].flatMap((target) => {
    const [from, to] = [now.clusters.get(target.from), now.clusters.get(target.to)];
    const latest = target.compared.at(-1);
    if (!from || !to) return [];
    return [
      {
        id: target.id,
        from: from.at,
        to: to.at,
        label:
          latest && target !== inHand
            ? showDifference(latest.differenceIn.value, units, false)
            : showLength(target.targetIn.value, units),
        strong: target === inHand,
      },
    ];
  });
};

/** The shape that the readings of a hold fix, for the picture; clusters they leave open stay as drawn. */
export const foundShape = (trammel: Trammel, hold: Hold | null, factor: number): SceneShape | undefined => {
  const adjustment = hold === null ? undefined : trammel.byHold[hold];
  if (!adjustment) return undefined;
  const fixed = adjustment.clusters.filter(({ fixedBy }) => fixedBy === 'all');
  return {
    name: shapeText.measured(holdWords[adjustment.hold]),
    moves: new Map(fixed.map(({ id, moveIn }) => [id, moveIn])),
    factor,
  };
};
