import { distance, type Vec3 } from '../../../src/core/base/vec3.ts';
import type { Model } from '../../../src/core/job/modelSchema.ts';
import type { HeldNow } from '../../../src/core/statics/held.ts';
import type { Cluster, Member, Section, Truss } from '../../../src/core/truss/result.ts';

/** Section numbers of a round 4130 tube, by the textbook formulas. */
export const tube = (odIn: number, wallIn: number): Section => {
  const idIn = odIn - 2 * wallIn;
  const inertiaIn4 = (Math.PI / 64) * (odIn ** 4 - idIn ** 4);
  return {
    odIn,
    wallIn,
    areaIn2: (Math.PI / 4) * (odIn ** 2 - idIn ** 2),
    inertiaIn4,
    torsionIn4: 2 * inertiaIn4,
    elasticPsi: 29e6,
    shearPsi: 11e6,
    yieldPsi: 75_000,
    densityLbIn3: 0.283,
  };
};

export type Bar = readonly [from: string, to: string, section?: Section | undefined, ends?: Member['ends']];

/** A truss from places and bars alone. */
export const trussOf = (
  places: Readonly<Record<string, Vec3>>,
  bars: readonly Bar[],
  section: Section = tube(0.75, 0.035),
): Truss => {
  const clusters = Object.entries(places).map(([id, at]): Cluster => ({ id, at, from: 'added' }));
  const members = bars.map(
    ([from, to, own, ends]): Member => ({
      id: `${from}-${to}`,
      from,
      to,
      role: 'other',
      faces: [],
      side: 'C',
      lengthIn: distance(places[from]!, places[to]!),
      material: '4130N',
      section: own ?? section,
      ends: ends ?? ['welded', 'welded'],
      fixity: 1,
      bolted: false,
      near: [],
    }),
  );
  return { clusters, members, bays: [], faces: [], pairs: [], odd: [], issues: [] };
};

/** Supports for tests: clusters and the freedoms held at each. */
export const heldAt = (
  held: Readonly<Record<string, HeldNow['held'][number]['fixed']>>,
  joints: HeldNow['joints'] = 'welded',
): HeldNow => ({
  heldAs: 'test',
  ranked: true,
  joints,
  held: Object.entries(held).map(([cluster, fixed]) => ({ cluster, fixed })),
  braces: [],
  issues: [],
});

export const ALL = ['x', 'y', 'z', 'rx', 'ry', 'rz'] as const;
export const POINT = ['x', 'y', 'z'] as const;

/** A box truss like a fuselage, tapering aft: 12 members a bay and 5 at the front, one diagonal in each face, one across. */
export const boxTruss = (bays: number, bayIn = 24): Truss => {
  const places: Record<string, Vec3> = {};
  const bars: Bar[] = [];
  const longeron = tube(0.875, 0.049);
  const brace = tube(0.625, 0.035);
  for (let s = 0; s <= bays; s++) {
    const taper = 1 - (0.6 * s) / bays;
    const [half, up] = [15 * taper, 16 * taper];
    places[`U${s}L`] = [bayIn * s, -half, up];
    places[`U${s}R`] = [bayIn * s, half, up];
    places[`L${s}L`] = [bayIn * s, -half, -up];
    places[`L${s}R`] = [bayIn * s, half, -up];
    for (const [a, b] of [
      ['U', 'L'],
      ['L', 'R'],
    ] as const) {
      if (a === 'U') for (const side of ['L', 'R']) bars.push([`U${s}${side}`, `${b}${s}${side}`, brace]);
      else for (const h of ['U', 'L']) bars.push([`${h}${s}L`, `${h}${s}R`, brace]);
    }
    if (s === 0) {
      bars.push(['U0L', 'L0R', brace]);
      continue;
    }
    for (const h of ['U', 'L'])
      for (const side of ['L', 'R']) bars.push([`${h}${s - 1}${side}`, `${h}${s}${side}`, longeron]);
    const turn = s % 2 === 0;
    for (const side of ['L', 'R'])
      bars.push(
        turn ? [`U${s - 1}${side}`, `L${s}${side}`, brace] : [`L${s - 1}${side}`, `U${s}${side}`, brace],
      );
    for (const h of ['U', 'L'])
      bars.push(turn ? [`${h}${s - 1}L`, `${h}${s}R`, brace] : [`${h}${s - 1}R`, `${h}${s}L`, brace]);
  }
  return trussOf(places, bars);
};

/** A model that holds nothing but what statics reads: joints, set-ups, load cases. */
export const modelOf = (parts: Partial<Model>): Model => ({
  format: 'tubewright-model',
  version: 1,
  name: 'test',
  source: 'invented',
  datum: 'none',
  drawnIn: 'in',
  joints: 'welded',
  stations: [],
  bracing: [],
  tubes: { material: '4130N', roles: {}, overrides: [] },
  clusters: [],
  members: [],
  setups: [],
  loadCases: [],
  distances: [],
  ...parts,
});
