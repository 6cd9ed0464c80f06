import type { Assessment } from '../../core/assessment.ts';
import { spliceFor } from '../../core/splice/splice.ts';
import { spliceMarks } from '../../present/draw/spliceMarks.ts';
import { showLength, type Units } from '../../present/show.ts';
import { decidedDesigns } from '../../present/tables/splices.ts';
import type { SceneCut } from '../scene/sceneProps.ts';
import type { AtOnce } from '../state/answer.ts';
import type { Shop } from '../state/shop.ts';
import { spliceMarkText } from '../text/picture.ts';

/** Cuts and sleeve ends in the picture: of the method open, else of every repair decided that fits. */
export const spliceMarksFor = ({
  now,
  all,
  selected,
  units,
  shop,
}: {
  readonly now: AtOnce;
  readonly all: Assessment;
  readonly selected: readonly string[];
  readonly units: Units;
  readonly shop: Shop;
}): readonly SceneCut[] => {
  const id = [...selected].reverse().find((one) => now.members.has(one));
  const asked = id !== undefined && shop.member === id ? shop.method : null;
  const row =
    asked === null || id === undefined
      ? undefined
      : (all.splice.members.find(({ member }) => member === id) ??
        spliceFor(now.truss, now.coverage, all.disposition, now.live.manual, id));
  const chosen = row
    ? row.designs.filter((d) => d.method === asked).map((design) => ({ row, design }))
    : all.splice.members.flatMap((one) => {
        const design = decidedDesigns(one).find((d) => d.plan);
        return design ? [{ row: one, design }] : [];
      });
  return chosen.flatMap(({ row: { member, piece }, design }) =>
    spliceMarks(piece, design).map(
      ({ fromIn, toIn, what }): SceneCut => ({
        member,
        fromIn,
        toIn,
        label: spliceMarkText[what](showLength((fromIn + toIn) / 2, units), piece.ends[0].cluster),
      }),
    ),
  );
};
