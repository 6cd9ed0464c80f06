import { type State, states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import { spoken } from './labels.ts';
import type { SceneProps } from './sceneProps.ts';

/** The picture in words, for those who do not see it: how much there is, in what state, and what is selected. */
export const says = ({ truss, marks, selected, shape }: SceneProps): string => {
  const count = new Map<State, number>();
  for (const { id } of truss.members) {
    const state = marks.get(id)?.state ?? 'notLookedAt';
    count.set(state, (count.get(state) ?? 0) + 1);
  }
  const counts = states.flatMap((state) =>
    count.has(state) ? [`${tags[state].word} ${count.get(state)}`] : [],
  );
  const chosen = [...selected].slice(0, 5).map(spoken);
  const more = selected.size > 5 ? ` and ${selected.size - 5} more` : '';
  return [
    `Truss of ${truss.members.length} tubes and ${truss.clusters.length} clusters`,
    counts.join(', '),
    selected.size === 0 ? 'Nothing selected' : `Selected: ${chosen.join(', ')}${more}`,
    ...(shape ? [`${shape.name}, ${shape.size ?? `moves drawn ${shape.factor} times`}`] : []),
    'Everything in the picture is in the table',
  ].join('. ');
};
