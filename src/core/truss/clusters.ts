import { type Issue, issue } from '../base/issue.ts';
import type { Model, Origin, Station } from '../job/modelSchema.ts';
import { type ClusterPlace, compareIds, readCluster } from './names.ts';
import type { Cluster } from './result.ts';

/** Rows of the station table in order aft, each label once. */
export const stationsInOrder = (model: Model): { stations: readonly Station[]; issues: readonly Issue[] } => {
  const seen = new Set<string>();
  const issues: Issue[] = [];
  const stations: Station[] = [];
  for (const [k, row] of model.stations.entries()) {
    if (seen.has(row.label))
      issues.push(
        issue('duplicate-station', `stations[${k}].label`, { label: row.label }, 'give-another-label'),
      );
    else stations.push(row);
    seen.add(row.label);
  }
  stations.sort((a, b) => a.stationIn - b.stationIn || compareIds(a.label, b.label));
  return { stations, issues };
};

const originOf = (word: Origin | undefined): Pick<Cluster, 'origin' | 'assumed'> =>
  word === undefined || word === 'drawing'
    ? {}
    : { origin: word, ...(word === 'assumed' ? { assumed: true as const } : {}) };

const ofStation = (row: Station): readonly Cluster[] =>
  (['upper', 'lower'] as const).flatMap((which) => {
    const pair = row[which];
    if (!pair) return [];
    const height = which === 'upper' ? 'U' : 'L';
    const sides = pair.halfWidthIn === 0 ? (['C'] as const) : (['L', 'R'] as const);
    return sides.map((side): Cluster => {
      const y = side === 'L' ? -pair.halfWidthIn : pair.halfWidthIn;
      const id = `${height}${row.label}${side}`;
      return {
        id,
        at: [row.stationIn, y, pair.waterLineIn],
        station: row.label,
        height,
        side,
        from: 'table',
        ...originOf(row.origin),
      };
    });
  });

const unplaced = ({ origin: _, assumed: __, ...cluster }: Cluster): Cluster => cluster;

/** Clusters of the station table, then those the model moves or adds. A second row for the same id is left out. */
export const clustersOf = (
  model: Model,
  stations: readonly Station[],
): { clusters: ReadonlyMap<string, Cluster>; issues: readonly Issue[] } => {
  const clusters = new Map(stations.flatMap(ofStation).map((c) => [c.id, c]));
  const given = new Set<string>();
  const issues: Issue[] = [];
  for (const [k, row] of model.clusters.entries()) {
    if (given.has(row.id)) {
      issues.push(issue('duplicate-id', `clusters[${k}].id`, { id: row.id }, 'give-another-id'));
      continue;
    }
    given.add(row.id);
    const fitting = row.fitting === undefined ? {} : { fitting: row.fitting };
    const known = clusters.get(row.id);
    // A place given for one corner has an origin of its own; the row's does not hold for it.
    const own = originOf(row.assumed ? 'assumed' : row.origin);
    const same = known?.at.every((v, axis) => v === row.at[axis]);
    clusters.set(
      row.id,
      known
        ? {
            ...(same && row.origin === undefined ? known : unplaced(known)),
            ...{ at: row.at, ...fitting, from: same ? 'table' : 'moved', ...own },
          }
        : { id: row.id, at: row.at, ...readCluster(row.id), ...fitting, from: 'added', ...own },
    );
  }
  return { clusters, issues };
};

/**
 * The station every cluster counts as lying in, inches aft: its label's row; without a row the foremost cluster
 * that bears the label; without a label its own. So names do not change when one corner is moved a little.
 */
export const placesOf = (
  clusters: ReadonlyMap<string, Cluster>,
  stations: readonly Station[],
): ReadonlyMap<string, ClusterPlace> => {
  const byLabel = new Map<string, number>();
  for (const { station, at } of clusters.values())
    if (station) byLabel.set(station, Math.min(byLabel.get(station) ?? at[0], at[0]));
  for (const row of stations) byLabel.set(row.label, row.stationIn);
  return new Map(
    [...clusters.values()].map((c) => [
      c.id,
      { id: c.id, alongIn: (c.station === undefined ? undefined : byLabel.get(c.station)) ?? c.at[0] },
    ]),
  );
};
