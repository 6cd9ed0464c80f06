import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { InstancedMesh, ShaderMaterial } from 'three';
import type { Drawn } from './drawn.ts';
import { ballGeometry, tubeGeometry } from './geometry.ts';
import { writeBall, writeTube } from './instances.ts';

const pickNothing = () => null;

interface HaloProps {
  readonly drawn: Drawn;
  readonly selected: ReadonlySet<string>;
  readonly tube: ShaderMaterial;
  readonly ball: ShaderMaterial;
}

/** An accent rim around what is selected; it hides nothing of the tube's own colour. Two draw calls. */
export const Halo = ({ drawn, selected, tube, ball }: HaloProps) => {
  const tubes = useRef<InstancedMesh>(null);
  const balls = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const room = 2 ** Math.ceil(Math.log2(Math.max(8, selected.size)));
  const geometry = useMemo(() => ({ tube: tubeGeometry(room), ball: ballGeometry(room) }), [room]);
  useEffect(
    () => () => {
      geometry.tube.dispose();
      geometry.ball.dispose();
    },
    [geometry],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: new room makes new meshes, which are empty
  useLayoutEffect(() => {
    const [t, b] = [tubes.current!, balls.current!];
    t.count = 0;
    b.count = 0;
    for (const id of selected) {
      const member = drawn.memberIndex.get(id);
      const cluster = drawn.clusterIndex.get(id);
      if (member !== undefined)
        writeTube(
          t.instanceMatrix.array as Float32Array,
          t.count++,
          drawn.ends,
          member,
          drawn.radii[member]!,
        );
      else if (cluster !== undefined)
        writeBall(
          b.instanceMatrix.array as Float32Array,
          b.count++,
          drawn.centres,
          cluster,
          drawn.balls[cluster]!,
        );
    }
    t.visible = t.count > 0;
    b.visible = b.count > 0;
    t.instanceMatrix.needsUpdate = true;
    b.instanceMatrix.needsUpdate = true;
    invalidate();
  }, [drawn, selected, room, geometry, invalidate]);

  return (
    <>
      <instancedMesh
        key={`tubes ${room}`}
        ref={tubes}
        args={[geometry.tube, tube, room]}
        raycast={pickNothing}
        frustumCulled={false}
      />
      <instancedMesh
        key={`balls ${room}`}
        ref={balls}
        args={[geometry.ball, ball, room]}
        raycast={pickNothing}
        frustumCulled={false}
      />
    </>
  );
};
