import type { Seeded } from '../base/seeded.ts';
import { dot } from '../base/vec3.ts';
import type { Damage, Finding } from '../job/jobSchema.ts';
import { capacityLbf } from '../statics/capacity.ts';
import { clockDirection, clockFace } from '../truss/place.ts';
import type { Member, Truss } from '../truss/result.ts';
import type { Blow, Task } from './exercise.ts';
import type { Strained } from './strained.ts';

/**
 * Shortening beyond the buckling load per unit of overload, in elastic shortenings, and the deepest bend as a share of the
 * tube; starting values of ours. Where a trammel is to be practised the blow lasts longer: what it moves must be measurable.
 */
const severity = {
  hidden: { ductility: 3, deepest: 1 / 16 },
  trammel: { ductility: 20, deepest: 1 / 10 },
} as const satisfies Record<Task, unknown>;
/** Record stamp of what nobody entered. */
export const stamp = { by: 'exercise', at: '2000-01-01T00:00:00Z', device: 'exercise' } as const;
const sixteenth = (valueIn: number): number => Math.round(valueIn * 16) / 16;
const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

const found = (damage: Damage, of: string, more: object): Finding =>
  ({ kind: 'finding', id: '', ...stamp, damage, of, origin: 'thisAccident', ...more }) as Finding;

/**
 * The bend of a tube pressed past its load: e from the shortening it takes up.
 *
 *   bow  δ = π²e²/4L     kink at a (b = L − a)  δ = e²L/2ab
 */
export const bend = (
  { member, bendingShare, worse }: Strained,
  over: number,
  chance: Seeded,
  task: Task,
): Finding => {
  const { ductility, deepest } = severity[task];
  const { lengthIn: length, section } = member;
  const cap = capacityLbf(member, 'compression') / (section.elasticPsi * section.areaIn2);
  const shortIn = ductility * Math.min(1, over - 1) * cap * length * (0.8 + 0.4 * chance.share());
  const clock = chance.whole(1, 12);
  const nearEnd = bendingShare > 0.5;
  const share = nearEnd ? 0.15 + 0.15 * chance.share() : 0.4 + 0.2 * chance.share();
  const atIn = sixteenth(length * share);
  const place = { from: nearEnd ? member[worse] : member.from, atIn };
  if (nearEnd || (over > 1.5 && chance.share() < 0.5)) {
    const [a, b] = [atIn, length - atIn];
    const depthIn = between(0.125, sixteenth(Math.sqrt((2 * a * b * shortIn) / length)), Math.min(a, b) / 4);
    return found('kink', member.id, { place, clock, depthIn });
  }
  const depthIn = between(0.125, sixteenth((2 / Math.PI) * Math.sqrt(length * shortIn)), length * deepest);
  return found('bow', member.id, { place, clock, depthIn, shape: 'smooth' });
};

/** A crack at the weld toe of one end. */
export const toeCrack = (member: Member, end: 'from' | 'to', chance: Seeded): Finding =>
  found('crack', member.id, {
    place: { from: member[end], atIn: sixteenth(Math.min(member.lengthIn / 4, 0.75 * member.section.odIn)) },
    clock: chance.whole(1, 12),
    crackIn: chance.whole(2, 8) / 16,
    where: 'weldToe',
  });

/** The dent where the truss was struck: on the stoutest tube there, on the side the blow came from. */
export const dentAt = (truss: Truss, blow: Pick<Blow, 'cluster' | 'direction'>, chance: Seeded): Finding => {
  const here = truss.members.filter(({ from, to }) => from === blow.cluster || to === blow.cluster);
  const member = here.toSorted((a, b) => b.section.odIn - a.section.odIn || (a.id < b.id ? -1 : 1))[0]!;
  const at = new Map(truss.clusters.map((c) => [c.id, c.at]));
  const face = clockFace([at.get(member.from)!, at.get(member.to)!], member);
  const towards = (clock: number): number => -dot(clockDirection(face, clock), blow.direction);
  const clock = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].reduce((best, c) =>
    towards(c) > towards(best) + 1e-9 ? c : best,
  );
  const od = member.section.odIn;
  const depthIn = Math.max(2, Math.round(od * (0.08 + 0.12 * chance.share()) * 32)) / 32;
  return found('dent', member.id, {
    place: { from: blow.cluster, atIn: sixteenth(member.lengthIn * (0.2 + 0.2 * chance.share())) },
    clock,
    depthIn,
    alongIn: sixteenth(od * (0.8 + chance.share())),
    widthIn: sixteenth(od * (0.4 + 0.3 * chance.share())),
    widthBy: 'across',
    corner: 'smooth',
  });
};

/** Old rust inside a lower longeron that is not hurt otherwise; nothing where all are. */
export const rusted = (truss: Truss, taken: ReadonlySet<string>, chance: Seeded): readonly Finding[] => {
  const low = truss.members.filter((m) => m.role === 'lowerLongeron' && !taken.has(m.id));
  if (low.length === 0) return [];
  const member = chance.pick(low);
  const wallLeftIn = Math.round(member.section.wallIn * (0.6 + 0.2 * chance.share()) * 1000) / 1000;
  const place = { from: member.to, atIn: sixteenth(Math.min(3, member.lengthIn / 4)) };
  return [
    found('thinned', member.id, { origin: 'older', wallLeftIn, cause: 'rust', place, clock: 6, alongIn: 2 }),
  ];
};

/** Findings by place in the truss, with the ids they keep. */
export const inOrder = (truss: Truss, findings: readonly Finding[]): readonly Finding[] => {
  const place = new Map([...truss.members, ...truss.clusters].map(({ id }, k) => [id, k]));
  return findings
    .toSorted((a, b) => place.get(a.of)! - place.get(b.of)! || (a.damage < b.damage ? -1 : 1))
    .map((f, k) => ({ ...f, id: `truth-${String(k + 1).padStart(2, '0')}` }));
};
