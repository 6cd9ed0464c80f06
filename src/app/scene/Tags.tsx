import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { InstancedMesh, ShaderMaterial } from 'three';
import { type State, states } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import type { Drawn } from './drawn.ts';
import { tubeGeometry, worn } from './geometry.ts';
import { banded, stateColour } from './inks.ts';
import { writeTube } from './instances.ts';
import { patternNumber } from './materials.ts';
import { type MemberDress, palette } from './Tubes.tsx';

const pickNothing = () => null;

interface TagsProps extends MemberDress {
  readonly drawn: Drawn;
  readonly material: ShaderMaterial;
}

/** A patterned band around the middle third of every tube that calls for something; one draw call. */
export const Tags = ({ drawn, material, memberStates, ghosted, light }: TagsProps) => {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const wearers = useMemo(() => {
    const list: { readonly i: number; readonly state: State }[] = [];
    const wears = states.map((state) => banded[state]);
    memberStates.forEach((place, i) => {
      if (wears[place] && !ghosted.has(drawn.memberIds[i]!)) list.push({ i, state: states[place]! });
    });
    return list;
  }, [drawn, memberStates, ghosted]);
  // room in powers of two, so that one more tag rarely makes a new mesh
  const room = 2 ** Math.ceil(Math.log2(Math.max(8, wearers.length)));
  const wear = useMemo(() => worn(tubeGeometry(room), room), [room]);

  useEffect(() => () => wear.geometry.dispose(), [wear]);

  useLayoutEffect(() => {
    const to = mesh.current!;
    const numbers = palette();
    wearers.forEach(({ i, state }, at) => {
      writeTube(
        to.instanceMatrix.array as Float32Array,
        at,
        drawn.ends,
        i,
        drawn.radii[i]! * 1.2,
        1 / 3,
        2 / 3,
      );
      wear.colour.array.set(numbers(stateColour(state, light)), at * 3);
      wear.look.array.set([1, 0, 0, patternNumber[tags[state].pattern]], at * 4);
    });
    to.count = wearers.length;
    to.visible = to.count > 0;
    to.instanceMatrix.needsUpdate = true;
    wear.colour.needsUpdate = true;
    wear.look.needsUpdate = true;
    invalidate();
  }, [drawn, wearers, wear, light, invalidate]);

  return (
    <instancedMesh
      key={room}
      ref={mesh}
      args={[wear.geometry, material, room]}
      raycast={pickNothing}
      frustumCulled={false}
    />
  );
};
