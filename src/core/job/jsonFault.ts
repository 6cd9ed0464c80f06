/** Where a text stops being JSON, and what should stand there. Line and column count from 1. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  /** The character found; empty at the end of the text. */
  readonly got: string;
  readonly expected: Expected;
}
type Expected = 'value' | 'name' | 'colon' | 'commaOrClose' | 'end' | 'string';

const blank = (c: string | undefined): boolean => c === ' ' || c === '\t' || c === '\n' || c === '\r';
/** Made anew for each text: a sticky pattern remembers its place. */
const tokens = () => ({
  number: /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y,
  word: /true|false|null/y,
  escaped: /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y,
});

const matchAt = (pattern: RegExp, text: string, at: number): number => {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
};

/** End of the string that opens at `at`; negative: minus the place of its fault, less one. */
const stringEnd = (text: string, at: number, escaped: RegExp): number => {
  let i = at + 1;
  for (;;) {
    const c = text[i];
    if (c === '"') return i + 1;
    if (c === undefined || c < ' ') return -i - 1;
    if (c !== '\\') i++;
    else {
      const end = matchAt(escaped, text, i);
      if (end < 0) return -i - 1;
      i = end;
    }
  }
};

/** Line and column of a place in a text. */
export const lineAndColumn = (
  text: string,
  offset: number,
): { readonly line: number; readonly column: number } => {
  let line = 1;
  let start = 0;
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) {
    line++;
    start = at + 1;
  }
  return { line, column: offset - start + 1 };
};

/** Place of the first bracket that is nested deeper than `most`; −1 when there is none. */
export const tooDeepAt = (text: string, most: number): number => {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (quoted) {
      if (c === 92) i++;
      else if (c === 34) quoted = false;
    } else if (c === 34) quoted = true;
    else if (c === 91 || c === 123) {
      if (++depth > most) return i;
    } else if (c === 93 || c === 125) depth--;
  }
  return -1;
};

/**
 * The first fault of a text as JSON, or null when it is JSON. Browsers word and place such faults differently, some
 * not at all, so the place is found here. Does not recurse: the depth of the text does not matter.
 * Source: RFC 8259, sections 2 to 7.
 */
export const jsonFault = (text: string): JsonFault | null => {
  const { number, word, escaped } = tokens();
  const open: ('[' | '{')[] = [];
  let expected = 'value' as Expected;
  let mayClose = false;
  let i = 0;
  const fault = (at: number, what: Expected): JsonFault => ({
    ...lineAndColumn(text, at),
    got: at < text.length ? String.fromCodePoint(text.codePointAt(at) as number) : '',
    expected: what,
  });
  const valueDone = (): void => {
    expected = open.length > 0 ? 'commaOrClose' : 'end';
    mayClose = true;
  };
  for (;;) {
    while (blank(text[i])) i++;
    const c = text[i];
    if (c === undefined) return expected === 'end' ? null : fault(i, expected);
    const inside = open.at(-1);
    if (mayClose && inside && c === (inside === '[' ? ']' : '}')) {
      open.pop();
      valueDone();
      i++;
    } else if (expected === 'commaOrClose' && c === ',') {
      expected = inside === '{' ? 'name' : 'value';
      mayClose = false;
      i++;
    } else if (expected === 'colon' && c === ':') {
      expected = 'value';
      i++;
    } else if (c === '"' && (expected === 'name' || expected === 'value')) {
      const end = stringEnd(text, i, escaped);
      if (end < 0) return fault(-end - 1, 'string');
      i = end;
      if (expected === 'value') valueDone();
      else {
        expected = 'colon';
        mayClose = false;
      }
    } else if (expected === 'value' && (c === '[' || c === '{')) {
      open.push(c);
      expected = c === '{' ? 'name' : 'value';
      mayClose = true;
      i++;
    } else {
      const end = expected === 'value' ? Math.max(matchAt(number, text, i), matchAt(word, text, i)) : -1;
      if (end < 0) return fault(i, expected);
      i = end;
      valueDone();
    }
  }
};
