import * as z from 'zod/mini';
import { type Issue, ok, type Result, refused } from '../base/issue.ts';
import {
  type LoadCase,
  type Model,
  modelSchema,
  type Role,
  type Setup,
  type Station,
  type Tube,
} from '../job/modelSchema.ts';
import { inFileOrder, schemaIssues } from '../job/schemaIssues.ts';
import { type BracingCell, braced, copyBay } from './modelBracing.ts';
import { addRow, insertRow, removeRow, setRow } from './modelStations.ts';
import { mirrored } from './symmetry.ts';

type ClusterRow = Model['clusters'][number];
type MemberRow = Model['members'][number];
type Override = Model['tubes']['overrides'][number];
type Distance = Model['distances'][number];

/** Every change a person can make to a model on the bench, as data. */
export type ModelChange =
  | {
      readonly kind: 'describe';
      readonly set: Partial<Pick<Model, 'name' | 'source' | 'datum' | 'drawnIn' | 'joints'>>;
    }
  | { readonly kind: 'addStation'; readonly row: Station }
  /** Half-way to the next station aft, as `4a`; both halves of the bay keep its bracing words. */
  | { readonly kind: 'insertStation'; readonly after: string }
  /** With everything that names it. */
  | { readonly kind: 'removeStation'; readonly label: string }
  | { readonly kind: 'setStation'; readonly label: string; readonly row: Station }
  | {
      readonly kind: 'setBracing';
      readonly cells: readonly BracingCell[];
      readonly word: string;
    }
  | { readonly kind: 'copyBay'; readonly from: string; readonly to: readonly string[] }
  | { readonly kind: 'setMaterial'; readonly material: string }
  | { readonly kind: 'setTube'; readonly role: Role; readonly tube: Tube | null }
  | { readonly kind: 'addOverride'; readonly override: Override }
  | { readonly kind: 'setOverride'; readonly at: number; readonly override: Override }
  /** Before the one it stands behind, or behind the one it stands before: later ones outrank. */
  | { readonly kind: 'moveOverride'; readonly at: number; readonly by: -1 | 1 }
  | { readonly kind: 'removeOverride'; readonly at: number }
  | { readonly kind: 'omit'; readonly id: string }
  | { readonly kind: 'restore'; readonly id: string }
  | { readonly kind: 'setCluster'; readonly row: ClusterRow }
  | { readonly kind: 'removeCluster'; readonly id: string }
  /** A row between the same two clusters, or of the same id, is replaced. */
  | { readonly kind: 'setMember'; readonly row: MemberRow }
  | { readonly kind: 'removeMember'; readonly at: number }
  | { readonly kind: 'setDistance'; readonly row: Distance }
  | { readonly kind: 'removeDistance'; readonly at: number }
  | { readonly kind: 'setSetup'; readonly row: Setup }
  | { readonly kind: 'removeSetup'; readonly id: string }
  | { readonly kind: 'setLoadCase'; readonly row: LoadCase }
  | { readonly kind: 'removeLoadCase'; readonly id: string }
  | { readonly kind: 'mirrorSide'; readonly from: 'L' | 'R' }
  /** Rows of a table in place of those with the same label, id or ends; others stay. */
  | { readonly kind: 'takeStations'; readonly rows: readonly Station[] }
  | { readonly kind: 'takeClusters'; readonly rows: readonly ClusterRow[] }
  | { readonly kind: 'takeMembers'; readonly rows: readonly MemberRow[] };

export type ModelChangeName = ModelChange['kind'];

const without = <T>(rows: readonly T[], at: number): T[] => rows.filter((_, k) => k !== at);

/** The row in place of the first like it, else behind the others. */
const put = <T>(rows: readonly T[], row: T, like: (other: T) => boolean): T[] => {
  const at = rows.findIndex(like);
  return at < 0 ? [...rows, row] : rows.map((other, k) => (k === at ? row : other));
};

const moved = <T>(rows: readonly T[], at: number, by: -1 | 1): T[] => {
  const row = rows[at];
  if (row === undefined || rows[at + by] === undefined) return [...rows];
  return without(rows, at).toSpliced(at + by, 0, row);
};

const withOverrides = (model: Model, overrides: Override[]): Model => ({
  ...model,
  tubes: { ...model.tubes, overrides },
});

const sameEnds = (a: { from: string; to: string }, b: { from: string; to: string }): boolean =>
  (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);

const sameMember = (row: MemberRow) => (other: MemberRow) =>
  row.id !== undefined && other.id !== undefined ? row.id === other.id : sameEnds(row, other);

const withRole = (model: Model, role: Role, tube: Tube | null): Model => {
  const { [role]: _, ...rest } = model.tubes.roles;
  return { ...model, tubes: { ...model.tubes, roles: tube ? { ...rest, [role]: tube } : rest } };
};

const applied = (model: Model, change: ModelChange): Model | Issue => {
  switch (change.kind) {
    case 'describe':
      return { ...model, ...change.set };
    case 'addStation':
      return addRow(model, change.row);
    case 'insertStation':
      return insertRow(model, change.after);
    case 'removeStation':
      return removeRow(model, change.label);
    case 'setStation':
      return setRow(model, change.label, change.row);
    case 'takeStations':
      return change.rows.reduce<Model | Issue>((made, row) => {
        if (!('format' in made)) return made;
        return made.stations.some((s) => s.label === row.label)
          ? setRow(made, row.label, row)
          : addRow(made, row);
      }, model);
    case 'setBracing':
      return braced(model, change.cells, change.word);
    case 'copyBay':
      return copyBay(model, change.from, change.to);
    case 'setMaterial':
      return { ...model, tubes: { ...model.tubes, material: change.material } };
    case 'setTube':
      return withRole(model, change.role, change.tube);
    case 'addOverride':
      return withOverrides(model, [...model.tubes.overrides, change.override]);
    case 'setOverride':
      return withOverrides(
        model,
        model.tubes.overrides.map((o, k) => (k === change.at ? change.override : o)),
      );
    case 'moveOverride':
      return withOverrides(model, moved(model.tubes.overrides, change.at, change.by));
    case 'removeOverride':
      return withOverrides(model, without(model.tubes.overrides, change.at));
    case 'omit':
      return { ...model, omitted: [...new Set([...(model.omitted ?? []), change.id])] };
    case 'restore':
      return { ...model, omitted: (model.omitted ?? []).filter((id) => id !== change.id) };
    case 'setCluster':
      return { ...model, clusters: put(model.clusters, change.row, (c) => c.id === change.row.id) };
    case 'takeClusters':
      return {
        ...model,
        clusters: change.rows.reduce(
          (rows, row) => put(rows, row, (c) => c.id === row.id),
          [...model.clusters],
        ),
      };
    case 'removeCluster':
      return {
        ...model,
        clusters: model.clusters.filter((c) => c.id !== change.id),
        // A moved cluster goes back to its place in the table and keeps its tubes; one that the table does not make is gone.
        members: madeByTable(model, change.id)
          ? model.members
          : model.members.filter((m) => m.from !== change.id && m.to !== change.id),
      };
    case 'setMember':
      return { ...model, members: put(model.members, change.row, sameMember(change.row)) };
    case 'takeMembers':
      return {
        ...model,
        members: change.rows.reduce((rows, row) => put(rows, row, sameMember(row)), [...model.members]),
      };
    case 'removeMember':
      return { ...model, members: without(model.members, change.at) };
    case 'setDistance':
      return { ...model, distances: put(model.distances, change.row, (d) => sameEnds(d, change.row)) };
    case 'removeDistance':
      return { ...model, distances: without(model.distances, change.at) };
    case 'setSetup':
      return { ...model, setups: put(model.setups, change.row, (s) => s.id === change.row.id) };
    case 'removeSetup':
      return { ...model, setups: model.setups.filter((s) => s.id !== change.id) };
    case 'setLoadCase':
      return { ...model, loadCases: put(model.loadCases, change.row, (c) => c.id === change.row.id) };
    case 'removeLoadCase':
      return { ...model, loadCases: model.loadCases.filter((c) => c.id !== change.id) };
    case 'mirrorSide':
      return mirrored(model, change.from);
    default: {
      const never: never = change;
      return never;
    }
  }
};

const madeByTable = (model: Model, id: string): boolean =>
  model.stations.some((row) =>
    (['upper', 'lower'] as const).some((which) => {
      const pair = row[which];
      const sides = pair?.halfWidthIn === 0 ? ['C'] : ['L', 'R'];
      return pair && sides.some((side) => `${which === 'upper' ? 'U' : 'L'}${row.label}${side}` === id);
    }),
  );

/**
 * The model after a change a person made on the bench; the one before is left as it was.
 * Fails with every issue when the change names nothing or the model would no longer be readable; paths are the model's.
 */
export const editModel = (model: Model, change: ModelChange): Result<Model> => {
  const after = applied(model, change);
  if (!('format' in after)) return refused([after]);
  const parsed = z.safeParse(modelSchema, after);
  return parsed.success ? ok(after) : refused(inFileOrder(schemaIssues(parsed.error.issues, after), after));
};

/** A model with nothing in it, to be filled on the bench. Its name and datum are still to be said. */
export const blankModel = (drawnIn: Model['drawnIn']): Model => ({
  format: 'tubewright-model',
  version: 1,
  name: 'Model without a name',
  source: '',
  datum: '',
  drawnIn,
  joints: 'welded',
  stations: [],
  bracing: [],
  tubes: { material: '4130N', roles: {}, overrides: [] },
  omitted: [],
  clusters: [],
  members: [],
  setups: [],
  loadCases: [],
  distances: [],
});
