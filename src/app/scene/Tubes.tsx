import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { InstancedMesh, ShaderMaterial } from 'three';
import { states } from '../../core/walkRound/result.ts';
import type { Drawn } from './drawn.ts';
import { tubeGeometry, worn } from './geometry.ts';
import { fillShare, stateColour } from './inks.ts';
import { writeTube } from './instances.ts';
import { rgb } from './materials.ts';
import type { SceneProps } from './sceneProps.ts';

export type Dress = Pick<SceneProps, 'marks' | 'ghosted' | 'colours' | 'light'>;

/** The states of the members in the order of drawing, in place of their marks. */
export type MemberDress = Omit<Dress, 'marks'> & { readonly memberStates: Uint8Array };

/** Colours parsed once each, however many tubes wear them. */
export const palette = () => {
  const seen = new Map<string, readonly [number, number, number]>();
  return (css: string): readonly [number, number, number] => {
    const known = seen.get(css);
    if (known) return known;
    const { r, g, b } = rgb(css);
    seen.set(css, [r, g, b]);
    return [r, g, b];
  };
};

const pickNothing = () => null;

interface TubesProps extends MemberDress {
  readonly drawn: Drawn;
  readonly material: ShaderMaterial;
}

/** All members in one draw call: hollow and dotted until looked at, then filled with the colour of their state. */
export const Tubes = ({ drawn, material, memberStates, ghosted, colours, light }: TubesProps) => {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((state) => state.invalidate);
  const count = drawn.memberIds.length;
  const wear = useMemo(() => worn(tubeGeometry(count), count), [count]);

  useEffect(() => () => wear.geometry.dispose(), [wear]);

  useLayoutEffect(() => {
    const to = mesh.current!;
    const out = to.instanceMatrix.array as Float32Array;
    for (let i = 0; i < count; i++) writeTube(out, i, drawn.ends, i, drawn.radii[i]!);
    to.instanceMatrix.needsUpdate = true;
    invalidate();
  }, [drawn, count, invalidate]);

  useLayoutEffect(() => {
    const shades = wear.colour.array;
    const looks = wear.look.array;
    const numbers = palette();
    const ofState = states.map((state) => numbers(stateColour(state, light)));
    const fills = states.map((state) => fillShare[state]);
    const unseen = states.indexOf('notLookedAt');
    const { memberIds } = drawn;
    for (let i = 0; i < memberIds.length; i++) {
      const id = memberIds[i]!;
      const state = memberStates[i]!;
      const given = colours?.get(id);
      const [r, g, b] = given === undefined ? ofState[state]! : numbers(given);
      shades[i * 3] = r;
      shades[i * 3 + 1] = g;
      shades[i * 3 + 2] = b;
      looks[i * 4] = given === undefined ? fills[state]! : 0.9;
      looks[i * 4 + 1] = state === unseen ? 1 : 0;
      looks[i * 4 + 2] = ghosted.size > 0 && ghosted.has(id) ? 1 : 0;
    }
    wear.colour.needsUpdate = true;
    wear.look.needsUpdate = true;
    invalidate();
  }, [drawn, wear, memberStates, ghosted, colours, light, invalidate]);

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
