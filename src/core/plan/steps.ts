import { hopsFrom } from '../loadPath/hops.ts';
import type { Design } from '../splice/result.ts';
import type { Truss } from '../truss/result.ts';
import { type Draft, holdId, idOf, inBay, need } from './draft.ts';
import { preparing, releaseId, releasing } from './prepare.ts';
import {
  type Around,
  bending,
  covering,
  fitting,
  inspecting,
  opening,
  protecting,
  welding,
} from './repair.ts';
import type { Material } from './result.ts';
import type { BayWork, Sequence } from './sequence.ts';
import { bayOf, type WorkUnit } from './units.ts';

/** Tubes bent back this near (clusters away) are straight before a tube is opened. Common practice, no source. */
const NEAR_HOPS = 2;

const materialsOf = (truss: Truss, design: Design | null, unit: WorkUnit): readonly Material[] => {
  if (design?.plan)
    return design.plan.parts.map(({ kind, tube, longIn }) => ({
      what: kind,
      ...sizeOf(tube),
      lengthIn: longIn.value,
    }));
  return truss.members
    .filter((m) => (unit.kind === 'member' ? m.id === unit.id : unit.opens.includes(m.id)))
    .map((m) => ({
      what: unit.way === 'open' ? 'section' : 'splitSleeve',
      ...sizeOf(m.section),
      lengthIn: null,
    }));
};
const sizeOf = ({ odIn, wallIn }: { readonly odIn: number; readonly wallIn: number }) => ({ odIn, wallIn });

const aroundOf = (
  truss: Truss,
  units: readonly WorkUnit[],
  sequence: Sequence,
  cuts: ReadonlyMap<string, readonly string[]>,
  design: (id: string) => Design | null,
): Around => {
  const early = new Set(sequence.early.map((o) => o.unit.id));
  return {
    design,
    isEarly: (id) => early.has(id),
    freedBy: (id) => [
      ...sequence.releases.flatMap((r) => (r.targets.includes(id) ? [releaseId(r.release)] : [])),
      ...[...early].flatMap((cut) =>
        (cuts.get(cut) ?? []).includes(id) ? [idOf('cut', cut), holdId('afterCutting', cut)] : [],
      ),
    ],
    bentNear: (unit) => {
      const hops = hopsFrom(truss, unit.clusters, NEAR_HOPS);
      return units
        .filter((u) => u.bend && u.id !== unit.id && hops.has(u.id))
        .map((u) => idOf('inspectBend', u.id));
    },
    materials: (unit) => materialsOf(truss, design(unit.id), unit),
  };
};

const bayScope = (
  kind: Draft['kind'],
  bay: string,
  members: readonly string[],
  needs: Draft['needs'],
  id?: string,
): Draft => ({
  id: id ?? idOf(kind, inBay(bay)),
  kind,
  scope: 'bay',
  bay,
  members,
  needs,
  materials: [],
});

/** All that is done at one set-up in a bay: opened and tacked one after the other, then welded together. */
const bayWork = (
  work: BayWork,
  round: number,
  releases: readonly string[],
  around: Around,
): readonly Draft[] => {
  const { bay, openings, covers, takeOut } = work;
  const units = [...openings.map((o) => o.unit), ...covers];
  const members = units.flatMap((u) => (u.kind === 'member' ? [u.id] : u.opens));
  const name = round === 0 ? inBay(bay) : `${inBay(bay)}:${round + 1}`;
  const held = new Set(takeOut.flatMap((b) => b.holds));
  const tacked = openings.flatMap((o) => [
    ...(around.isEarly(o.unit.id) ? [] : opening(o, releases, around)),
    ...fitting(o.unit, around),
  ]);
  const covered = covers.flatMap((u) => covering(u, around));
  const fire =
    round === 0
      ? [
          bayScope(
            'fire',
            bay,
            members,
            need('make-safe-first', 'defuel', 'battery', idOf('strip', inBay(bay))),
          ),
        ]
      : [];
  // Precautions last: they stand for the torch, once a bay.
  const first = [...tacked, ...covered].findIndex((d) => d.kind === 'tack');
  const before = [...tacked, ...covered].slice(0, first);
  const after = [...tacked, ...covered].slice(first);
  return [
    ...before,
    ...fire,
    ...after,
    ...welding(units),
    ...inspecting(units),
    ...takeOut.map((b) => ({
      ...bayScope(
        'unbrace',
        bay,
        b.holds,
        need(
          'hold-until-welded',
          ...units.filter((u) => u.opens.some((id) => held.has(id))).map((u) => idOf('weld', u.id)),
        ),
        `un${b.id}`,
      ),
    })),
    {
      ...bayScope(
        'trammel',
        bay,
        members,
        need(
          'measure-after-weld',
          ...units.map((u) => idOf('weld', u.id)),
          ...takeOut.map((b) => `un${b.id}`),
        ),
        holdId('afterWelding', name),
      ),
      hold: 'afterWelding',
    },
  ];
};

/** Bent back, bay by bay, and measured. */
const bendWork = (sequence: Sequence, around: Around): readonly Draft[] => {
  const bays = [...new Set(sequence.bends.map((u) => u.bay))];
  return bays.flatMap((bay) => {
    const here = sequence.bends.filter((u) => u.bay === bay);
    const measured: Draft = {
      ...bayScope(
        'trammel',
        bay,
        here.map((u) => u.id),
        need('crack-check-after-bend', ...here.map((u) => idOf('inspectBend', u.id))),
        holdId('afterSpreading', inBay(bay)),
      ),
      hold: 'afterSpreading',
    };
    return [...here.flatMap((u) => bending(u, around)), measured];
  });
};

/** Every step in the order worked out. Arrows to steps that this job has not are left out. */
export const stepsOf = (
  truss: Truss,
  all: readonly WorkUnit[],
  sequence: Sequence,
  cuts: ReadonlyMap<string, readonly string[]>,
  design: (id: string) => Design | null,
): readonly Draft[] => {
  const left = new Set(sequence.notPlanned.map((n) => n.id));
  const units = all.filter((u) => !left.has(u.id));
  if (units.length === 0) return [];
  const around = aroundOf(truss, units, sequence, cuts, design);
  const order = truss.bays.map((b) => b.id);
  const bays = [...new Set(units.map((u) => u.bay))]
    .sort((a, b) => order.indexOf(a) - order.indexOf(b))
    .map((bay) => ({ bay, members: units.filter((u) => u.bay === bay).map((u) => u.id) }));
  const releases = sequence.releases.map((r) => releaseId(r.release));
  const rounds = new Map<string, number>();
  const worked = sequence.bays.flatMap((work) => {
    const round = rounds.get(work.bay) ?? 0;
    rounds.set(work.bay, round + 1);
    return bayWork(work, round, releases, around);
  });
  const early = sequence.early.flatMap((o) => opening(o, releases, around));
  const bent = bendWork(sequence, around);
  const welds = worked.filter((d) => d.kind === 'weld' || d.kind === 'unbrace').map((d) => d.id);
  const checks = bent.filter((d) => d.kind === 'inspectBend').map((d) => d.id);
  const refits = releasing(sequence.releases, (id) => bayOf(truss, id)).map(
    (r): Draft => ({
      ...r,
      id: r.id.replace(/^release/, 'refit'),
      kind: 'refit',
      needs: need('refit-after-welds', ...welds, ...checks, r.id),
    }),
  );
  const still = [...worked, ...refits].filter((d) => d.kind !== 'tack').map((d) => d.id);
  const asLeft: Draft = {
    id: holdId('afterWelding'),
    kind: 'trammel',
    scope: 'job',
    members: [],
    needs: need(
      'as-left-last',
      ...still.filter((id) => /^(inspectWelds|unbrace|refit|hold:afterWelding)/.test(id)),
      ...checks,
    ),
    hold: 'afterWelding',
    materials: [],
  };
  const covered = units.flatMap(protecting);
  const weigh: Draft = {
    id: 'weigh',
    kind: 'weigh',
    scope: 'job',
    members: [],
    needs: need('weight-last', ...covered.map((d) => d.id)),
    materials: [],
  };
  const drafts = [
    ...preparing(bays),
    ...releasing(sequence.releases, (id) => bayOf(truss, id)),
    ...early,
    ...bent,
    ...worked,
    ...refits,
    asLeft,
    ...covered,
    weigh,
  ];
  const ids = new Set(drafts.map((d) => d.id));
  return drafts.map((d) => ({ ...d, needs: d.needs.filter((n) => ids.has(n.step)) }));
};
