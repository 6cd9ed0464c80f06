import { states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import { spoken } from './labels.ts';
import type { SceneProps } from './sceneProps.ts';

/** The picture in words, for those who do not see it: how much there is, in what state, and what is selected. */
export const says = ({ truss, marks, selected, shape }: SceneProps): string => {
  const counts = states.flatMap((state) => {
    let count = 0;
    for (const { id } of truss.members) if ((marks.get(id)?.state ?? 'notLookedAt') === state) count++;
    return count === 0 ? [] : [`${tags[state].word} ${count}`];
  });
  const chosen = [...selected].slice(0, 5).map(spoken);
  const more = selected.size > 5 ? ` and ${selected.size - 5} more` : '';
  return [
    `Truss of ${truss.members.length} tubes and ${truss.clusters.length} clusters`,
    counts.join(', '),
    selected.size === 0 ? 'Nothing selected' : `Selected: ${chosen.join(', ')}${more}`,
    ...(shape ? [`${shape.name}, moves drawn ${shape.factor} times`] : []),
    'Everything in the picture is in the table',
  ].join('. ');
};
