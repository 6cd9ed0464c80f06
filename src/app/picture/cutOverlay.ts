import type { Assessment } from '../../core/assessment.ts';
import { length } from '../../core/base/vec3.ts';
import type { CutCandidate, WhereToSaw } from '../../core/relief/result.ts';
import { lengthUnit, showLength } from '../../present/show.ts';
import type { SceneCut } from '../scene/sceneProps.ts';
import type { Overlay } from '../state/overlay.ts';
import { cutInPictureText } from '../text/picture.ts';
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
      label:
        place.fromIn === null ? cutInPictureText.noPlace(place.member) : cutInPictureText.saw(place.member),
    };
  };

export const cut = ({ all, overlay, units }: Given): Laid => {
  if (!overlay.cut) return says(cutInPictureText.title, cutInPictureText.press);
  const found = shownCut(all, overlay);
  const name = cutInPictureText.name(overlay.cut.cuts);
  if (!found) return says(name, cutInPictureText.gone);
  const cutMarks = [found.whereToSaw, ...(found.thenSaw ? [found.thenSaw] : [])].map(kerf(all));
  if (found.verdict === 'refused')
    return {
      cutMarks,
      strip: {
        title: name,
        unit: '',
        notes: [cutInPictureText.refused],
      },
    };
  if (!found.shape)
    return {
      cutMarks,
      strip: { title: name, unit: '', notes: [cutInPictureText.awaited] },
    };
  return {
    cutMarks,
    shape: shapeOf(all, cutInPictureText.after(name), found.shape),
    ...(overlay.numbers ? { numbers: moveNumbers(found.shape, units, 16) } : {}),
    strip: {
      title: cutInPictureText.both(name),
      unit: lengthUnit(units),
      notes: [
        cutInPictureText.note(
          found.moves.map(
            ({ id, moveIn }) => `${id} ${showLength(length(moveIn), units === 'mm' ? 'mm' : 'inDecimal')}`,
          ),
        ),
      ],
    },
  };
};
