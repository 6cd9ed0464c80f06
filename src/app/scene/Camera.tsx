import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { Matrix4, type OrthographicCamera, type ShaderMaterial, Vector3 } from 'three';
import { dot } from '../../core/base/vec3.ts';
import type { Drawn } from './drawn.ts';
import { basis, blend, type Size, type Turntable } from './turntable.ts';

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

/** Puts three's camera where the turntable stands. */
export const place = (camera: OrthographicCamera, v: Turntable, size: Size, d: Drawn): void => {
  const { right, up, back } = basis(v);
  // the box of the truss, seen in depth, and room for the halo
  const middle = [0, 1, 2].map((k) => (d.low[k]! + d.high[k]!) / 2 - v.target[k]!);
  const reach = Math.hypot(...[0, 1, 2].map((k) => d.high[k]! - d.low[k]!)) / 2 + 24;
  const depth = dot([middle[0]!, middle[1]!, middle[2]!], back);
  camera.left = -size.width / 2;
  camera.right = size.width / 2;
  camera.top = size.height / 2;
  camera.bottom = -size.height / 2;
  camera.zoom = v.scale;
  camera.near = -depth - reach;
  camera.far = -depth + reach;
  camera.position.set(...v.target);
  camera.quaternion.setFromRotationMatrix(
    new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...back)),
  );
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
};

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
  useEffect(() => {
    stand.current.calls = () => gl.info.render.calls;
    onReady(() => invalidate());
  }, [stand, gl, onReady, invalidate]);

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
    place(camera, s.now, s.size, drawn);
    for (const { uniforms } of materials) uniforms.uScale!.value = s.now.scale;
  }, -1);
  return null;
};
