import { Line } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { arrowStrokes } from './arrowShape.ts';
import type { Drawn } from './drawn.ts';
import type { Inks } from './inks.ts';
import type { SceneArrow } from './sceneProps.ts';

interface ArrowsProps {
  readonly drawn: Drawn;
  readonly arrows: readonly SceneArrow[];
  readonly inks: Inks;
}

const pickNothing = () => null;

/** All load arrows in one draw call, as wide on the screen however far the truss is. */
export const Arrows = ({ drawn, arrows, inks }: ArrowsProps) => {
  const invalidate = useThree((state) => state.invalidate);
  const points = useMemo(
    () =>
      arrows
        .flatMap((arrow) => arrowStrokes(drawn, arrow))
        .map(([x, y, z]): [number, number, number] => [x, y, z]),
    [drawn, arrows],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: each of these changes what is drawn
  useEffect(() => invalidate(), [points, inks, invalidate]);
  return points.length === 0 ? null : (
    <Line
      points={points}
      segments
      color={inks.ink}
      lineWidth={2.5 * inks.line}
      raycast={pickNothing}
      frustumCulled={false}
    />
  );
};
