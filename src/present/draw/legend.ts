import { type Coverage, type State, states } from '../../core/walkRound/result.ts';
import { tags } from '../tags.ts';
import { countWords } from '../words/names.ts';
import { type Glyph, glyph } from './glyph.ts';
import { band, tube } from './pattern.ts';
import { ink, type Op, type Ops, text } from './pen.ts';

const ROW_MM = 6.8;

/** One state as it is drawn: its tube with its band, then its glyph. 20 mm wide about the middle line `y`. */
export const swatch = (state: State, x: number, y: number): Ops => {
  const tag = tags[state];
  const colour = tag.pattern === 'dotted' ? ink.quiet : tag.light;
  const sign: Glyph = tag.glyph === 'damage' ? 'otherQuery' : tag.glyph;
  return [
    ...tube([x, y], [x + 14, y], 1.1, tag.pattern, colour),
    ...band({ at: [x + 7, y], along: [1, 0], halfLength: 5, halfWidth: 1.45 }, tag.pattern, tag.light),
    ...glyph(sign, x + 17, y, 1.2, tag.light),
  ];
};

/** Height of a legend laid in so many columns. */
export const legendHeight = (columns: number): number => Math.ceil(states.length / columns) * ROW_MM;

/** The eight states in the fixed order, with pattern, glyph, chalk letters, word and counts. */
export const legend = (x: number, y: number, width: number, columns: number, coverage: Coverage): Ops => {
  const rows = Math.ceil(states.length / columns);
  const step = width / columns;
  return states.flatMap((state, k): readonly Op[] => {
    const [left, middle] = [x + Math.floor(k / rows) * step, y + (k % rows) * ROW_MM + ROW_MM / 2];
    const tag = tags[state];
    return [
      ...swatch(state, left, middle),
      text([left + 20.5, middle], tag.chalk, 2.4, { weight: 'bold' }),
      text([left + 26, middle], tag.word, 2.5),
      text(
        [left + 26, middle + 2.9],
        `${countWords(coverage.members[state], 'member')}, ${countWords(coverage.clusters[state], 'cluster')}`,
        2.1,
        { colour: ink.quiet },
      ),
    ];
  });
};
