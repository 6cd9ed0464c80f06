import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { InstancedMesh, ShaderMaterial } from 'three';
import type { State } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import type { Drawn } from './drawn.ts';
import { ballGeometry, worn } from './geometry.ts';
import { banded, fillShare, stateColour } from './inks.ts';
import { writeBall } from './instances.ts';
import { patternNumber } from './materials.ts';
import { type Dress, palette } from './Tubes.tsx';

const pickNothing = () => null;
/** A ball that calls for something is drawn larger, so that its pattern can be read. */
const TAGGED = 1.7;

interface ClustersProps extends Dress {
  readonly drawn: Drawn;
  readonly material: ShaderMaterial;
}

/** All clusters in one draw call: plain balls over the ends of their tubes, patterned where they are tagged. */
export const Clusters = ({ drawn, material, marks, ghosted, light }: ClustersProps) => {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const count = drawn.clusterIds.length;
  const wear = useMemo(() => worn(ballGeometry(count), count), [count]);

  useEffect(() => () => wear.geometry.dispose(), [wear]);

  useLayoutEffect(() => {
    const to = mesh.current!;
    const matrices = to.instanceMatrix.array as Float32Array;
    const numbers = palette();
    drawn.clusterIds.forEach((id, i) => {
      const state: State = marks.get(id)?.state ?? 'notLookedAt';
      const tagged = banded[state] && !ghosted.has(id);
      writeBall(matrices, i, drawn.centres, i, drawn.balls[i]! * (tagged ? TAGGED : 1));
      wear.colour.array.set(numbers(stateColour(state, light)), i * 3);
      wear.look.array.set(
        [
          state === 'notLookedAt' ? 0 : Math.max(0.4, fillShare[state]),
          state === 'notLookedAt' ? 1 : 0,
          ghosted.has(id) ? 1 : 0,
          tagged ? patternNumber[tags[state].pattern] : 0,
        ],
        i * 4,
      );
    });
    to.instanceMatrix.needsUpdate = true;
    wear.colour.needsUpdate = true;
    wear.look.needsUpdate = true;
    invalidate();
  }, [drawn, wear, marks, ghosted, light, invalidate]);

  return (
    <instancedMesh
      key={count}
      ref={mesh}
      args={[wear.geometry, material, count]}
      raycast={pickNothing}
      frustumCulled={false}
    />
  );
};
