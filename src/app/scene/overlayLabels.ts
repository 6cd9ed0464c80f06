import { between } from '../../core/base/vec3.ts';
import { arrowEnds } from './arrowShape.ts';
import { kerfOf } from './cutMarks.ts';
import { centreOf, type Drawn, pointOn } from './drawn.ts';
import type { Label } from './labels.ts';
import type { SceneArrow, SceneCut } from './sceneProps.ts';

/** The numbers of tubes and clusters, in the order given: earlier ones take the room. */
export const numberLabels = (
  d: Drawn,
  ghosted: ReadonlySet<string>,
  numbers: ReadonlyMap<string, string>,
): readonly Label[] => {
  let before = 0;
  return [...numbers].flatMap(([id, text]): Label[] => {
    if (ghosted.has(id)) return [];
    const member = d.memberIndex.get(id);
    const cluster = d.clusterIndex.get(id);
    if (member === undefined && cluster === undefined) return [];
    const place =
      member !== undefined
        ? ({
            at: pointOn(d, member, 0.5),
            along: [pointOn(d, member, 0), pointOn(d, member, 1)],
            radiusIn: d.radii[member]!,
          } as const)
        : { at: centreOf(d, cluster!), radiusIn: d.balls[cluster!]! };
    return [{ ...place, text, style: 'paper', rank: 4 + ++before / 1e6, must: false, clear: 3, far: false }];
  });
};

/** What each load is, at the tail of its arrow. */
export const arrowLabels = (d: Drawn, arrows: readonly SceneArrow[]): readonly Label[] =>
  arrows.flatMap((arrow): Label[] => {
    const ends = arrowEnds(d, arrow);
    return ends
      ? [
          {
            at: ends.tail,
            text: arrow.label,
            style: 'strong',
            rank: 2,
            must: true,
            radiusIn: 0,
            clear: 5,
            far: true,
          },
        ]
      : [];
  });

/** "Saw here" beside each kerf. */
export const cutLabels = (d: Drawn, cuts: readonly SceneCut[]): readonly Label[] =>
  cuts.flatMap((cut): Label[] => {
    const kerf = kerfOf(d, cut);
    return kerf
      ? [
          {
            at: between(kerf.at, kerf.at, 0.5),
            along: kerf.along,
            text: cut.label,
            style: 'strong',
            rank: 0.5,
            must: true,
            radiusIn: kerf.radiusIn,
            clear: 14,
            far: true,
          },
        ]
      : [];
  });
