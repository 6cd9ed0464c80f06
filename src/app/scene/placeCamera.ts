import { Matrix4, type OrthographicCamera, Vector3 } from 'three';
import { dot } from '../../core/base/vec3.ts';
import type { Drawn } from './drawn.ts';
import { basis, type Size, type Turntable } from './turntable.ts';

/** Puts three's camera where the turntable stands. */
export const placeCamera = (camera: OrthographicCamera, v: Turntable, size: Size, d: Drawn): void => {
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
