import { distance } from '../base/vec3.ts';
import type { JobRecord } from '../job/jobSchema.ts';
import type { Model } from '../job/modelSchema.ts';
import { expandTruss } from './truss.ts';

interface Moved {
  readonly id: string;
  readonly byIn: number;
}

/** What is different in the truss of an amended model, and which records no longer say where they belong. */
export interface ModelChanges {
  readonly clustersAdded: readonly string[];
  readonly clustersRemoved: readonly string[];
  readonly clustersMoved: readonly Moved[];
  readonly membersAdded: readonly string[];
  readonly membersRemoved: readonly string[];
  /** Another tube, wall or material. */
  readonly membersResized: readonly string[];
  /** Another length because an end moved. */
  readonly membersLengthened: readonly Moved[];
  /** Records that name something the new truss does not have; they stay, and show as odd. */
  readonly lost: readonly { readonly record: string; readonly kind: string; readonly names: string }[];
}

/** Ids of members, clusters and bays that a record names. */
const namedBy = (record: JobRecord): readonly string[] => {
  switch (record.kind) {
    case 'look':
    case 'finding':
    case 'decision':
      return [record.of];
    case 'photo':
    case 'note':
    case 'progress':
      return record.of === undefined ? [] : [record.of];
    case 'area':
      return [record.bay];
    case 'reading':
      return record.ends.flatMap((end) => [end.cluster, ...(end.on === undefined ? [] : [end.on])]);
    case 'held':
      return [
        ...(record.held ?? []).map((h) => h.cluster),
        ...(record.braces ?? []).flatMap((b) => [b.from, b.to]),
      ];
    case 'mishap':
      return record.blow ? [record.blow.cluster] : [];
    default:
      return [];
  }
};

/** Nearer than this a place has not changed: the last bits of a length typed in millimetres. */
const SAME_IN = 1e-6;

/**
 * What an amendment does, listed before it is made.
 *
 * @param records  those that count
 */
export const modelChanges = (before: Model, after: Model, records: readonly JobRecord[]): ModelChanges => {
  const [old, now] = [expandTruss(before), expandTruss(after)];
  const oldClusters = new Map(old.clusters.map((c) => [c.id, c]));
  const nowClusters = new Map(now.clusters.map((c) => [c.id, c]));
  const oldMembers = new Map(old.members.map((m) => [m.id, m]));
  const nowMembers = new Map(now.members.map((m) => [m.id, m]));
  const known = new Set([
    ...nowClusters.keys(),
    ...nowMembers.keys(),
    ...now.bays.map((b) => b.id),
    ...now.faces.map((f) => f.bay),
  ]);
  return {
    clustersAdded: now.clusters.filter((c) => !oldClusters.has(c.id)).map((c) => c.id),
    clustersRemoved: old.clusters.filter((c) => !nowClusters.has(c.id)).map((c) => c.id),
    clustersMoved: now.clusters.flatMap((c) => {
      const was = oldClusters.get(c.id);
      const byIn = was ? distance(was.at, c.at) : 0;
      return byIn > SAME_IN ? [{ id: c.id, byIn }] : [];
    }),
    membersAdded: now.members.filter((m) => !oldMembers.has(m.id)).map((m) => m.id),
    membersRemoved: old.members.filter((m) => !nowMembers.has(m.id)).map((m) => m.id),
    membersResized: now.members
      .filter((m) => {
        const was = oldMembers.get(m.id);
        return (
          was !== undefined &&
          (was.material !== m.material ||
            was.section.areaIn2 !== m.section.areaIn2 ||
            was.section.inertiaIn4 !== m.section.inertiaIn4)
        );
      })
      .map((m) => m.id),
    membersLengthened: now.members.flatMap((m) => {
      const was = oldMembers.get(m.id);
      const byIn = was ? m.lengthIn - was.lengthIn : 0;
      return Math.abs(byIn) > SAME_IN ? [{ id: m.id, byIn }] : [];
    }),
    lost: records.flatMap((record) =>
      namedBy(record)
        .filter((id) => !known.has(id))
        .map((names) => ({ record: record.id, kind: record.kind, names })),
    ),
  };
};
