import { between, dot, type Vec3 } from '../../core/base/vec3.ts';
import { tags } from '../../present/tags.ts';
import { type Box, declutter, type Place, type Wish } from './declutter.ts';
import { centreOf, type Drawn, middleOf, pointOn } from './drawn.ts';
import type { Floor } from './floor.ts';
import { banded, stateColour } from './inks.ts';
import { at, card, font, type Overlay, stroke, widthOf, write } from './overlay.ts';
import type { SceneProps } from './sceneProps.ts';
import type { ScreenPoint } from './turntable.ts';

/** How a label looks: writing alone, on paper, on paper with the edge of a state, or in the accent. */
export type LabelStyle = 'plain' | 'quiet' | 'paper' | 'strong' | 'tag' | 'chosen' | 'hover';

export interface Label {
  readonly text: string;
  readonly code?: string;
  /** CSS colour of a tag's edge. */
  readonly edge?: string;
  readonly at: Vec3;
  /** The line it belongs to, so that it may stand square to it. */
  readonly along?: readonly [Vec3, Vec3];
  readonly style: LabelStyle;
  /** Lower goes first. */
  readonly rank: number;
  /** Stands even where something nearer covers what it names. */
  readonly must: boolean;
  /** Radius of what it names, inches, and pixels kept free beyond that; 0 and 0 lets it lie on its anchor. */
  readonly radiusIn: number;
  readonly clear: number;
  readonly far: boolean;
}

/** An id as it is read: the dash between two clusters is a dash and not a minus. */
export const spoken = (id: string): string => id.replace('-', '–');

type Shown = Pick<SceneProps, 'marks' | 'selected' | 'ghosted' | 'labels' | 'light'> & {
  readonly lines: NonNullable<SceneProps['lines']>;
};

const shows = {
  none: { members: false, clusters: false },
  selection: { members: false, clusters: false },
  clusters: { members: false, clusters: true },
  members: { members: true, clusters: false },
  all: { members: true, clusters: true },
} as const satisfies Record<SceneProps['labels'], { members: boolean; clusters: boolean }>;

/** Every label that is wanted, the most important first; places are given when a frame is drawn. */
export const labelsFor = (d: Drawn, floor: Floor, shown: Shown): readonly Label[] => {
  const { marks, selected, ghosted, labels, light, lines } = shown;
  const list: Label[] = [];
  const naming = shows[labels];
  const each = (kind: 'member' | 'cluster') => (id: string, i: number) => {
    const state = marks.get(id)?.state;
    const chosen = labels !== 'none' && selected.has(id);
    const tagged = state !== undefined && banded[state] && !ghosted.has(id);
    const named = chosen || (!ghosted.has(id) && (kind === 'member' ? naming.members : naming.clusters));
    if (!named && !tagged) return;
    const place =
      kind === 'member'
        ? ({
            at: pointOn(d, i, 0.5),
            along: [pointOn(d, i, 0), pointOn(d, i, 1)],
            radiusIn: d.radii[i]!,
            clear: tagged ? 6 : 4,
          } as const)
        : ({ at: centreOf(d, i), radiusIn: d.balls[i]!, clear: tagged ? 7 : 4 } as const);
    list.push({
      ...place,
      text: named ? spoken(id) : '',
      ...(tagged ? { code: tags[state].chalk, edge: stateColour(state, light) } : {}),
      style: chosen ? 'chosen' : tagged ? 'tag' : kind === 'cluster' ? 'plain' : 'quiet',
      rank: chosen ? 1 : tagged ? 3 : kind === 'cluster' ? 5 : 6,
      must: chosen || tagged,
      far: chosen || tagged,
    });
  };
  d.memberIds.forEach(each('member'));
  d.clusterIds.forEach(each('cluster'));
  for (const { from, to, label, strong } of lines)
    list.push({
      at: between(from, to, 0.5),
      along: [from, to],
      text: label,
      style: strong ? 'strong' : 'paper',
      rank: strong ? 2 : 4,
      must: true,
      radiusIn: 0,
      clear: 0,
      far: true,
    });
  if (labels !== 'none')
    for (const { label, x } of floor.stations)
      list.push({
        at: [x, -floor.half, floor.z],
        text: label,
        style: 'quiet',
        rank: 7,
        must: true,
        radiusIn: 0,
        clear: 6,
        far: false,
      });
  return list.sort((a, b) => a.rank - b.rank);
};

/** The label of what the pointer is over. */
export const hoverLabel = (d: Drawn, id: string): Label | null => {
  const place = middleOf(d, id);
  return place === null
    ? null
    : { at: place, text: spoken(id), style: 'hover', rank: 0, must: true, radiusIn: 0, clear: 10, far: true };
};

const PAD = { plain: 0, quiet: 0, paper: 5, strong: 5, tag: 4, chosen: 5, hover: 5 } as const;
const faceOf = (o: Overlay, style: LabelStyle) => font(o, style === 'quiet' || style === 'paper' ? 400 : 600);

/** A label with its place on the screen, found once a frame. */
interface Seen {
  readonly label: Label;
  readonly depth: number;
  readonly where: ScreenPoint;
  readonly along: readonly [ScreenPoint, ScreenPoint] | null;
}

const see = (o: Overlay, label: Label): Seen => ({
  label,
  depth: dot(label.at, o.basis.back),
  where: at(o, label.at),
  along: label.along ? [at(o, label.along[0]), at(o, label.along[1])] : null,
});

const writtenWidth = (o: Overlay, label: Label): number => {
  const known = o.labelWidths.get(label);
  if (known !== undefined) return known;
  const code = label.code === undefined ? 0 : widthOf(o, label.code, font(o, 600));
  const text = label.text === '' ? 0 : widthOf(o, label.text, faceOf(o, label.style));
  const width = Math.ceil(code + text + (code > 0 && text > 0 ? 6 : 0) + 2 * PAD[label.style]);
  o.labelWidths.set(label, width);
  return width;
};

/** Square to a line, the upper side first, as numbers stand on a drawing. */
const squareTo = ([a, b]: readonly [ScreenPoint, ScreenPoint]): readonly [number, number] | null => {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  if (long < 1) return null;
  const [nx, ny] = [(b.y - a.y) / long, -(b.x - a.x) / long];
  return ny > 0 ? [-nx, -ny] : [nx, ny];
};

const measure = (o: Overlay, { label, where, along }: Seen): Wish => {
  const toward = along && squareTo(along);
  return {
    x: where.x,
    y: where.y,
    width: writtenWidth(o, label),
    height: o.inks.small + (PAD[label.style] > 0 ? 6 : 2),
    clear: label.radiusIn * o.turntable.scale + label.clear,
    far: label.far,
    ...(toward ? { toward } : {}),
  };
};

const paint = (o: Overlay, label: Label, wish: Wish, place: Place): void => {
  const { inks } = o;
  const box: Box = {
    left: Math.round(place.left) + 0.5,
    top: Math.round(place.top) + 0.5,
    right: Math.round(place.left) + 0.5 + wish.width,
    bottom: Math.round(place.top) + 0.5 + wish.height,
  };
  const middle = (box.top + box.bottom) / 2;
  if (place.leader) {
    const end = {
      x: Math.min(box.right, Math.max(box.left, wish.x)),
      y: Math.min(box.bottom, Math.max(box.top, wish.y)),
    };
    stroke(o, wish, end, label.style === 'chosen' ? inks.accent : inks.soft, 1);
  }
  const start = box.left + PAD[label.style];
  switch (label.style) {
    case 'plain':
      write(o, label.text, start, middle, faceOf(o, 'plain'), inks.ink);
      return;
    case 'quiet':
      write(o, label.text, start, middle, faceOf(o, 'quiet'), inks.soft);
      return;
    case 'paper':
      card(o, box, inks.paper, inks.soft, 1);
      break;
    case 'strong':
      card(o, box, inks.paper, inks.accent, 2);
      break;
    case 'hover':
      card(o, box, inks.ink, inks.ink, 1);
      break;
    case 'tag':
      card(o, box, inks.paper, label.edge ?? inks.ink, 1.5);
      break;
    case 'chosen':
      card(o, box, inks.accent, inks.accent, 1);
      break;
    default:
      label.style satisfies never;
  }
  o.pen.textAlign = 'left';
  o.pen.textBaseline = 'middle';
  o.pen.fillStyle = label.style === 'chosen' || label.style === 'hover' ? inks.paper : inks.ink;
  let x = start;
  if (label.code !== undefined) {
    o.pen.font = font(o, 600);
    o.pen.fillText(label.code, x, middle + 0.5);
    x += widthOf(o, label.code, o.pen.font) + 6;
  }
  o.pen.font = faceOf(o, label.style);
  o.pen.fillText(label.text, x, middle + 0.5);
};

/** A label of what lies exactly behind something nearer, or is seen end on, would be taken for the nearer thing's. */
const covered = () => {
  const taken = new Set<string>();
  const near = ({ x, y }: ScreenPoint) => `${Math.round(x / 5)} ${Math.round(y / 5)}`;
  return ({ where, along }: Seen): boolean => {
    if (along && Math.hypot(along[0].x - along[1].x, along[0].y - along[1].y) < 20) return true;
    const key = along ? along.map(near).sort().join(' ') : near(where);
    const was = taken.has(key);
    taken.add(key);
    return was;
  };
};

/** Gives every label a place that overlaps no other, and draws what found one; those nearer to the viewer go first. */
export const paintLabels = (o: Overlay, labels: readonly Label[], kept: readonly Box[]): void => {
  const { width, height } = o.size;
  const isCovered = covered();
  const seen = labels
    .map((label) => see(o, label))
    .filter(({ where: { x, y } }) => x > 0 && y > 0 && x < width && y < height)
    .sort((a, b) => a.label.rank - b.label.rank || b.depth - a.depth)
    .filter((one) => !isCovered(one) || one.label.must);
  const wishes = seen.map((one) => measure(o, one));
  const places = declutter(wishes, { left: 4, top: 4, right: width - 4, bottom: height - 4 }, kept);
  for (let i = places.length - 1; i >= 0; i--) {
    const place = places[i];
    if (place) paint(o, seen[i]!.label, wishes[i]!, place);
  }
};
