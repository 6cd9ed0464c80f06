import { type Mark, states } from '../../core/walkRound/result.ts';

const place = new Map(states.map((state, k) => [state, k]));
const unseen = place.get('notLookedAt')!;

/** The state of each part in the order in which it is drawn, as its place in `states`: asked of the marks once a change. */
export const drawnStates = (ids: readonly string[], marks: ReadonlyMap<string, Mark>): Uint8Array => {
  const out = new Uint8Array(ids.length);
  for (let i = 0; i < out.length; i++) {
    const mark = marks.get(ids[i]!);
    out[i] = mark ? place.get(mark.state)! : unseen;
  }
  return out;
};
