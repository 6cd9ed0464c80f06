import { type Issue, issue } from '../base/issue.ts';
import type { Model, Station } from '../job/modelSchema.ts';
import { compareIds, readCluster, readMember } from './names.ts';

const inOrder = (rows: readonly Station[]): Station[] =>
  rows.toSorted((a, b) => a.stationIn - b.stationIn || compareIds(a.label, b.label));

const unknown = (label: string): Issue => issue('unknown-station', 'stations', { label }, 'name-a-station');

const taken = (label: string): Issue =>
  issue('duplicate-station', 'stations', { label }, 'give-another-label');

export const addRow = (model: Model, row: Station): Model | Issue =>
  model.stations.some((s) => s.label === row.label)
    ? taken(row.label)
    : { ...model, stations: inOrder([...model.stations, row]) };

/** The row in place of the one with this label; another label only when nothing has it yet. */
export const setRow = (model: Model, label: string, row: Station): Model | Issue => {
  if (!model.stations.some((s) => s.label === label)) return unknown(label);
  if (row.label !== label) return taken(row.label);
  return { ...model, stations: inOrder(model.stations.map((s) => (s.label === label ? row : s))) };
};

type Pair = Station['upper'];
const halfWay = (a: Pair, b: Pair): Pair =>
  a && b
    ? {
        waterLineIn: (a.waterLineIn + b.waterLineIn) / 2,
        halfWidthIn: (a.halfWidthIn + b.halfWidthIn) / 2,
      }
    : undefined;

/** `4` → `4a`, or the first letter that is free; null when all are taken. */
export const labelAfter = (label: string, stations: readonly Station[]): string | null => {
  const number = /^\d+/.exec(label)?.[0] ?? label;
  const used = new Set(stations.map((s) => s.label));
  const letter = [...'abcdefghijklmnopqrstuvwxyz'].find((l) => !used.has(`${number}${l}`));
  return letter === undefined ? null : `${number}${letter}`;
};

/** The next whole number above every label. */
export const nextLabel = (stations: readonly Station[]): string =>
  `${stations.reduce((most, s) => Math.max(most, Number.parseInt(s.label, 10)), 0) + 1}`;

export const insertRow = (model: Model, after: string): Model | Issue => {
  const rows = inOrder(model.stations);
  const k = rows.findIndex((s) => s.label === after);
  const [fwd, aft] = [rows[k], rows[k + 1]];
  const label = labelAfter(after, rows);
  if (!fwd || !aft || label === null) return unknown(after);
  const upper = halfWay(fwd.upper, aft.upper);
  const lower = halfWay(fwd.lower, aft.lower);
  const row: Station = {
    label,
    stationIn: (fwd.stationIn + aft.stationIn) / 2,
    ...(upper ? { upper } : {}),
    ...(lower ? { lower } : {}),
    origin: 'assumed',
  };
  const words = model.bracing.findLast((b) => b.at === after);
  const { ring: _, ...faces } = words ?? { at: label };
  return {
    ...model,
    stations: inOrder([...rows, row]),
    bracing: words ? [...model.bracing, { ...faces, at: label }] : model.bracing,
  };
};

/** Does a cluster or member id name this station? */
const names = (label: string) => {
  const cluster = (id: string): boolean => readCluster(id)?.station === label;
  const member = (id: string): boolean => {
    const ends = readMember(id);
    return ends !== null && (cluster(ends.from) || cluster(ends.to));
  };
  return { cluster, member };
};

/** Takes the station out, and every row of the model that names it or one of its clusters. */
export const removeRow = (model: Model, label: string): Model | Issue => {
  if (!model.stations.some((s) => s.label === label)) return unknown(label);
  const { cluster, member } = names(label);
  const between = ({ from, to }: { from: string; to: string }): boolean => cluster(from) || cluster(to);
  return {
    ...model,
    stations: model.stations.filter((s) => s.label !== label),
    bracing: model.bracing.filter((b) => b.at !== label),
    tubes: {
      ...model.tubes,
      overrides: model.tubes.overrides.filter(
        (o) => o.bay !== label && o.station !== label && !(o.member !== undefined && member(o.member)),
      ),
    },
    omitted: (model.omitted ?? []).filter((id) => !member(id)),
    clusters: model.clusters.filter((c) => !cluster(c.id)),
    members: model.members.filter((m) => !between(m)),
    setups: model.setups.map((s) => ({ ...s, held: s.held.filter((h) => !cluster(h.cluster)) })),
    loadCases: model.loadCases.map((c) => ({
      ...c,
      loads: c.loads.filter((l) => !cluster(l.cluster)),
      ...(c.weights ? { weights: c.weights.filter((w) => !cluster(w.cluster)) } : {}),
    })),
    distances: model.distances.filter((d) => !between(d)),
  };
};
