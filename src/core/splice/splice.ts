import { type Issue, issue } from '../base/issue.ts';
import type { Disposition } from '../disposition/result.ts';
import type { Choice, RecordOf } from '../job/jobSchema.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage } from '../walkRound/result.ts';
import type { Ask, Draft, Wish } from './design.ts';
import { fullMember } from './fullMember.ts';
import { innerSleeve } from './innerSleeve.ts';
import { largerTube } from './largerTube.ts';
import { outerSleeve } from './outerSleeve.ts';
import { patchPlate } from './patchPlate.ts';
import { pieceOf } from './piece.ts';
import { type Design, type Method, methods, type Piece, type SpliceRow, type Splices } from './result.ts';
import { settle } from './settle.ts';
import { tableIssues } from './sleeveTable.ts';
import { splitSleeve } from './splitSleeve.ts';
import { wishIssues, wishOf } from './wishes.ts';

type Manual = readonly RecordOf<'manual'>[];

const works = {
  innerSleeve,
  outerSleeve,
  largerTube,
  splitSleeve,
  patch: patchPlate,
  fullMember,
} as const satisfies Record<Method, (ask: Ask) => Draft>;

/** Every method on one tube, with or without a truss around it: what the bench sums and the stage both show. */
export const designsOf = (piece: Piece, wish: Wish = {}, manual: Manual = []): readonly Design[] =>
  methods.map((method) => settle(method, piece, works[method]({ piece, wish, manual })));

/** Rules that a wrong tube breaks, and what the mechanic is told of each. */
const guards = {
  'same-material': 'splice-other-material',
  'same-diameter': 'splice-other-diameter',
  'sleeve-wall': 'splice-wall-too-thin',
  'sleeve-slack': 'splice-sleeve-does-not-fit',
} as const;

/** What is wrong with the tubes at hand, once each. */
export const tubeIssues = (id: string, wish: Wish, designs: readonly Design[]): readonly Issue[] => {
  if (!wish.section && !wish.sleeve) return [];
  const found = new Map<string, Issue>();
  for (const { method, rules } of designs)
    for (const { rule, held, facts } of rules) {
      if (held !== false || !Object.hasOwn(guards, rule)) continue;
      const code = guards[rule as keyof typeof guards];
      const key = `${code} ${String(facts.at ?? method)}`;
      if (!found.has(key)) found.set(key, issue(code, id, { id, method, ...facts }, 'take-another-tube'));
    }
  return [...found.values()];
};

/** Everything of one member, decided or asked for; null when the truss has no such member. */
export const spliceFor = (
  truss: Truss,
  coverage: Coverage,
  disposition: Disposition | null,
  manual: Manual,
  id: string,
): SpliceRow | null => {
  const member = truss.members.find((m) => m.id === id);
  if (!member) return null;
  const findings = coverage.findings.filter((f) => f.of === id);
  const piece = pieceOf(truss, member, findings, disposition, manual);
  return {
    member: id,
    choice: coverage.marks.find((m) => m.id === id)?.choice ?? null,
    piece,
    designs: designsOf(piece, wishOf(member, manual), manual),
  };
};

/** Decisions that this stage works out. */
const worked: ReadonlySet<Choice> = new Set(['splice', 'splitSleeve', 'patch', 'replace']);

/**
 * Every member decided to be spliced, split-sleeved, patched or replaced: each method with what the rules say, where it
 * is cut, and every part with its dimensions, weight and template; or "does not fit here" with the number that fails.
 *
 * Manual topics read: `sleeve:OD x WALL`, `outer-sleeve:OD x WALL`, `patch-overlap[:ID]`, `toe:MEMBER:CLUSTER`,
 * `scope:ID`, and those of `wishOf`.
 */
export const splice = (
  truss: Truss,
  coverage: Coverage,
  disposition: Disposition | null,
  manual: Manual,
): Splices => {
  const decided = coverage.marks.filter((m) => m.kind === 'member' && m.choice && worked.has(m.choice));
  const members = decided.flatMap((m) => spliceFor(truss, coverage, disposition, manual, m.id) ?? []);
  const ofTubes = members.flatMap((row) => {
    const member = truss.members.find((m) => m.id === row.member)!;
    return tubeIssues(row.member, wishOf(member, manual), row.designs);
  });
  const ofGuesses = members.flatMap(({ member: id, piece }) =>
    piece.guessed
      ? [issue('length-rests-on-a-guess', id, { id, clusters: piece.guessed }, 'measure-them-up')]
      : [],
  );
  return { members, issues: [...tableIssues(manual), ...wishIssues(manual), ...ofTubes, ...ofGuesses] };
};
