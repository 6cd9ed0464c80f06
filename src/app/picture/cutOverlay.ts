import type { Assessment } from '../../core/assessment.ts';
import { length } from '../../core/base/vec3.ts';
import type { CutCandidate, WhereToSaw } from '../../core/relief/result.ts';
import { lengthUnit, showLength } from '../../present/show.ts';
import type { SceneCut } from '../scene/sceneProps.ts';
import type { Overlay } from '../state/overlay.ts';
import { type Given, type Laid, moveNumbers, says, shapeOf } from './laid.ts';

const sameCuts = (a: readonly string[], b: readonly string[]): boolean => a.join(' ') === b.join(' ');

/** The candidate that is to be shown, when the list still has it. */
const shownCut = ({ relief }: Assessment, overlay: Overlay): CutCandidate | undefined => {
  const target = relief.targets.find(({ member }) => member === overlay.cut?.target);
  return [...(target?.candidates ?? []), ...(target?.soundTubes ?? [])].find(({ cuts }) =>
    sameCuts(cuts, overlay.cut?.cuts ?? []),
  );
};

const kerf =
  (all: Assessment) =>
  (place: WhereToSaw): SceneCut => {
    const long = all.truss.members.find(({ id }) => id === place.member)?.lengthIn ?? 0;
    return {
      member: place.member,
      fromIn: place.fromIn ?? long / 2,
      toIn: place.toIn ?? long / 2,
      label: place.fromIn === null ? `${place.member}: no place keeps clear` : `saw ${place.member}`,
    };
  };

export const cut = ({ all, overlay, units }: Given): Laid => {
  if (!overlay.cut)
    return says('Before and after a cut', 'Press "Show in the picture" at a cut in the list.');
  const found = shownCut(all, overlay);
  const name = `${overlay.cut.cuts.join(', then ')} cut`;
  if (!found) return says(name, 'This cut is not in the list any more.');
  const cutMarks = [found.whereToSaw, ...(found.thenSaw ? [found.thenSaw] : [])].map(kerf(all));
  if (found.verdict === 'refused')
    return {
      cutMarks,
      strip: {
        title: name,
        unit: '',
        notes: ['Refused: without it the truss would move freely, so there is no shape after it.'],
      },
    };
  if (!found.shape)
    return {
      cutMarks,
      strip: { title: name, unit: '', notes: ['The shape after the cut is being worked out.'] },
    };
  return {
    cutMarks,
    shape: shapeOf(all, `After ${name}`, found.shape),
    ...(overlay.numbers ? { numbers: moveNumbers(found.shape, units, 16) } : {}),
    strip: {
      title: `Before and after: ${name}`,
      unit: lengthUnit(units),
      notes: [
        `Hairline: before. Solid: after, springing open and own weight, shortening-only reading of the bows. Most: ${found.moves
          .map(({ id, moveIn }) => `${id} ${showLength(length(moveIn), units === 'mm' ? 'mm' : 'inDecimal')}`)
          .join(', ')}.`,
      ],
    },
  };
};
