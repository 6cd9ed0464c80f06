import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import type { OrthographicCamera, ShaderMaterial } from 'three';
import type { Drawn } from './drawn.ts';
import { placeCamera } from './placeCamera.ts';
import { blend, type Size, type Turntable } from './turntable.ts';

/** A move of the camera under way. */
export interface Move {
  readonly from: Turntable;
  readonly to: Turntable;
  /** Clock of the page when it began; set by the first frame. */
  began: number | null;
}

/** What the camera, the hand and the overlay share. Changed in place and never by React, so that turning costs no render. */
export interface Stand {
  now: Turntable;
  move: Move | null;
  size: Size;
  /** Frames drawn, and draw calls of the latest one; for browser tests. */
  frames: number;
  calls: () => number;
}

/** Milliseconds a move takes. */
export const moveMs = 260;
const easeOut = (t: number): number => 1 - (1 - t) ** 3;

interface CameraProps {
  readonly stand: RefObject<Stand>;
  readonly drawn: Drawn;
  readonly materials: readonly ShaderMaterial[];
  /** Hands the request for a frame to what lives outside the canvas. */
  readonly onReady: (redraw: () => void) => void;
}

/** Runs the moves and keeps the picture's scale in step with them. */
export const Camera = ({ stand, drawn, materials, onReady }: CameraProps) => {
  const camera = useThree((state) => state.camera) as OrthographicCamera;
  const invalidate = useThree((state) => state.invalidate);
  const gl = useThree((state) => state.gl);
  const scene = useThree((state) => state.scene);
  useEffect(() => {
    // nothing in the scene is moved, turned or scaled: places stand in the points themselves
    scene.matrixWorldAutoUpdate = false;
    camera.matrixWorldAutoUpdate = false;

    stand.current.calls = () => gl.info.render.calls;
    onReady(() => invalidate());
  }, [stand, gl, scene, camera, onReady, invalidate]);

  useFrame(() => {
    const s = stand.current;
    s.frames++;
    if (s.move !== null) {
      s.move.began ??= performance.now();
      const t = Math.min(1, (performance.now() - s.move.began) / moveMs);
      s.now = blend(s.move.from, s.move.to, easeOut(t));
      if (t >= 1) s.move = null;
      else invalidate();
    }
    placeCamera(camera, s.now, s.size, drawn);
    for (const { uniforms } of materials) uniforms.uScale!.value = s.now.scale;
  }, -1);
  return null;
};
