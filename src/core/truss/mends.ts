import type { Issue } from '../base/issue.ts';
import type { Model, Tube } from '../job/modelSchema.ts';
import type { BracingCell } from './modelBracing.ts';
import type { ModelChange } from './modelEdit.ts';
import { mirrorCluster } from './names.ts';
import type { Cluster, Member, Truss } from './result.ts';
import { materialOf, nearestStock, roundSection } from './stock.ts';

/** What a mend does, worded where it is pressed. */
export type MendName =
  | 'takeWordOut'
  | 'takeOpeningOut'
  | 'takeSizeOut'
  | 'takeClusterOut'
  | 'takeTubeOut'
  | 'takeLineOut'
  | 'takeDistanceOut'
  | 'takeStockSize'
  | 'takeMaterial'
  | 'rightAsLeft'
  | 'leftAsRight'
  | 'addTwin';

/** One way out of something odd, as changes made at once. */
export interface Mend {
  readonly name: MendName;
  /** The size or material it takes. */
  readonly tube?: Tube;
  readonly material?: string;
  readonly changes: readonly ModelChange[];
}

type MemberRow = Model['members'][number];

const placeIn = (at: string, list: string): number | null => {
  const found = new RegExp(`^${list.replace('.', '\\.')}\\[(\\d+)\\]`).exec(at)?.[1];
  return found === undefined ? null : Number(found);
};

const sameTube = (a: Tube | undefined, b: Tube): boolean => a?.odIn === b.odIn && a.wallIn === b.wallIn;

/** Every place that gives a size, given another one. */
const replaced = (model: Model, old: Tube, tube: Tube): readonly ModelChange[] => [
  ...Object.entries(model.tubes.roles).flatMap(([role, size]): ModelChange[] =>
    sameTube(size, old) ? [{ kind: 'setTube', role: role as keyof Model['tubes']['roles'], tube }] : [],
  ),
  ...model.tubes.overrides.flatMap((o, at): ModelChange[] =>
    sameTube(o.tube, old) ? [{ kind: 'setOverride', at, override: { ...o, tube } }] : [],
  ),
  ...model.members.flatMap((row): ModelChange[] =>
    sameTube(row.tube, old) ? [{ kind: 'setMember', row: { ...row, tube } }] : [],
  ),
];

const rowOf = (model: Model, member: Member): number =>
  model.members.findIndex(
    (m) => (m.id ?? `${m.from}-${m.to}`) === member.id || (m.from === member.from && m.to === member.to),
  );

/** A tube given the size, material and numbers of another. */
const sizedAs = (model: Model, member: Member, as: Member): ModelChange => {
  const {
    tube: _,
    section: __,
    ...own
  } = model.members[rowOf(model, member)] ?? {
    from: member.from,
    to: member.to,
  };
  const section = model.members[rowOf(model, as)]?.section;
  const size = { ...(as.tube ? { tube: as.tube } : {}), ...(section ? { section } : {}) };
  return { kind: 'setMember', row: { ...own, ...size, material: as.material } as MemberRow };
};

const placedAs = (model: Model, cluster: Cluster, as: Cluster): ModelChange => {
  const { assumed: _, ...own } = model.clusters.find((c) => c.id === cluster.id) ?? { id: cluster.id };
  const at: [number, number, number] = [as.at[0], -as.at[1] + 0, as.at[2]];
  return { kind: 'setCluster', row: { ...own, at, origin: as.assumed ? 'assumed' : 'mirrored' } };
};

const twins = (left: string, right: string, model: Model, truss: Truss): readonly Mend[] => {
  const [a, b] = [left, right].map((id) => truss.members.find((m) => m.id === id));
  const [p, q] = [left, right].map((id) => truss.clusters.find((c) => c.id === id));
  if (a && b)
    return [
      { name: 'rightAsLeft', changes: [sizedAs(model, b, a)] },
      { name: 'leftAsRight', changes: [sizedAs(model, a, b)] },
    ];
  if (p && q)
    return [
      { name: 'rightAsLeft', changes: [placedAs(model, q, p)] },
      { name: 'leftAsRight', changes: [placedAs(model, p, q)] },
    ];
  return [];
};

/** A tube left out, by whichever way it was made. */
const without = (model: Model, member: Member): readonly ModelChange[] => {
  const at = rowOf(model, member);
  const own = model.members[at];
  return own && member.role === 'other'
    ? [{ kind: 'removeMember', at }]
    : [...(own ? [{ kind: 'removeMember', at } as const] : []), { kind: 'omit', id: member.id }];
};

const lone = (id: string, model: Model, truss: Truss): readonly Mend[] => {
  const member = truss.members.find((m) => m.id === id);
  if (!member) return [];
  const [from, to] = [member.from, member.to].map((end) => mirrorCluster(end) ?? end) as [string, string];
  const known = (end: string): boolean => truss.clusters.some((c) => c.id === end);
  const out = (model.omitted ?? []).find((one) => one === `${from}-${to}` || one === `${to}-${from}`);
  const { id: _, shopNumber: __, ...own } = model.members[rowOf(model, member)] ?? {};
  const changes: readonly ModelChange[] = [
    ...(out === undefined ? [] : [{ kind: 'restore', id: out } as const]),
    ...(out === undefined || member.tube
      ? [
          {
            kind: 'setMember',
            row: { ...own, from, to, ...(member.tube ? { tube: member.tube } : {}) },
          } as const,
        ]
      : []),
  ];
  return [
    ...(known(from) && known(to) ? [{ name: 'addTwin', changes } as const] : []),
    { name: 'takeTubeOut', changes: without(model, member) },
  ];
};

/** The line of a way to be held or of a load case that names a cluster the model has not. */
const lineOut = (at: string, model: Model): readonly ModelChange[] => {
  const [, list, k, rows, j] = /^(setups|loadCases)\[(\d+)\]\.(held|loads|weights)\[(\d+)\]/.exec(at) ?? [];
  const [row, line] = [Number(k), Number(j)];
  if (list === 'setups') {
    const setup = model.setups[row]!;
    return [{ kind: 'setSetup', row: { ...setup, held: setup.held.filter((_, i) => i !== line) } }];
  }
  if (list !== 'loadCases') return [];
  const load = model.loadCases[row]!;
  const left = rows === 'loads' ? load.loads : (load.weights ?? []);
  const kept = left.filter((_, i) => i !== line);
  return [{ kind: 'setLoadCase', row: { ...load, [rows!]: kept } }];
};

/** Ways out of one thing that is odd, each made with one press; empty where a person has to look. */
export const mendsOf = ({ code, at, facts }: Issue, model: Model, truss: Truss): readonly Mend[] => {
  const id = typeof facts.id === 'string' ? facts.id : null;
  const ids = Array.isArray(facts.ids) ? facts.ids.map(String) : [];
  const member = placeIn(at, 'members');
  const cluster = placeIn(at, 'clusters');
  const distance = placeIn(at, 'distances');
  const override = placeIn(at, 'tubes.overrides');
  const one = (name: MendName, ...changes: readonly ModelChange[]): readonly Mend[] => [{ name, changes }];
  switch (code) {
    case 'bracing-makes-nothing': {
      const cells = [{ at: String(facts.at), face: facts.face as BracingCell['face'] }];
      return one('takeWordOut', { kind: 'setBracing', cells, word: 'none' });
    }
    case 'omitted-names-nothing':
      return id === null ? [] : one('takeOpeningOut', { kind: 'restore', id });
    case 'override-names-nothing':
      return override === null ? [] : one('takeSizeOut', { kind: 'removeOverride', at: override });
    case 'loose-cluster':
      return id !== null && model.clusters.some((c) => c.id === id)
        ? one('takeClusterOut', { kind: 'removeCluster', id })
        : [];
    case 'doubled-member': {
      const row = model.members.findLastIndex((m) => ids.includes(m.id ?? `${m.from}-${m.to}`));
      return row < 0 ? [] : one('takeTubeOut', { kind: 'removeMember', at: row });
    }
    case 'duplicate-id':
    case 'zero-length':
    case 'unknown-cluster': {
      if (member !== null) return one('takeTubeOut', { kind: 'removeMember', at: member });
      if (cluster !== null && id !== null) return [];
      if (distance !== null) return one('takeDistanceOut', { kind: 'removeDistance', at: distance });
      const changes = lineOut(at, model);
      return changes.length > 0 ? one('takeLineOut', ...changes) : [];
    }
    case 'drawing-against-stations':
      return distance === null ? [] : one('takeDistanceOut', { kind: 'removeDistance', at: distance });
    case 'tube-not-in-stock':
    case 'wall-too-thick': {
      const old = { odIn: Number(facts.odIn), wallIn: Number(facts.wallIn) };
      const tube = nearestStock(old);
      const changes = tube && roundSection(tube) ? replaced(model, old, tube) : [];
      return tube && changes.length > 0 ? [{ name: 'takeStockSize', tube, changes }] : [];
    }
    case 'unknown-material': {
      const row = member === null ? undefined : model.members[member];
      const material = row ? model.tubes.material : '4130N';
      if (!materialOf(material)) return [];
      const { material: _, ...rest } = row ?? {};
      const change: ModelChange = row
        ? { kind: 'setMember', row: rest as MemberRow }
        : { kind: 'setMaterial', material };
      return [{ name: 'takeMaterial', material, changes: [change] }];
    }
    case 'twins-differ':
      return twins(String(facts.left), String(facts.right), model, truss);
    case 'no-twin':
      return id === null ? [] : lone(id, model, truss);
    default:
      return [];
  }
};
