import { Box3, type Mesh, type Object3D, Vector3 } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { describe, expect, it, vi } from 'vitest';
import { standing } from '../../src/core/job/standing.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { walkRound } from '../../src/core/walkRound/walkRound.ts';
import { trussGltf } from '../../src/present/gltf.ts';
import { expectNear } from '../kit/near.ts';
import { madeJob } from './made.ts';

const job = madeJob();
const live = standing(job.records);
const truss = expandTruss(job.model);
const coverage = walkRound(truss, live.looks, live.findings, live.decisions, live.areas, live.clashes);
const text = trussGltf({ truss, coverage }, job.name, 'revision 7');

// Khronos glTF 2.0, 3.4: metres, y up, +z forward; so the pilot's left is +x. 1 in = 0.0254 m by definition.
const metres = ([x, y, z]: readonly [number, number, number]): Vector3 =>
  new Vector3(-y * 0.0254, z * 0.0254, -x * 0.0254);

const loaded = (): Promise<Object3D> =>
  new Promise((give, fail) => {
    // the loader reads even inline bytes as a browser loads a file
    vi.stubGlobal('self', globalThis);
    vi.stubGlobal('ProgressEvent', class extends Event {});
    new GLTFLoader().parse(text, '', ({ scene }) => give(scene), fail);
  });

describe('the tagged truss as glTF', () => {
  it('opens in another library, each tube from cluster to cluster at its true diameter', async () => {
    const scene = await loaded();
    scene.updateMatrixWorld(true);
    const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
    const because = 'coordinates are written to 1e-7 m and held as 32-bit floats';
    const ids = JSON.parse(text).nodes.map(({ name }: { name: string }) => name);
    truss.members.forEach((member) => {
      const tube = scene.children[ids.indexOf(member.id)]!;
      const [from, to] = [metres(at.get(member.from)!), metres(at.get(member.to)!)];
      const [low, high] = [new Vector3(0, 0, 0), new Vector3(0, 1, 0)].map((p) => tube.localToWorld(p));
      expectNear(low!.distanceTo(from), 0, { abs: 2e-6, because });
      expectNear(high!.distanceTo(to), 0, { abs: 2e-6, because });
      const side = tube.localToWorld(new Vector3(1, 0, 0)).distanceTo(low!);
      expectNear(side, (member.section.odIn / 2) * 0.0254, { abs: 2e-6, because });
    });
    const box = new Box3().setFromObject(scene);
    expect(box.isEmpty()).toBe(false);
    const first = scene.children[0] as Mesh;
    expect(first.geometry.getAttribute('position').count).toBeGreaterThan(0);
  }, 20_000);

  it('says of each tube its tag, its size in inches and its place in words', () => {
    const { nodes, asset } = JSON.parse(text);
    expect(asset.extras.units).toMatch(/metres.*inches/);
    expect(asset.extras.revision).toBe('revision 7');
    const bent = nodes.find(({ name }: { name: string }) => name === 'L2R-L3R');
    expect(bent.extras.state).toBe('Replace / rebuild');
    expect(bent.extras.words).toContain('Lower longeron, right, bay 2');
    expect(bent.extras.odIn).toBe(truss.members.find(({ id }) => id === 'L2R-L3R')!.section.odIn);
    expect(nodes).toHaveLength(truss.members.length + truss.clusters.length);
  });

  it('gives the same text for the same truss', () => {
    expect(trussGltf({ truss, coverage }, job.name, 'revision 7')).toBe(text);
  });
});
