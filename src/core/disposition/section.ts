import type { Fact } from '../base/issue.ts';
import type { Damage } from '../job/jobSchema.ts';
import type { Here } from './findingsHere.ts';
import { type Judgement, no, unsure, yes } from './judgement.ts';
import type { Missing, Reason } from './result.ts';
import { fits, type Need, needs } from './room.ts';

const roomFacts = (here: Here, need: Need): Readonly<Record<string, Fact>> => {
  const [a, b] = here.room!.sides;
  return {
    method: need.method,
    needIn: need.tightIn,
    ...(need.roomyIn === need.tightIn ? {} : { needOtherSideIn: need.roomyIn }),
    [`clearIn ${a.cluster}`]: a.clearIn.value,
    [`clearIn ${b.cluster}`]: b.clearIn.value,
  };
};

const lengthField = { crack: 'crackIn', break: 'gapIn' } as const satisfies Partial<Record<Damage, string>>;

/** What room cannot be judged without: where the damage is and how far it goes along the tube. */
const missingRoom = ({ member, placed }: Here): readonly Missing[] => [
  ...(member?.guessed ?? []).map((cluster) => ({ name: `place-guessed:${cluster}` })),
  ...placed.flatMap(({ finding, extent }): readonly Missing[] => {
    if (finding.damage === 'other') return [];
    if (!extent) return [{ name: 'place', finding: finding.id }];
    const name = (lengthField as Readonly<Record<string, string>>)[finding.damage] ?? 'alongIn';
    return extent.lengthKnown ? [] : [{ name, finding: finding.id }];
  }),
];

const atClusters = (here: Here): readonly Reason[] =>
  here.placed.flatMap((p) =>
    p.at === 'cluster' ? [no('not-in-a-bay', { finding: p.finding.id, cluster: p.cluster ?? null })] : [],
  );
const inWords = (here: Here): readonly Reason[] =>
  here.placed.flatMap(({ finding: f }) =>
    f.damage === 'other' ? [unsure('damage-in-words', { finding: f.id })] : [],
  );
const has = (here: Here, ...damage: readonly Damage[]): readonly string[] =>
  here.placed.filter((p) => damage.includes(p.finding.damage)).map((p) => p.finding.id);

/**
 * Split sleeve over the damaged length, after straightening and stop-drilling.
 * Source: AC 43.13-1B, 4-91d, 4-92; that a kink is cut out is common practice.
 */
export const splitSleeve = (here: Here): Judgement => {
  if (!here.member) return { reasons: [no('not-in-a-bay')], missing: [], conditions: [] };
  const { odIn, wallIn } = here.member.section;
  const need = needs(odIn, wallIn).splitSleeve;
  const [parted, kinked, thinned] = [has(here, 'break'), has(here, 'kink'), has(here, 'thinned')];
  const room = here.room && (fits(need, here.room) ? yes : no)('split-sleeve-reach', roomFacts(here, need));
  return {
    reasons: [
      ...atClusters(here),
      ...(parted.length > 0 ? [no('sleeve-not-through', { findings: parted })] : []),
      ...(kinked.length > 0 ? [no('kink-cut-out', { findings: kinked })] : []),
      ...(room ? [room] : []),
      ...(thinned.length > 0 ? [unsure('wall-no-rule', { findings: thinned })] : []),
      ...inWords(here),
      yes('split-sleeve'),
    ],
    missing: missingRoom(here),
    conditions: [
      'sleeve-ends',
      'same-material',
      ...(has(here, 'bow', 'dent', 'oval').length > 0
        ? ['straighten-then-sleeve', 'inspect-before-straightening']
        : []),
      ...(has(here, 'crack').length > 0 ? ['stop-hole'] : []),
      'no-filling',
    ],
  };
};

/**
 * The damaged part cut out and a section spliced in at both ends: it fits when any of the three published splices does.
 * Source: AC 43.13-1B, 4-91b, 4-95 to 4-97; too short a bay → whole tube is common practice.
 */
export const splice = (here: Here): Judgement => {
  if (!here.member) return { reasons: [no('not-in-a-bay')], missing: [], conditions: [] };
  const { odIn, wallIn } = here.member.section;
  const { innerSleeve, outerSleeve, largerTube } = needs(odIn, wallIn);
  const { room } = here;
  const methods = [innerSleeve, outerSleeve, largerTube];
  const fitting = room ? methods.filter((n) => fits(n, room)).map((n) => n.method) : [];
  const tight =
    room && fitting.length === 0 ? methods.map((n) => no('two-splices-or-whole', roomFacts(here, n))) : [];
  const thinned = has(here, 'thinned').length > 0;
  return {
    reasons: [
      ...atClusters(here),
      ...tight,
      ...inWords(here),
      yes('splice', room ? { fits: fitting } : {}),
      yes('splice-anywhere'),
    ],
    missing: missingRoom(here),
    conditions: ['same-material', ...(thinned ? ['corroded-cut-out'] : [])],
  };
};

/**
 * The whole member, cluster to cluster.
 * Source: AC 43.13-1B, 4-91, 4-95.
 */
export const replace = (here: Here): Judgement => {
  if (!here.member) return { reasons: [no('replace', { kind: 'cluster' })], missing: [], conditions: [] };
  const thinned = has(here, 'thinned').length > 0;
  return {
    reasons: [yes('replace', { from: here.member.from, to: here.member.to })],
    missing: [],
    conditions: [
      'same-material',
      'no-weld-over-weld',
      ...(here.fitting ? ['fitting-there'] : []),
      ...(thinned ? ['corroded-cut-out'] : []),
    ],
  };
};
