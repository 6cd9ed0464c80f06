import { hopsFrom } from '../loadPath/hops.ts';
import type { Design } from '../splice/result.ts';
import type { Truss } from '../truss/result.ts';
import { type Draft, holdId, idOf, inBay, need } from './draft.ts';
import { preparing, releaseId, releasing } from './prepare.ts';
import {
  type Around,
  backId,
  bending,
  covering,
  fitting,
  inspecting,
  isWelded,
  opening,
  outId,
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
  const unitOf = new Map(units.map((u) => [u.id, u]));
  return {
    design,
    isEarly: (id) => early.has(id),
    closing: (members) => units.filter((u) => u.opens.some((id) => members.includes(id))).map(closeId),
    freedBy: (id) => [
      ...sequence.releases.flatMap((r) => (r.targets.includes(id) ? [releaseId(r.release)] : [])),
      ...[...early].flatMap((cut) =>
        (cuts.get(cut) ?? []).includes(id) ? [outId(unitOf.get(cut)!), holdId('afterCutting', cut)] : [],
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

/** The step after which a repair is closed for good. */
const closeId = (u: WorkUnit): string => (u.bolted ? backId(u) : idOf('weld', u.id));

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
  lit: boolean,
  releases: readonly string[],
  around: Around,
): readonly Draft[] => {
  const { bay, openings, covers, takeOut } = work;
  const units = [...openings.map((o) => o.unit), ...covers];
  const members = units.flatMap((u) => (u.kind === 'member' ? [u.id] : u.opens));
  const name = round === 0 ? inBay(bay) : `${inBay(bay)}:${round + 1}`;
  const tacked = openings.flatMap((o) => [
    ...(around.isEarly(o.unit.id) ? [] : opening(o, releases, around)),
    ...fitting(o.unit, around),
  ]);
  const covered = covers.flatMap((u) => covering(u, around));
  const worked = [...tacked, ...covered];
  const torch = lit ? -1 : worked.findIndex((d) => d.kind === 'tack');
  const fire = bayScope(
    'fire',
    bay,
    members,
    need('make-safe-first', 'defuel', 'battery', idOf('strip', inBay(bay))),
  );
  return [
    // Once a bay, as late as can be: precautions stand for the torch.
    ...(torch < 0 ? worked : [...worked.slice(0, torch), fire, ...worked.slice(torch)]),
    ...welding(units.filter(isWelded)),
    ...inspecting(units.filter(isWelded)),
    ...takeOut.map((b) => ({
      ...bayScope(
        'unbrace',
        bay,
        b.holds,
        need('hold-until-welded', ...around.closing(b.holds)),
        `un${b.id}`,
      ),
    })),
    {
      ...bayScope(
        'trammel',
        bay,
        members,
        need('measure-after-weld', ...units.map(closeId), ...takeOut.map((b) => `un${b.id}`)),
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
  const lit = new Set<string>();
  const worked = sequence.bays.flatMap((work) => {
    const round = rounds.get(work.bay) ?? 0;
    rounds.set(work.bay, round + 1);
    const drafts = bayWork(work, round, lit.has(work.bay), releases, around);
    if (drafts.some((d) => d.kind === 'fire')) lit.add(work.bay);
    return drafts;
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
