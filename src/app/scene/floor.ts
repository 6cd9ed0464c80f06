import type { Vec3 } from '../../core/base/vec3.ts';
import type { Truss } from '../../core/truss/result.ts';

/** The layout table under the truss. Inches. */
export interface Floor {
  readonly stations: readonly { readonly label: string; readonly x: number }[];
  /** Height of the table, and its half width. */
  readonly z: number;
  readonly half: number;
  readonly from: number;
  readonly to: number;
}

/** A table a little below the lowest cluster, with a line where each station's clusters lie on average. */
export const floorOf = (truss: Truss): Floor => {
  const sums = new Map<string, { x: number; n: number }>();
  const spread = { x: [Infinity, -Infinity], y: 0, z: Infinity };
  for (const { station, at } of truss.clusters) {
    spread.x = [Math.min(spread.x[0]!, at[0]), Math.max(spread.x[1]!, at[0])];
    spread.y = Math.max(spread.y, Math.abs(at[1]));
    spread.z = Math.min(spread.z, at[2]);
    if (station === undefined) continue;
    const sum = sums.get(station) ?? { x: 0, n: 0 };
    sums.set(station, { x: sum.x + at[0], n: sum.n + 1 });
  }
  const long = spread.x[1]! - spread.x[0]!;
  const beyond = Math.max(4, long * 0.03);
  return {
    stations: [...sums].map(([label, { x, n }]) => ({ label, x: x / n })),
    z: spread.z - Math.max(3, long * 0.03),
    half: spread.y + beyond,
    from: spread.x[0]! - beyond,
    to: spread.x[1]! + beyond,
  };
};

/** Ends of the table's lines: a rectangle, the centre line, and one line a station. */
export const floorPoints = ({ stations, z, half, from, to }: Floor): Float32Array => {
  const lines: (readonly [Vec3, Vec3])[] = [
    ...[-half, half, 0].map((y): readonly [Vec3, Vec3] => [
      [from, y, z],
      [to, y, z],
    ]),
    ...[from, to, ...stations.map(({ x }) => x)].map((x): readonly [Vec3, Vec3] => [
      [x, -half, z],
      [x, half, z],
    ]),
  ];
  return new Float32Array(lines.flat(2));
};
