/**
 * Advance widths of Helvetica and Helvetica-Bold, thousandths of the size, so that text is measured without a font file.
 * Source: Adobe Core 14 font metrics (AFM), Helvetica and Helvetica-Bold, records `C … WX`.
 */
const regular: Readonly<Record<number, string>> = {
  191: "'",
  222: 'ijl‘’',
  260: '|',
  278: ' !,./:;I[\\]ft·',
  333: '()-`r²“”',
  334: '{}',
  350: '•',
  355: '"',
  389: '*',
  400: '°',
  469: '^',
  500: 'Jcksvxyz',
  556: '#$0123456789?L_abdeghnopqu–µ',
  584: '+<=>~×±',
  611: 'FTZ',
  667: '&ABEKPSVXY',
  722: 'CDHNRUw',
  778: 'GOQØ',
  833: 'Mm',
  834: '½¼¾',
  889: '%',
  944: 'W',
  1000: '—…',
  1015: '@',
};

const bold: Readonly<Record<number, string>> = {
  238: "'",
  278: ' ,./I\\ijl·‘’',
  280: '|',
  333: '!()-:;[]`ft²',
  350: '•',
  389: '*r{}',
  400: '°',
  474: '"',
  500: 'z“”',
  556: '#$0123456789J_aceksvxy–',
  584: '+<=>^~×±',
  611: '?FLTZbdghnopquµ',
  667: 'EPSVXY',
  722: '&ABCDHKNRU',
  778: 'GOQwØ',
  833: 'M',
  834: '½¼¾',
  889: '%m',
  944: 'W',
  975: '@',
  1000: '—…',
};

const byCharacter = (table: Readonly<Record<number, string>>): ReadonlyMap<string, number> =>
  new Map(Object.entries(table).flatMap(([width, all]) => [...all].map((c) => [c, Number(width)] as const)));

const widths = { regular: byCharacter(regular), bold: byCharacter(bold) } as const;

export type Weight = keyof typeof widths;

/** Width of a letter that stands in no table: as wide as a digit, or as its base letter when it carries an accent. */
const DIGIT = 556;

/** Width of a text set in one line, in the unit of `size`. No kerning: none is set either. */
export const textWidth = (text: string, size: number, weight: Weight = 'regular'): number => {
  const table = widths[weight];
  let sum = 0;
  for (const c of text) sum += table.get(c) ?? table.get(c.normalize('NFD').charAt(0)) ?? DIGIT;
  return (sum * size) / 1000;
};

/** Height of capitals over the base line, as a share of the size (AFM `CapHeight` 718). */
export const CAP = 0.718;

/** Ids and fractions stay whole: a word is cut only after a hyphen or slash between small letters. */
const PIECES = /\s+|[^\s]+?(?:(?<=[a-z][-/])(?=[a-z])|(?=\s)|$)/g;

/** A text cut into lines no wider than `width`, at spaces, else where a word may be cut, within an id only when it must be. */
export const wrap = (
  text: string,
  width: number,
  size: number,
  weight: Weight = 'regular',
): readonly string[] => {
  const fits = (words: string): boolean => textWidth(words, size, weight) <= width;
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const piece of paragraph.match(PIECES) ?? []) {
      if (fits((line + piece).trimEnd())) {
        line += piece;
        continue;
      }
      if (line.trim() !== '') lines.push(line.trimEnd());
      line = piece.trimStart();
      while (!fits(line) && line.length > 1) {
        let cut = line.length - 1;
        while (cut > 1 && !fits(line.slice(0, cut))) cut--;
        lines.push(line.slice(0, cut));
        line = line.slice(cut);
      }
    }
    return [...lines, line.trimEnd()];
  });
};
