import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo } from 'react';
import { BufferGeometry, LineBasicMaterial } from 'three';
import type { Truss } from '../../core/truss/result.ts';
import { drawn } from './drawn.ts';
import { type Floor, floorPoints } from './floor.ts';
import { setPoints } from './geometry.ts';
import type { Inks } from './inks.ts';
import type { SceneShape } from './sceneProps.ts';

const pickNothing = () => null;

const lineMaterial = (css: string): LineBasicMaterial => {
  const material = new LineBasicMaterial({ toneMapped: false });
  material.color.set(css);
  return material;
};

interface LinesProps {
  readonly points: Float32Array;
  readonly colour: string;
}

/** Hairlines, one draw call. */
const Hairlines = ({ points, colour }: LinesProps) => {
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => new BufferGeometry(), []);
  const material = useMemo(() => lineMaterial(colour), [colour]);
  useLayoutEffect(() => {
    setPoints(geometry, points);
    invalidate();
  }, [geometry, points, invalidate]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => material.dispose(), [material]);
  return <lineSegments args={[geometry, material]} raycast={pickNothing} frustumCulled={false} />;
};

/** The layout table under the truss: a line at every station. It is the ground in a side view. */
export const LayoutTable = ({ floor, inks }: { readonly floor: Floor; readonly inks: Inks }) => (
  <Hairlines points={useMemo(() => floorPoints(floor), [floor])} colour={inks.floor} />
);

/** The truss of the drawing as hairlines, under a truss that has moved. */
export const AsDrawn = ({ truss, inks }: { readonly truss: Truss; readonly inks: Inks }) => {
  const points = useMemo(() => {
    const at = new Map(truss.clusters.map((cluster) => [cluster.id, cluster.at]));
    return new Float32Array(
      truss.members.flatMap(({ from, to }) => [...(at.get(from) ?? []), ...(at.get(to) ?? [])]),
    );
  }, [truss]);
  return <Hairlines points={points} colour={inks.hairline} />;
};

/** The same moves the other way, as hairlines in the ink. */
export const OtherWay = ({
  truss,
  shape,
  inks,
}: {
  readonly truss: Truss;
  readonly shape: SceneShape;
  readonly inks: Inks;
}) => {
  const points = useMemo(
    () => new Float32Array(drawn(truss, { ...shape, factor: -shape.factor }).ends),
    [truss, shape],
  );
  return <Hairlines points={points} colour={inks.soft} />;
};
