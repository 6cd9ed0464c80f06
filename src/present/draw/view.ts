import { between, type Vec3 } from '../../core/base/vec3.ts';
import type { Member, Truss } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import { damageTags, tags } from '../tags.ts';
import { type Box, declutter, type Line, type Placed, type Wanted } from './declutter.ts';
import {
  type Badge,
  badgeBox,
  badgeOps,
  cornerBadges,
  forwardArrow,
  roundScale,
  scaleBar,
  sideBadges,
} from './furniture.ts';
import { type Glyph, glyph } from './glyph.ts';
import { CAP, textWidth } from './helvetica.ts';
import { band, tube } from './pattern.ts';
import {
  box,
  circle,
  type Drawing,
  ink,
  type Op,
  type Ops,
  type Point,
  segment,
  stroke,
  text,
} from './pen.ts';
import { type MapView, projection } from './project.ts';

/** What is asked of a damage map. */
export interface MapAsk {
  readonly widthMm: number;
  readonly heightMm: number;
  /** mm per inch and its words; left out: the largest round scale that fits. */
  readonly scale?: { readonly mmPerIn: number; readonly words: string };
  /** Draw these members only, and the clusters they meet at: one station seen from ahead. */
  readonly only?: ReadonlySet<string>;
  /** Without arrow, scale bar and side words, for a small picture among others. */
  readonly bare?: boolean;
}

/** The truss with its tags, to be read in black ink alone. */
export interface DamageMap extends Drawing {
  readonly view: MapView;
  readonly scaleWords: string;
  readonly labels: readonly Placed[];
  readonly badges: readonly Badge[];
  /** Labels that found no room; said on the drawing. */
  readonly leftOut: readonly string[];
}

const MARGIN = { x: 20, top: 12, bottom: 17 } as const;
const BARE_MARGIN = { x: 9, top: 7, bottom: 9 } as const;
const LEAST_TUBE_MM = 0.95;
const LABEL_MM = 2.2;
const TAG_MM = 2.4;

/** Outer size of the points as seen, inches: width and height. */
export const seenSize = (points: readonly Vec3[], view: MapView): readonly [number, number] => {
  const { at } = projection(view, 1);
  const page = points.map(at);
  const span = (axis: 0 | 1): number =>
    page.length === 0 ? 0 : Math.max(...page.map((p) => p[axis])) - Math.min(...page.map((p) => p[axis]));
  return [span(0), span(1)];
};

/** The scale at which a view of a truss fits a space, so that two views can share one. */
export const mapScale = (truss: Truss, view: MapView, widthMm: number, heightMm: number) =>
  roundScale(
    seenSize(
      truss.clusters.map((c) => c.at),
      view,
    ),
    [widthMm - 2 * MARGIN.x, heightMm - MARGIN.top - MARGIN.bottom],
  );

const said = (mark: Mark | undefined): boolean =>
  mark !== undefined && mark.state !== 'lookedAt' && mark.state !== 'notLookedAt';

const glyphOf = (mark: Mark): Glyph => {
  const name = tags[mark.state].glyph;
  if (name !== 'damage') return name;
  const damage = mark.damage[0];
  return damage ? damageTags[damage].glyph : 'otherQuery';
};

/**
 * The damage map from one place to look from: tubes at true diameter (never thinner than 0.95 mm), far ones first and faint,
 * each tag a band with its pattern, and a label with glyph, chalk letters and id; cluster ids, forward arrow, pilot's L and R.
 */
export const damageMap = (
  truss: Truss,
  marks: ReadonlyMap<string, Mark>,
  view: MapView,
  ask: MapAsk,
): DamageMap => {
  const members = ask.only ? truss.members.filter((m) => ask.only!.has(m.id)) : truss.members;
  const met = new Set(members.flatMap((m) => [m.from, m.to]));
  const clusters = ask.only ? truss.clusters.filter((c) => met.has(c.id)) : truss.clusters;
  const points = clusters.map((c) => c.at);
  const margin = ask.bare ? BARE_MARGIN : MARGIN;
  const room = [ask.widthMm - 2 * margin.x, ask.heightMm - margin.top - margin.bottom] as const;
  const scale = ask.scale ?? roundScale(seenSize(points, view), room);
  const seen = projection(view, scale.mmPerIn);
  const origin = middleOf(points.map(seen.at));
  const centre: Point = [ask.widthMm / 2, margin.top + room[1] / 2];
  const place = (p: Vec3): Point => {
    const [x, y] = seen.at(p);
    return [x - origin[0] + centre[0], y - origin[1] + centre[1]];
  };
  const at = new Map(clusters.map((c) => [c.id, c.at]));
  const depths = points.map(seen.depth);
  const halfWay = (Math.min(...depths) + Math.max(...depths)) / 2;
  /** A tube of no face counts as near when no end of it lies in the far half. */
  const near = (m: Member): boolean =>
    view.near === null ||
    m.faces.includes(view.near) ||
    (m.faces.length === 0 &&
      [m.from, m.to].every((id) => seen.depth(at.get(id) ?? [0, 0, 0]) <= halfWay + 0.5));
  const drawn = members
    .filter((m) => at.has(m.from) && at.has(m.to))
    .map((member) => {
      const [a, b] = [at.get(member.from)!, at.get(member.to)!];
      return { member, a: place(a), b: place(b), depth: seen.depth(between(a, b, 0.5)), near: near(member) };
    })
    .sort((p, q) => Number(p.near) - Number(q.near) || q.depth - p.depth);
  const strong = drawn.filter((d) => d.near);
  const strongClusters = new Set(strong.flatMap(({ member }) => [member.from, member.to]));

  const bands = strong.flatMap((d) => {
    const mark = marks.get(d.member.id);
    const length = Math.hypot(d.b[0] - d.a[0], d.b[1] - d.a[1]);
    if (!said(mark) || length < 3) return [];
    const along: Point = [(d.b[0] - d.a[0]) / length, (d.b[1] - d.a[1]) / length];
    const middle: Point = [(d.a[0] + d.b[0]) / 2, (d.a[1] + d.b[1]) / 2];
    const strip = { at: middle, along, halfLength: Math.min(5, length * 0.3), halfWidth: 1.45 };
    return [{ mark: mark!, strip }];
  });

  const badges = ask.bare
    ? cornerBadges(seen, ask.widthMm, ask.heightMm)
    : sideBadges(view, seen, points, place);
  const furniture: Op[] = badges.flatMap(badgeOps);
  const solid: Box[] = badges.map(badgeBox);
  const foot = ask.heightMm - 9;
  if (!ask.bare) {
    furniture.push(...forwardArrow([14, foot + 2], seen));
    if (view.flat) furniture.push(...scaleBar([30, foot + 2.4], scale.mmPerIn, 60));
    furniture.push(
      text([ask.widthMm - 4, foot + 3.6], `${view.side}.`, 2.6, { align: 'right' }),
      text([ask.widthMm - 4, foot + 7], depthWords(view, scale.words), 2.2, {
        align: 'right',
        colour: ink.quiet,
      }),
    );
    solid.push({ x: 0, y: foot - 2.5, w: ask.widthMm, h: 12 });
  }

  const wanted: Wanted[] = [
    ...bands.map(({ mark, strip }) => ({
      id: mark.id,
      at: strip.at,
      w: tagWidth(mark),
      h: TAG_MM + 1.4,
      rank: 0,
    })),
    ...clusters
      .filter((c) => strongClusters.has(c.id) || said(marks.get(c.id)))
      .filter((c) => view.near === null || strongClusters.has(c.id))
      .map((c) => {
        const mark = marks.get(c.id);
        return said(mark)
          ? { id: c.id, at: place(c.at), w: tagWidth(mark!), h: TAG_MM + 1.4, rank: 1, clear: 1.2 }
          : {
              id: c.id,
              at: place(c.at),
              w: textWidth(c.id, LABEL_MM) + 0.8,
              h: LABEL_MM * CAP + 0.9,
              rank: 2,
            };
      }),
  ];
  const frame: Box = { x: 1, y: 1, w: ask.widthMm - 2, h: ask.heightMm - 2 };
  const bandLines = bands.map(
    ({ strip: { at: m, along, halfLength: h } }): Line => [
      [m[0] - along[0] * h, m[1] - along[1] * h],
      [m[0] + along[0] * h, m[1] + along[1] * h],
    ],
  );
  const lines: Line[] = strong.map((d) => [d.a, d.b]);
  const { placed, leftOut } = declutter(
    wanted,
    frame,
    solid,
    clusters.filter((c) => said(marks.get(c.id))).map((c) => dotBox(place(c.at))),
    bandLines,
    lines,
  );

  const ops: Op[] = [];
  for (const d of drawn) {
    const widthMm = Math.max(LEAST_TUBE_MM, d.member.section.odIn * scale.mmPerIn);
    if (!d.near) {
      ops.push(segment(d.a, d.b, stroke(ink.faint, 0.25)));
      continue;
    }
    const tag = tags[marks.get(d.member.id)?.state ?? 'notLookedAt'];
    const colour = tag.pattern === 'dotted' ? ink.quiet : tag.light;
    ops.push(...tube(d.a, d.b, widthMm, tag.pattern, colour));
  }
  for (const c of clusters) {
    if (view.near !== null && !strongClusters.has(c.id)) continue;
    ops.push(...clusterOps(place(c.at), marks.get(c.id)));
  }
  for (const { leader } of placed)
    if (leader) ops.push(segment(leader[0], leader[1], stroke(ink.quiet, 0.18)));
  for (const { mark, strip } of bands)
    ops.push(...band(strip, tags[mark.state].pattern, tags[mark.state].light));
  for (const label of placed) ops.push(...labelOps(label, marks.get(label.id)));
  if (leftOut.length > 0) ops.push(text([4, 4], `No room here for the ids of: ${leftOut.join(', ')}`, 2.2));
  return {
    widthMm: ask.widthMm,
    heightMm: ask.heightMm,
    ops: [...ops, ...furniture],
    view,
    scaleWords: view.flat ? scale.words : 'not to scale',
    labels: placed,
    badges,
    leftOut,
  };
};

const middleOf = (page: readonly Point[]): Point => {
  if (page.length === 0) return [0, 0];
  const mid = (axis: 0 | 1): number =>
    (Math.min(...page.map((p) => p[axis])) + Math.max(...page.map((p) => p[axis]))) / 2;
  return [mid(0), mid(1)];
};

const dotBox = ([x, y]: Point): Box => ({ x: x - 2, y: y - 2, w: 4, h: 4 });

const depthWords = (view: MapView, scaleWords: string): string =>
  view.near === null
    ? 'Lengths are not to scale. Never scale a print: true lengths stand in the tables.'
    : `Near face strong, the rest faint. Scale ${scaleWords} in this plane. True lengths stand in the tables.`;

const tagWords = (mark: Mark): string => `${tags[mark.state].chalk} ${mark.id}`;
const tagWidth = (mark: Mark): number => textWidth(tagWords(mark), TAG_MM, 'bold') + TAG_MM * 1.3 + 1.6;

const clusterOps = (p: Point, mark: Mark | undefined): Ops => {
  const state = mark?.state ?? 'notLookedAt';
  if (state === 'notLookedAt')
    return [circle(p, 0.95, { fill: ink.paper, stroke: stroke(ink.quiet, 0.26, [0, 0.6], 'round') })];
  if (state === 'lookedAt')
    return [
      circle(p, 0.95, { fill: ink.paper, stroke: stroke(tags.lookedAt.light, 0.28) }),
      circle(p, 0.42, { fill: tags.lookedAt.light }),
    ];
  return [
    circle(p, 1.9, { fill: ink.paper, stroke: stroke(tags[state].light, 0.45) }),
    ...glyph(glyphOf(mark!), p[0], p[1], 1.05, tags[state].light),
  ];
};

const labelOps = ({ id, box: at }: Placed, mark: Mark | undefined): Ops => {
  if (!said(mark))
    return [
      box(at.x, at.y, at.w, at.h, { fill: ink.paper }),
      text([at.x + at.w / 2, at.y + at.h / 2 + (LABEL_MM * CAP) / 2], id, LABEL_MM, { align: 'middle' }),
    ];
  const colour = tags[mark!.state].light;
  const middle = at.y + at.h / 2;
  return [
    box(at.x, at.y, at.w, at.h, { fill: ink.paper, stroke: stroke(colour, 0.22) }),
    ...glyph(glyphOf(mark!), at.x + 0.7 + TAG_MM * 0.5, middle, TAG_MM * 0.42, colour),
    text([at.x + TAG_MM * 1.3 + 0.6, middle + (TAG_MM * CAP) / 2], tagWords(mark!), TAG_MM, {
      weight: 'bold',
    }),
  ];
};
