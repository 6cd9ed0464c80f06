import type { Draft } from './design.ts';
import type { Design, Method, Piece } from './result.ts';

/** Rules about sizes, not places along the tube: they can be held against a tube whose ends are only guessed. */
const ofSize: ReadonlySet<string> = new Set([
  ...['same-material', 'same-diameter', 'sleeve-wall', 'sleeve-slack', 'sleeve-table', 'stock'],
  ...['sleeve-not-through', 'stop-hole'],
]);
const restsOnSize = ({ rule: id }: { readonly rule: string }): boolean =>
  ofSize.has(id) || id.startsWith('patch-');

/** A draft for a tube with guessed ends: nothing that was measured off a guess, and what has to be measured first. */
const withoutGuesses = (draft: Draft, guessed: readonly string[]): Draft => ({
  ...draft,
  failing: draft.failing.filter(restsOnSize),
  rules: draft.rules.filter(restsOnSize),
  missing: [...draft.missing, ...guessed.map((cluster) => `place-guessed:${cluster}`)],
  plan: null,
});

/** Closed by the scope, or decided by the numbers. A plan stands only where the method fits: never a shortened part. */
export const settle = (method: Method, piece: Piece, worked: Draft): Design => {
  const closed = piece.scope;
  const draft = piece.guessed ? withoutGuesses(worked, piece.guessed) : worked;
  const fails = draft.failing.length > 0 || draft.rules.some((r) => r.held === false);
  const fits =
    closed.length > 0 ? 'cannotSay' : fails ? 'doesNotFit' : draft.missing.length > 0 ? 'cannotSay' : 'fits';
  return { method, closed, ...draft, fits, plan: fits === 'fits' ? draft.plan : null };
};
