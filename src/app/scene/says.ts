import { type State, states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import { sceneText as text } from '../text/scene.ts';
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
  return [
    text.truss(truss.members.length, truss.clusters.length),
    counts.join(', '),
    selected.size === 0 ? text.nothing : text.selected(chosen.join(', '), selected.size - 5),
    ...(shape ? [text.shape(shape.name, shape.size ?? text.moves(shape.factor))] : []),
    text.table,
  ].join('. ');
};
