import type { ScenePin } from '../scene/sceneProps.ts';
import type { AtOnce } from '../state/answer.ts';
import { stripText } from '../text/strip.ts';

/** Where photos were taken: at the place of the finding they show, else in the middle; one pin for several at a place. */
export const pinsOf = ({ live, coverage, members }: AtOnce): readonly ScenePin[] => {
  const pins = new Map<string, ScenePin & { readonly count: number }>();
  for (const { of, finding } of live.photos) {
    const member = members.get(of);
    const place = coverage.findings.find(({ id }) => id === finding)?.place;
    const fromStart = member && place ? place.atIn / member.lengthIn : 0.5;
    const share = member && place?.from === member.to ? 1 - fromStart : fromStart;
    const key = `${of} ${share}`;
    const count = (pins.get(key)?.count ?? 0) + 1;
    pins.set(key, { id: of, share, count, label: stripText.photos(count) });
  }
  return [...pins.values()];
};
