import type { Assessment } from '../core/assessment.ts';
import type { Vec3 } from '../core/base/vec3.ts';
import { type State, states } from '../core/walkRound/result.ts';
import { tags } from './tags.ts';
import { sideConvention, workingAid } from './words/cautions.ts';
import { clusterWords, memberLine } from './words/names.ts';

const SIDES = 12;
const IN_TO_M = 0.0254;

/** Round an axis of unit length along +y: rings of a cylinder without ends, radius 1. */
const ring = (y: number): readonly Vec3[] =>
  Array.from({ length: SIDES }, (_, k): Vec3 => {
    const a = (2 * Math.PI * k) / SIDES;
    return [Math.cos(a), y, Math.sin(a)];
  });

const base64 = (bytes: Uint8Array): string => {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  let out = '';
  for (let k = 0; k < bytes.length; k += 3) {
    const [a, b, c] = [bytes[k]!, bytes[k + 1] ?? 0, bytes[k + 2] ?? 0];
    out += letters[a >> 2]! + letters[((a & 3) << 4) | (b >> 4)]!;
    out += k + 1 < bytes.length ? letters[((b & 15) << 2) | (c >> 6)]! : '=';
    out += k + 2 < bytes.length ? letters[c & 63]! : '=';
  }
  return out;
};

/** sRGB `#RRGGBB` to linear light, as glTF wants colours. Source: IEC 61966-2-1. */
const linear = (hex: string): readonly number[] =>
  [1, 3, 5].map((k) => {
    const c = Number.parseInt(hex.slice(k, k + 2), 16) / 255;
    const value = c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    return Math.round(value * 1e5) / 1e5;
  });

const round = (value: number): number => Math.round(value * 1e7) / 1e7 + 0;

/** Turns +y into `along`: shortest way, as quaternion x y z w. */
const turn = ([x, y, z]: Vec3): readonly number[] => {
  if (y < -0.999999) return [1, 0, 0, 0];
  const q = [z, 0, -x, 1 + y];
  const size = Math.hypot(...q);
  return q.map((v) => round(v / size));
};

/** Station, butt line, water line in inches to glTF's metres: y up, +z forward, +x the pilot's left. */
const place = ([x, y, z]: Vec3): Vec3 => [round(-y * IN_TO_M), round(z * IN_TO_M), round(-x * IN_TO_M)];

/**
 * The tagged truss as glTF 2.0 text: a node for each tube and cluster with its id, words, state and sizes in `extras`, a
 * material for each state. Lengths in metres, as the format asks; the inches stand in `extras`.
 * Source: Khronos glTF 2.0 specification, 3.4 (metres, y up, +z forward).
 */
export const trussGltf = (
  { truss, coverage }: Pick<Assessment, 'truss' | 'coverage'>,
  name: string,
  revision: string,
): string => {
  const stateOf = new Map(coverage.marks.map((m) => [m.id, m]));
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const points = [...ring(0), ...ring(1)];
  const faces = Array.from({ length: SIDES }, (_, k) => {
    const next = (k + 1) % SIDES;
    return [k, k + SIDES, next, next, k + SIDES, next + SIDES];
  }).flat();
  const buffer = new Uint8Array(points.length * 24 + faces.length * 2);
  const view = new DataView(buffer.buffer);
  for (const [k, p] of points.entries())
    for (const axis of [0, 1, 2] as const) {
      view.setFloat32(k * 12 + axis * 4, p[axis], true);
      view.setFloat32((points.length + k) * 12 + axis * 4, axis === 1 ? 0 : p[axis], true);
    }
  for (const [k, index] of faces.entries()) view.setUint16(points.length * 24 + k * 2, index, true);
  const material = (state: State): number => states.indexOf(state);
  const colour = (state: State): readonly number[] => [...linear(tags[state].light), 1];
  const tubes = truss.members.map((member) => {
    const [a, b] = [place(at.get(member.from)!), place(at.get(member.to)!)];
    const along: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const long = Math.hypot(...along) || 1e-6;
    const r = (member.section.odIn / 2) * IN_TO_M;
    const mark = stateOf.get(member.id);
    const state: State = mark?.state ?? 'notLookedAt';
    return {
      name: member.id,
      mesh: material(state),
      translation: a,
      rotation: turn([along[0] / long, along[1] / long, along[2] / long]),
      scale: [round(r), round(long), round(r)],
      extras: {
        words: memberLine(member),
        state: tags[state].word,
        chalk: tags[state].chalk,
        ...(mark?.choice ? { decision: mark.choice } : {}),
        odIn: member.section.odIn,
        wallIn: member.section.wallIn,
        ...(member.guessed ? {} : { lengthIn: member.lengthIn }),
        material: member.material,
      },
    };
  });
  const clusters = truss.clusters.map((cluster) => ({
    name: cluster.id,
    translation: place(cluster.at),
    extras: {
      words: clusterWords(cluster.id),
      state: tags[stateOf.get(cluster.id)?.state ?? 'notLookedAt'].word,
      stationIn: cluster.at[0],
      buttLineIn: cluster.at[1],
      waterLineIn: cluster.at[2],
    },
  }));
  const nodes = [...tubes, ...clusters];
  const at0 = { buffer: 0, byteOffset: 0, byteLength: points.length * 12, target: 34962 };
  const doc = {
    asset: {
      version: '2.0',
      generator: 'Tubewright',
      copyright: workingAid,
      extras: { job: name, revision, units: 'metres; lengths named In are inches', sides: sideConvention },
    },
    scene: 0,
    scenes: [{ name, nodes: nodes.map((_, k) => k) }],
    nodes,
    meshes: states.map((state) => ({
      name: tags[state].word,
      primitives: [{ attributes: { POSITION: 0, NORMAL: 1 }, indices: 2, material: material(state) }],
    })),
    materials: states.map((state) => ({
      name: tags[state].word,
      doubleSided: true,
      pbrMetallicRoughness: { baseColorFactor: colour(state), metallicFactor: 0.1, roughnessFactor: 0.6 },
      extras: { chalk: tags[state].chalk, pattern: tags[state].pattern },
    })),
    accessors: [
      {
        bufferView: 0,
        componentType: 5126,
        count: points.length,
        type: 'VEC3',
        min: [-1, 0, -1],
        max: [1, 1, 1],
      },
      { bufferView: 1, componentType: 5126, count: points.length, type: 'VEC3' },
      { bufferView: 2, componentType: 5123, count: faces.length, type: 'SCALAR' },
    ],
    bufferViews: [
      at0,
      { ...at0, byteOffset: points.length * 12 },
      { buffer: 0, byteOffset: points.length * 24, byteLength: faces.length * 2, target: 34963 },
    ],
    buffers: [{ byteLength: buffer.length, uri: `data:application/octet-stream;base64,${base64(buffer)}` }],
  };
  return `${JSON.stringify(doc)}\n`;
};
