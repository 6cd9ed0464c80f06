import type { Issue } from '../../core/base/issue.ts';

/** Options of the terminal, as typed. */
export interface Options {
  readonly json?: boolean;
  readonly only?: string;
  readonly target?: string[];
  readonly out?: string;
  readonly paper?: string;
  readonly papers?: string;
  readonly since?: string;
}

/** What a verb gives: text for a person and one JSON document, or only issues (exit 2). */
export type Answer =
  | { readonly ok: true; readonly text: string; readonly json: unknown; readonly issues: readonly Issue[] }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export interface Command {
  readonly name: string;
  /** Options the verb takes besides `--json`. */
  readonly takes: readonly (keyof Options)[];
  /** How many files it takes; one when not said. */
  readonly files?: 2;
  readonly run: (file: string, options: Options, other?: string) => Promise<Answer> | Answer;
}
