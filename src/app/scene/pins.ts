import { centreOf, type Drawn, pointOn } from './drawn.ts';
import type { Label } from './labels.ts';
import type { ScenePin } from './sceneProps.ts';

/** A small paper label where a photo was taken. */
export const pinLabels = (
  d: Drawn,
  ghosted: ReadonlySet<string>,
  pins: readonly ScenePin[],
): readonly Label[] =>
  pins.flatMap(({ id, share, label }): Label[] => {
    if (ghosted.has(id)) return [];
    const member = d.memberIndex.get(id);
    const cluster = d.clusterIndex.get(id);
    if (member === undefined && cluster === undefined) return [];
    const place =
      member === undefined
        ? ({ at: centreOf(d, cluster!), radiusIn: d.balls[cluster!]! } as const)
        : ({ at: pointOn(d, member, share), radiusIn: d.radii[member]! } as const);
    return [{ ...place, text: label, style: 'paper', rank: 3.5, must: true, clear: 8, far: true }];
  });
