import { type OrthographicCamera, Vector3 } from 'three';
import type { Drawn } from './drawn.ts';
import { basis, type Size, type Turntable } from './turntable.ts';

/** Puts three's camera where the turntable stands: by its matrix, and its projection only when that is another one. */
export const placeCamera = (camera: OrthographicCamera, v: Turntable, size: Size, d: Drawn): void => {
  const { right, up, back } = basis(v);
  // a ball about the target that holds the truss however it is turned, and room for the halo
  const away = Math.hypot(...[0, 1, 2].map((k) => (d.low[k]! + d.high[k]!) / 2 - v.target[k]!));
  const reach = away + Math.hypot(...[0, 1, 2].map((k) => d.high[k]! - d.low[k]!)) / 2 + 24;
  const [halfWide, halfHigh] = [size.width / 2, size.height / 2];
  if (
    camera.right !== halfWide ||
    camera.top !== halfHigh ||
    camera.zoom !== v.scale ||
    camera.far !== reach
  ) {
    [camera.left, camera.right, camera.bottom, camera.top] = [-halfWide, halfWide, -halfHigh, halfHigh];
    [camera.zoom, camera.near, camera.far] = [v.scale, -reach, reach];
    camera.updateProjectionMatrix();
  }
  camera.matrixAutoUpdate = false;
  camera.matrix
    .makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...back))
    .setPosition(...v.target);
  // the camera hangs in no other thing, and three leaves a world matrix alone that is not its own to update
  camera.matrixWorld.copy(camera.matrix);
  camera.matrixWorldInverse.copy(camera.matrix).invert();
};
