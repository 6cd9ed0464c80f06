import { between, type Vec3 } from '../../core/base/vec3.ts';
import type { Cluster, Member, Truss } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';
import { tags } from '../tags.ts';
import { type Box, declutter, type Line, type Placed } from './declutter.ts';
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
import { clusterBox, clusterOps, idWanted, labelOps, said, tagWanted } from './marks.ts';
import { band, type Strip, tube } from './pattern.ts';
import { type Drawing, ink, type Ops, type Point, segment, stroke, text } from './pen.ts';
import { type MapView, type Projection, projection } from './project.ts';

/** Millimetres on paper to the inch of the truss, and how the title block says it. */
export interface Scale {
  readonly mmPerIn: number;
  readonly words: string;
}

/** What is asked of a damage map. */
export interface MapAsk {
  readonly widthMm: number;
  readonly heightMm: number;
  /** mm per inch and its words; left out: the largest round scale that fits. */
  readonly scale?: Scale;
  /** Draw these members only, and the clusters they meet at: one station seen from ahead. */
  readonly only?: ReadonlySet<string>;
  /** Without arrow, scale bar and side words, for a small picture among others. */
  readonly bare?: boolean;
  /** Repairs whose steps are all ticked: a tick stands by their ids. */
  readonly ticked?: ReadonlySet<string>;
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

/** Outer size of the points as seen, inches: width and height. */
export const seenSize = (points: readonly Vec3[], view: MapView): readonly [number, number] => {
  const { at } = projection(view, 1);
  const page = points.map(at);
  const span = (axis: 0 | 1): number =>
    page.length === 0 ? 0 : Math.max(...page.map((p) => p[axis])) - Math.min(...page.map((p) => p[axis]));
  return [span(0), span(1)];
};

/** The scale at which a view of a truss fits a space, so that two views can share one. */
export const mapScale = (truss: Truss, view: MapView, widthMm: number, heightMm: number): Scale =>
  roundScale(
    seenSize(
      truss.clusters.map((c) => c.at),
      view,
    ),
    [widthMm - 2 * MARGIN.x, heightMm - MARGIN.top - MARGIN.bottom],
  );

/** A tube as it lies on the page. */
interface Laid {
  readonly member: Member;
  readonly a: Point;
  readonly b: Point;
  readonly depth: number;
  readonly near: boolean;
}

/** Tubes on the page, the far ones first, so that near ones are drawn over them. */
const layTubes = (
  members: readonly Member[],
  clusters: readonly Cluster[],
  view: MapView,
  seen: Projection,
  place: (p: Vec3) => Point,
): readonly Laid[] => {
  const at = new Map(clusters.map((c) => [c.id, c.at]));
  const depths = clusters.map((c) => seen.depth(c.at));
  const halfWay = (Math.min(...depths) + Math.max(...depths)) / 2;
  return members
    .flatMap((member): readonly Laid[] => {
      const [a, b] = [at.get(member.from), at.get(member.to)];
      if (!a || !b) return [];
      // a tube of no face counts as near when no end of it lies in the far half
      const near =
        view.near === null ||
        member.faces.includes(view.near) ||
        (member.faces.length === 0 && Math.max(seen.depth(a), seen.depth(b)) <= halfWay + 0.5);
      return [{ member, a: place(a), b: place(b), depth: seen.depth(between(a, b, 0.5)), near }];
    })
    .sort((p, q) => Number(p.near) - Number(q.near) || q.depth - p.depth);
};

/** Where the band of a tag wraps a tube; none on a tube seen nearly end on. */
const stripOn = ({ a, b }: Laid): Strip | null => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return length < 3
    ? null
    : {
        at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
        along: [(b[0] - a[0]) / length, (b[1] - a[1]) / length],
        halfLength: Math.min(5, length * 0.3),
        halfWidth: 1.45,
      };
};

const middleLine = ({ at, along, halfLength: h }: Strip): Line => [
  [at[0] - along[0] * h, at[1] - along[1] * h],
  [at[0] + along[0] * h, at[1] + along[1] * h],
];

/** Arrow, scale bar and words along the foot. */
const footOps = (view: MapView, ask: MapAsk, seen: Projection, scale: Scale): Ops => {
  const foot = ask.heightMm - 9;
  return [
    ...forwardArrow([14, foot + 2], seen),
    ...(view.flat ? scaleBar([30, foot + 2.4], scale.mmPerIn, 60) : []),
    text([ask.widthMm - 4, foot + 3.6], `${view.side}.`, 2.6, { align: 'right' }),
    text([ask.widthMm - 4, foot + 7], depthWords(view, scale.words), 2.2, {
      align: 'right',
      colour: ink.quiet,
    }),
  ];
};

const depthWords = (view: MapView, scaleWords: string): string =>
  view.near === null
    ? 'Lengths are not to scale. Never scale a print: true lengths stand in the tables.'
    : `Near face strong, the rest faint. Scale ${scaleWords} in this plane. True lengths stand in the tables.`;

const middleOf = (page: readonly Point[]): Point => {
  const mid = (axis: 0 | 1): number =>
    page.length === 0
      ? 0
      : (Math.min(...page.map((p) => p[axis])) + Math.max(...page.map((p) => p[axis]))) / 2;
  return [mid(0), mid(1)];
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
  const place = (p: Vec3): Point => {
    const [x, y] = seen.at(p);
    return [x - origin[0] + ask.widthMm / 2, y - origin[1] + margin.top + room[1] / 2];
  };

  const done = (id: string): boolean => ask.ticked?.has(id) ?? false;
  const tubes = layTubes(members, clusters, view, seen, place);
  const strong = tubes.filter(({ near }) => near);
  const ends = new Set(strong.flatMap(({ member }) => [member.from, member.to]));
  const shown = clusters.filter((c) => view.near === null || ends.has(c.id));
  const tagged = strong.flatMap((laid) => {
    const mark = marks.get(laid.member.id);
    return said(mark) ? [{ mark, laid, strip: stripOn(laid) }] : [];
  });
  const bands = tagged.flatMap(({ mark, strip }) => (strip ? [{ mark, strip }] : []));
  const badges = ask.bare
    ? cornerBadges(seen, ask.widthMm, ask.heightMm)
    : sideBadges(view, seen, points, place);

  const foot: Box = { x: 0, y: ask.heightMm - 11.5, w: ask.widthMm, h: 12 };
  const { placed, leftOut } = declutter(
    [
      ...tagged.map(({ mark, laid: { a, b } }) => tagWanted(mark, middleOf([a, b]), done(mark.id))),
      ...shown.map((c) => {
        const mark = marks.get(c.id);
        return said(mark) ? tagWanted(mark, place(c.at), done(c.id)) : idWanted(c.id, place(c.at));
      }),
    ],
    { x: 1, y: 1, w: ask.widthMm - 2, h: ask.heightMm - 2 },
    [...badges.map(badgeBox), ...(ask.bare ? [] : [foot])],
    shown.filter((c) => said(marks.get(c.id))).map((c) => clusterBox(place(c.at))),
    bands.map(({ strip }) => middleLine(strip)),
    strong.map(({ a, b }) => [a, b]),
  );

  const widthOf = ({ section }: Member): number => Math.max(LEAST_TUBE_MM, section.odIn * scale.mmPerIn);
  const ballMm = Math.max(LEAST_TUBE_MM, ...strong.map(({ member }) => widthOf(member) / 2 + 0.35));
  const tubeOps = ({ member, a, b, near }: Laid): Ops => {
    if (!near) return [segment(a, b, stroke(ink.faint, 0.25))];
    const { pattern, light } = tags[marks.get(member.id)?.state ?? 'notLookedAt'];
    return tube(a, b, widthOf(member), pattern, pattern === 'dotted' ? ink.quiet : light);
  };
  return {
    widthMm: ask.widthMm,
    heightMm: ask.heightMm,
    ops: [
      ...tubes.flatMap(tubeOps),
      ...shown.flatMap((c) => clusterOps(place(c.at), marks.get(c.id), ballMm)),
      ...placed.flatMap(({ leader }) =>
        leader ? [segment(leader[0], leader[1], stroke(ink.quiet, 0.18))] : [],
      ),
      ...bands.flatMap(({ mark, strip }) => band(strip, tags[mark.state].pattern, tags[mark.state].light)),
      ...placed.flatMap((label) => labelOps(label, marks.get(label.id), done(label.id))),
      ...(leftOut.length > 0
        ? [text([4, 4], `No room here for the ids of: ${leftOut.join(', ')}`, 2.2)]
        : []),
      ...badges.flatMap(badgeOps),
      ...(ask.bare ? [] : footOps(view, ask, seen, scale)),
    ],
    view,
    scaleWords: view.flat ? scale.words : 'not to scale',
    labels: placed,
    badges,
    leftOut,
  };
};
