/** A fact that belongs to an issue: what was got, what was expected, which thing. */
export type Fact = string | number | boolean | null | readonly (string | number)[];

/**
 * Something that is wrong in what was given, or that a reader must know.
 * Sentences are made of it in `present/words.ts`; the code is stable.
 */
export interface Issue {
  /** Stable kebab-case name of the kind of issue. */
  readonly code: string;
  /** Path in the document, e.g. `records[12].lengthIn` or `members[3].tube`; `""` is the whole. */
  readonly at: string;
  /** The file's name, added at the rim (`cli/files.ts`, `app/storage/files.ts`). */
  readonly file?: string;
  /** Values got and expected, ids concerned. */
  readonly facts: Readonly<Record<string, Fact>>;
  /** Stable kebab-case name of what to do about it; worded in `present/words.ts`. */
  readonly mend: string;
}

/** An answer that may come with issues, or issues alone. Nothing is thrown for bad input. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly issues: readonly Issue[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const ok = <T>(value: T, issues: readonly Issue[] = []): Result<T> => ({ ok: true, value, issues });
export const refused = (
  issues: readonly Issue[],
): { readonly ok: false; readonly issues: readonly Issue[] } => ({
  ok: false,
  issues,
});

export const issue = (
  code: string,
  at: string,
  facts: Readonly<Record<string, Fact>>,
  mend: string,
): Issue => ({ code, at, facts, mend });
