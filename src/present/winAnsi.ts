/**
 * The standard PDF fonts know 218 characters (WinAnsi). What is outside is written another way, and what cannot be is `?` and listed.
 * Source: ISO 32000-1 annex D.2, WinAnsiEncoding: code points 32–126 and 160–255, and the 27 below.
 */
const ABOVE_LATIN = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';

const instead: Readonly<Record<string, string>> = {
  '⌀': 'Ø',
  '∅': 'Ø',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '–',
  '―': '—',
  '≤': '<=',
  '≥': '>=',
  '≠': 'not equal to',
  '≈': 'about',
  '→': 'to',
  '←': 'from',
  '′': "'",
  '″': '"',
  ʹ: "'",
  '⁄': '/',
  '∕': '/',
  '⋅': '·',
  '✓': 'yes',
  '✗': 'no',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const known = (c: string): boolean => {
  const code = c.codePointAt(0)!;
  return (code >= 32 && code <= 126) || (code >= 160 && code <= 255) || ABOVE_LATIN.includes(c);
};

const settle = (c: string): string | undefined => {
  if (known(c)) return c === '\u00A0' || c === '\u00AD' ? ' ' : c;
  if (Object.hasOwn(instead, c)) return instead[c];
  if (/\s/.test(c)) return ' ';
  const base = c.normalize('NFKD').replace(/\p{M}/gu, '');
  return base !== c && base !== '' && [...base].every(known) ? base : undefined;
};

/** A text in the characters of the standard fonts, and those that had to be given up. */
export const winAnsi = (text: string): { readonly text: string; readonly lost: readonly string[] } => {
  const lost: string[] = [];
  let out = '';
  for (const c of text.normalize('NFC')) {
    const settled = settle(c);
    if (settled === undefined) lost.push(c);
    out += settled ?? '?';
  }
  return { text: out, lost };
};
