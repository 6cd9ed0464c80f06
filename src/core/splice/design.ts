import type { Fact } from '../base/issue.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';
import { areaOf, byRule, fromCuts } from './parts.ts';
import type { Damage, Failing, Piece, Plan, RuleHeld, SleeveChoice, SleeveOffer } from './result.ts';
import { slackIn, slackLimit, sleeveFaults } from './sleeve.ts';
import { type Side, sameSize } from './sleeveTable.ts';

/** A tube at hand, with what it is made of. */
export interface Stuff {
  readonly tube: Tube;
  /** Left out: that of the old tube. */
  readonly material?: string;
}

/** What the user has set for one member, in place of the starting values. */
export interface Wish {
  /** Place of each cut on the side nearest the damage, from the `from` cluster point. */
  readonly cutsIn?: readonly [number | undefined, number | undefined];
  /** Clock position of the longest line of the new piece. */
  readonly longClock?: number;
  readonly section?: Stuff;
  readonly sleeve?: Stuff;
}

/** All that one method needs. */
export interface Ask {
  readonly piece: Piece;
  readonly wish: Wish;
  readonly manual: readonly RecordOf<'manual'>[];
}

/** A method worked through, before the scope is looked at. */
export interface Draft {
  readonly failing: readonly Failing[];
  readonly missing: readonly string[];
  readonly rules: readonly RuleHeld[];
  readonly sleeve: SleeveChoice | null;
  readonly plan: Plan | null;
  readonly cautions: readonly string[];
}

export const emptyDraft: Draft = {
  failing: [],
  missing: [],
  rules: [],
  sleeve: null,
  plan: null,
  cautions: [],
};

export const rule = (
  id: string,
  held: boolean | null,
  facts: Readonly<Record<string, Fact>> = {},
): RuleHeld => ({ rule: id, held, facts });

/** Arithmetic, not length. */
const SAME = 1e-9;

/** A rule that asks for a length: the row, and what fails when it is not there. */
export const needs = (
  id: string,
  at: string,
  needIn: number,
  haveIn: number,
): { readonly rules: readonly RuleHeld[]; readonly failing: readonly Failing[] } => {
  const held = haveIn >= needIn - SAME;
  return {
    rules: [rule(id, held, { at, needIn, haveIn })],
    failing: held ? [] : [{ rule: id, at, needIn: byRule(needIn, id), haveIn: fromCuts(haveIn) }],
  };
};

/** Several rules together. */
export const allOf = (
  ...held: readonly { readonly rules: readonly RuleHeld[]; readonly failing: readonly Failing[] }[]
): { readonly rules: readonly RuleHeld[]; readonly failing: readonly Failing[] } => ({
  rules: held.flatMap((h) => h.rules),
  failing: held.flatMap((h) => h.failing),
});

/** Where the damage ends, or what is missing to say. Two cuts set by the user stand for it. */
export const extentOf = ({
  piece,
  wish,
}: Ask): { extent: readonly [number, number] | null; missing: readonly string[] } => {
  const { damage } = piece;
  const [p, q] = wish.cutsIn ?? [];
  if (p !== undefined && q !== undefined && !damage?.lengthKnown)
    return { extent: damage ? [damage.fromIn, damage.toIn] : [p, q], missing: [] };
  if (!damage) return { extent: null, missing: ['damage'] };
  if (!damage.lengthKnown) return { extent: null, missing: ['alongIn'] };
  return { extent: [damage.fromIn, damage.toIn], missing: [] };
};

/** Starting value when no clock position is known: 12, the user's to change. */
export const longClockOf = ({ piece, wish }: Ask): number => wish.longClock ?? piece.damage?.clock ?? 12;

/** The new section: the old tube's own size unless another is at hand. */
export const sectionStuff = ({ piece, wish }: Ask): Required<Stuff> => ({
  tube: wish.section?.tube ?? piece.tube,
  material: wish.section?.material ?? piece.material,
});

/** Same material, same outside diameter, wall not less. */
export const sectionRules = (ask: Ask): { rules: readonly RuleHeld[]; failing: readonly Failing[] } => {
  const { piece } = ask;
  const { tube, material } = sectionStuff(ask);
  const od = sameSize(tube.odIn, piece.tube.odIn);
  return {
    rules: [
      rule('same-material', material === piece.material, {
        at: 'section',
        got: material,
        want: piece.material,
      }),
      rule('same-diameter', od, { at: 'section', needIn: piece.tube.odIn, haveIn: tube.odIn }),
      ...needs('sleeve-wall', 'section', piece.tube.wallIn, tube.wallIn).rules,
    ],
    failing: [
      ...(od
        ? []
        : [
            {
              rule: 'same-diameter',
              at: 'section',
              needIn: byRule(piece.tube.odIn, 'same-diameter'),
              haveIn: fromCuts(tube.odIn),
            },
          ]),
      ...needs('sleeve-wall', 'section', piece.tube.wallIn, tube.wallIn).failing,
    ],
  };
};

/** The nearest size of the stock list, and the number it fails by. */
const notMade =
  (piece: Piece, side: Side) =>
  ({ tube, slackIn: slack }: SleeveOffer): Failing =>
    sleeveFaults(piece.tube, tube, side).every((f) => f === 'wall-below-original')
      ? {
          rule: 'sleeve-wall',
          at: 'stock',
          needIn: byRule(piece.tube.wallIn, 'sleeve-wall'),
          haveIn: fromCuts(tube.wallIn),
        }
      : { rule: 'sleeve-slack', at: 'stock', needIn: slackLimit(), haveIn: slack };

/** The sleeve held against the rules. What the user's own table says stands, and the rule is shown beside it. */
export const sleeveRules = (
  { piece, wish }: Ask,
  { chosen, refused }: SleeveChoice,
  side: Side,
): { rules: readonly RuleHeld[]; failing: readonly Failing[] } => {
  if (!chosen)
    return { rules: [rule('stock', false)], failing: refused.slice(0, 1).map(notMade(piece, side)) };
  const { tube } = chosen;
  const faults = sleeveFaults(piece.tube, tube, side);
  const own = chosen.by === 'manual';
  const slack = slackIn(piece.tube, tube, side);
  // A table cannot make a sleeve go where there is no room for it.
  const stands = (fault: string): boolean => !faults.includes(fault) || (own && fault !== 'does-not-enter');
  const material = wish.sleeve?.material ?? piece.material;
  const fits = stands('does-not-enter') && stands('over-slack-limit');
  return {
    rules: [
      ...(own ? [rule('sleeve-table', true, { record: chosen.record ?? null })] : []),
      rule('same-material', material === piece.material, {
        at: 'sleeve',
        got: material,
        want: piece.material,
      }),
      rule('sleeve-slack', fits, {
        haveIn: slack,
        mostIn: slackLimit().value,
        outranked: own && faults.length > 0,
      }),
      rule('sleeve-wall', stands('wall-below-original'), {
        at: 'sleeve',
        needIn: piece.tube.wallIn,
        haveIn: tube.wallIn,
      }),
    ],
    failing: [
      ...(fits ? [] : [{ rule: 'sleeve-slack', at: 'sleeve', needIn: slackLimit(), haveIn: chosen.slackIn }]),
      ...(stands('wall-below-original')
        ? []
        : needs('sleeve-wall', 'sleeve', piece.tube.wallIn, tube.wallIn).failing),
    ],
  };
};

/** What the sizes of a sleeve give reason to say. */
export const sleeveCautions = (piece: Piece, chosen: SleeveOffer | null): readonly string[] =>
  !chosen
    ? []
    : [
        ...(chosen.says.includes('inside-mill-tolerance') ? ['try-fit'] : []),
        ...(areaOf(chosen.tube) < areaOf(piece.tube) ? ['less-area'] : []),
        ...(chosen.says.includes('over-slack-limit') ? ['table-over-rule'] : []),
        ...(chosen.says.includes('shorter-than-rule') ? ['table-shorter-than-rule'] : []),
      ];

/** The damage lies between the cuts. */
export const damageRule = (
  damage: Damage | null,
  [p, q]: readonly [number, number],
): { rules: readonly RuleHeld[]; failing: readonly Failing[] } => {
  if (!damage) return { rules: [rule('damage-cut-out', null)], failing: [] };
  const out = Math.min(damage.fromIn - p, q - damage.toIn);
  const { rules, failing } = needs('damage-cut-out', 'section', 0, out);
  return {
    rules: damage.lengthKnown || failing.length > 0 ? rules : [rule('damage-cut-out', null)],
    failing,
  };
};
