import { type Issue, issue } from '../base/issue.ts';
import { distance, type Vec3 } from '../base/vec3.ts';
import type { Model } from '../job/modelSchema.ts';
import { wordAt } from './modelBracing.ts';
import { mirrorCluster, readCluster, readMember, sayMember } from './names.ts';
import type { Truss } from './result.ts';
import { expandTruss } from './truss.ts';

type Side = 'L' | 'R';
const otherHand = { left: 'right', right: 'left' } as const;

const clusterAcross = (id: string): string => mirrorCluster(id) ?? id;

/** A member id on the other hand, its two clusters in the order a member of that hand has. */
const memberAcross = (id: string): string => {
  const ends = readMember(id);
  if (!ends) return id;
  const [from, to] = [clusterAcross(ends.from), clusterAcross(ends.to)];
  const [a, b] = [readCluster(from), readCluster(to)];
  // Across one ring at one height the left end is named first on either hand.
  const swap = a && b && a.station === b.station && a.height === b.height && a.side === 'R';
  return swap ? sayMember(to, from, ends.nth) : sayMember(from, to, ends.nth);
};

/** Is the cluster or butt line on this side? A centre cluster is on neither. */
const on = (side: Side, id: string, y: number): boolean => {
  const name = readCluster(id);
  if (name) return name.side === side;
  return side === 'L' ? y < 0 : y > 0;
};

const across = (at: Vec3): [number, number, number] => [at[0], -at[1] + 0, at[2]];

/**
 * The model with what one side says by itself copied to the other: bracing words, openings, tube sizes, moved and added
 * clusters, members. What the other side said by itself is taken out. Diagonals of top, bottom and rings stay as they are.
 * A cluster that is put there counts as mirrored, not as measured.
 */
export const mirrored = (model: Model, from: Side): Model => {
  const to: Side = from === 'L' ? 'R' : 'L';
  const [face, other] = from === 'L' ? (['left', 'right'] as const) : (['right', 'left'] as const);
  const places = new Map(expandTruss(model).clusters.map((c) => [c.id, c.at]));
  const y = (id: string): number => places.get(id)?.[1] ?? 0;
  /** Which side a tube lies on wholly; null when it crosses over or lies in the middle. */
  const sideOf = (a: string, b: string): Side | null =>
    (['L', 'R'] as const).find((s) => {
      const far = s === 'L' ? 'R' : 'L';
      return (on(s, a, y(a)) || on(s, b, y(b))) && !on(far, a, y(a)) && !on(far, b, y(b));
    }) ?? null;
  const sideOfId = (id: string): Side | null => {
    const ends = readMember(id);
    return ends ? sideOf(ends.from, ends.to) : null;
  };

  const bracing = model.bracing
    .map((row) => ({ ...row, [other]: undefined }))
    .map((row) => {
      const word = wordAt(model, { at: row.at, face });
      const { left, right, ...rest } = row;
      return { ...rest, ...(word === 'none' ? {} : { left: word, right: word }) };
    })
    .filter((row, k, rows) => rows.findIndex((r) => r.at === row.at) === k) as Model['bracing'];

  const keptIds = (model.omitted ?? []).filter((id) => sideOfId(id) !== to);
  const omitted = [
    ...new Set([...keptIds, ...keptIds.filter((id) => sideOfId(id) === from).map(memberAcross)]),
  ];

  const sided = (o: Model['tubes']['overrides'][number]): Side | null =>
    o.member !== undefined ? sideOfId(o.member) : o.face === 'left' ? 'L' : o.face === 'right' ? 'R' : null;
  const overrides = model.tubes.overrides.flatMap((o) => {
    const side = sided(o);
    if (side === to) return [];
    if (side !== from) return [o];
    return [
      o,
      {
        ...o,
        ...(o.member === undefined ? {} : { member: memberAcross(o.member) }),
        ...(o.face === 'left' || o.face === 'right' ? { face: otherHand[o.face] } : {}),
      },
    ];
  });

  /** Added points of free name: the opposite one is found by place, else named after it. */
  const named = new Map<string, string>();
  for (const c of model.clusters) {
    if (!on(from, c.id, c.at[1])) continue;
    const twin = model.clusters.find(
      (o) => readCluster(o.id) === null && on(to, o.id, o.at[1]) && distance(o.at, across(c.at)) < 1 / 64,
    );
    named.set(c.id, mirrorCluster(c.id) ?? twin?.id ?? `${c.id}-${to}`);
  }
  const clusterTo = (id: string): string => named.get(id) ?? clusterAcross(id);
  const clusters = model.clusters.flatMap((c) => {
    if (on(to, c.id, c.at[1])) return [];
    const twin = named.get(c.id);
    if (twin === undefined) return [c];
    const { assumed: _, origin: __, ...rest } = c;
    const mine = model.clusters.find((o) => o.id === twin);
    return [
      c,
      {
        ...rest,
        ...(mine?.fitting === undefined ? {} : { fitting: mine.fitting }),
        id: twin,
        at: across(c.at),
        origin: c.assumed || c.origin === 'assumed' ? ('assumed' as const) : ('mirrored' as const),
      },
    ];
  });

  const members = model.members.flatMap((m) => {
    const side = sideOf(m.from, m.to);
    if (side === to) return [];
    if (side !== from) return [m];
    const { id, shopNumber: _, ...rest } = m;
    return [
      m,
      {
        ...rest,
        ...(id === undefined ? {} : { id: memberAcross(id) }),
        from: clusterTo(m.from),
        to: clusterTo(m.to),
      },
    ];
  });
  return { ...model, bracing, omitted, tubes: { ...model.tubes, overrides }, clusters, members };
};

/**
 * Every way in which left and right differ: places of twins, their tubes, tubes with no twin; of all tubes, however many
 * differ (the list of what is odd says nothing when a truss is plainly not symmetric).
 *
 * @param toleranceIn  twins nearer than this to each other's mirror place count as alike; 1/64 in is what a rounded drawing may show
 */
export const asymmetries = (truss: Truss, toleranceIn = 1 / 64): readonly Issue[] => {
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const byId = new Map(truss.members.map((m) => [m.id, m]));
  const paired = new Set(truss.pairs.flatMap((p) => [p.left, p.right]));
  const unlike = truss.pairs.flatMap((p): readonly Issue[] => {
    const facts = { left: p.left, right: p.right };
    if (p.kind === 'cluster') {
      const offIn = distance(across(at.get(p.left)!), at.get(p.right)!);
      return offIn > toleranceIn ? [issue('twins-differ', '', { ...facts, offIn }, 'check-both-sides')] : [];
    }
    const [a, b] = [byId.get(p.left)!, byId.get(p.right)!];
    const alike =
      a.material === b.material && a.section.odIn === b.section.odIn && a.section.wallIn === b.section.wallIn;
    return alike ? [] : [issue('twins-differ', '', facts, 'check-both-sides')];
  });
  const lone = truss.members
    .filter((m) => m.side !== 'C' && !paired.has(m.id))
    .map((m) => issue('no-twin', '', { id: m.id }, 'check-both-sides'));
  return [...unlike, ...lone];
};
