import {
  BufferAttribute,
  type BufferGeometry,
  CylinderGeometry,
  InstancedBufferAttribute,
  SphereGeometry,
} from 'three';

/** A capped cylinder of radius 1 along y; fewer sides on a big truss. */
export const tubeGeometry = (count: number): BufferGeometry => {
  const sides = count > 2000 ? 10 : count > 600 ? 16 : 24;
  return new CylinderGeometry(1, 1, 1, sides, 1, false);
};

/** A ball of radius 1. */
export const ballGeometry = (count: number): BufferGeometry =>
  count > 1000 ? new SphereGeometry(1, 10, 7) : new SphereGeometry(1, 24, 16);

/** Segments between pairs of points. */
export const setPoints = (geometry: BufferGeometry, points: Float32Array): void => {
  geometry.setAttribute('position', new BufferAttribute(points, 3));
};

/** Numbers a copy wears: its colour, and its look (fill share, outline dotted, ghost, pattern). */
export interface Worn {
  readonly geometry: BufferGeometry;
  readonly colour: InstancedBufferAttribute;
  readonly look: InstancedBufferAttribute;
}

/** Room for what `count` copies wear, on the geometry they share. */
export const worn = (geometry: BufferGeometry, count: number): Worn => {
  const colour = new InstancedBufferAttribute(new Float32Array(count * 3), 3);
  const look = new InstancedBufferAttribute(new Float32Array(count * 4), 4);
  geometry.setAttribute('colour', colour);
  geometry.setAttribute('look', look);
  return { geometry, colour, look };
};
