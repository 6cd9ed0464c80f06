import type { Mark } from '../../core/walkRound/result.ts';
import { damageTags, tags } from '../tags.ts';
import type { Box, Placed, Wanted } from './declutter.ts';
import { type Glyph, glyph } from './glyph.ts';
import { CAP, textWidth } from './helvetica.ts';
import { box, circle, ink, type Ops, type Point, polyline, stroke, text } from './pen.ts';

/** Room for a tick behind the id. */
const TICK_MM = 3.4;

const LABEL_MM = 2.2;
const TAG_MM = 2.4;
/** Radius of a cluster that carries a tag: room for its glyph. */
const TAGGED_MM = 1.9;

/** Does a mark say more than whether it was looked at? */
export const said = (mark: Mark | undefined): mark is Mark =>
  mark !== undefined && mark.state !== 'lookedAt' && mark.state !== 'notLookedAt';

const glyphOf = (mark: Mark): Glyph => {
  const name = tags[mark.state].glyph;
  if (name !== 'damage') return name;
  const damage = mark.damage[0];
  return damage ? damageTags[damage].glyph : 'otherQuery';
};

const tagWords = (mark: Mark): string => `${tags[mark.state].chalk} ${mark.id}`;

/** The label of a tag: glyph, chalk letters and id. */
export const tagWanted = (mark: Mark, at: Point, ticked = false): Wanted => ({
  id: mark.id,
  at,
  w: textWidth(tagWords(mark), TAG_MM, 'bold') + TAG_MM * 1.3 + 1.6 + (ticked ? TICK_MM : 0),
  h: TAG_MM + 1.4,
  rank: mark.kind === 'member' ? 0 : 1,
  ...(mark.kind === 'cluster' ? { clear: 1.2 } : {}),
});

/** The label of a cluster that has nothing but its id to say. */
export const idWanted = (id: string, at: Point): Wanted => ({
  id,
  at,
  w: textWidth(id, LABEL_MM) + 0.8,
  h: LABEL_MM * CAP + 0.9,
  rank: 2,
});

const tick = (x: number, y: number): Ops => [
  polyline(
    [
      [x, y],
      [x + 0.8, y + 0.9],
      [x + 2.3, y - 1],
    ],
    { stroke: stroke(ink.line, 0.5, undefined, 'round') },
  ),
];

export const labelOps = ({ id, box: at }: Placed, mark: Mark | undefined, ticked = false): Ops => {
  const middle = at.y + at.h / 2;
  if (!said(mark))
    return [
      box(at.x, at.y, at.w, at.h, { fill: ink.paper }),
      text([at.x + at.w / 2, middle + (LABEL_MM * CAP) / 2], id, LABEL_MM, { align: 'middle' }),
    ];
  const colour = tags[mark.state].light;
  return [
    box(at.x, at.y, at.w, at.h, { fill: ink.paper, stroke: stroke(colour, 0.22) }),
    ...glyph(glyphOf(mark), at.x + 0.7 + TAG_MM * 0.5, middle, TAG_MM * 0.42, colour),
    text([at.x + TAG_MM * 1.3 + 0.6, middle + (TAG_MM * CAP) / 2], tagWords(mark), TAG_MM, {
      weight: 'bold',
    }),
    ...(ticked ? tick(at.x + at.w - TICK_MM + 0.2, middle) : []),
  ];
};

/** The space a tagged cluster takes. */
export const clusterBox = ([x, y]: Point): Box => ({
  x: x - TAGGED_MM,
  y: y - TAGGED_MM,
  w: 2 * TAGGED_MM,
  h: 2 * TAGGED_MM,
});

/** A cluster ball: dotted until looked at, a dot in it when looked at, the glyph of its tag when it has one. */
export const clusterOps = (p: Point, mark: Mark | undefined, ballMm: number): Ops => {
  const state = mark?.state ?? 'notLookedAt';
  if (state === 'notLookedAt')
    return [circle(p, ballMm, { fill: ink.paper, stroke: stroke(ink.quiet, 0.26, [0, 0.6], 'round') })];
  const { light } = tags[state];
  if (!said(mark))
    return [
      circle(p, ballMm, { fill: ink.paper, stroke: stroke(light, 0.28) }),
      circle(p, ballMm * 0.45, { fill: light }),
    ];
  return [
    circle(p, Math.max(TAGGED_MM, ballMm), { fill: ink.paper, stroke: stroke(light, 0.45) }),
    ...glyph(glyphOf(mark), p[0], p[1], 1.05, light),
  ];
};
