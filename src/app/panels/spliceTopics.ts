import type { SpliceRow } from '../../core/splice/result.ts';
import { spliceTopicText as say } from '../text/splice.ts';
import type { OwnTopic } from './OwnData.tsx';

/** What the user may enter as their own data for a splice of this tube. */
export const spliceTopics = (
  { member, piece }: SpliceRow,
  ends: readonly [string, string],
): readonly OwnTopic[] => {
  const { odIn, wallIn } = piece.tube;
  const size = `${odIn} x ${wallIn}`;
  return [
    {
      topic: `sleeve:${size}`,
      label: say.inside(size),
      takes: 'sleeve',
      hint: say.insideHint,
    },
    {
      topic: `outer-sleeve:${size}`,
      label: say.over(size),
      takes: 'sleeve',
      hint: say.overHint,
    },
    ...ends.map(
      (cluster): OwnTopic => ({
        topic: `splice-cut:${member}:${cluster}`,
        label: say.cut(cluster),
        takes: 'length',
        hint: say.cutHint,
      }),
    ),
    {
      topic: `splice-clock:${member}`,
      label: say.clock,
      takes: 'clock',
      hint: say.clockHint,
    },
    {
      topic: `splice-section:${member}`,
      label: say.section,
      takes: 'sleeve',
      hint: say.sectionHint,
    },
    {
      topic: `splice-sleeve:${member}`,
      label: say.sleeve,
      takes: 'sleeve',
      hint: say.sleeveHint,
    },
    ...ends.map(
      (cluster): OwnTopic => ({
        topic: `toe:${member}:${cluster}`,
        label: say.toe(cluster),
        takes: 'length',
      }),
    ),
    { topic: `patch-overlap:${member}`, label: say.patchOverlap, takes: 'length' },
  ];
};
