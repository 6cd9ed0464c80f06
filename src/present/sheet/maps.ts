import type { Truss } from '../../core/truss/result.ts';
import { roundScale } from '../draw/furniture.ts';
import { ink, type Ops, segment, shift, stroke, text } from '../draw/pen.ts';
import { mapViews } from '../draw/project.ts';
import { damageMap, mapScale, seenSize } from '../draw/view.ts';
import type { Section } from '../record/sections.ts';
import { byId } from '../tables/showing.ts';
import type { Room } from './paper.ts';

export interface Picture {
  readonly ops: Ops;
  readonly scale: string;
}

/** The truss cut down to some of its members and the clusters they meet at. */
const closeUp = (truss: Truss, members: ReadonlySet<string>): Truss => {
  const kept = truss.members.filter(({ id }) => members.has(id));
  const ends = new Set(kept.flatMap(({ from, to }) => [from, to]));
  return { ...truss, members: kept, clusters: truss.clusters.filter(({ id }) => ends.has(id)) };
};

/** Views of the whole truss one above the other, at one scale, over the legend. */
export const mapBody = (
  section: Extract<Section, { kind: 'map' }>,
  room: Room,
  legendAt: number,
): Picture => {
  const marks = byId(section.coverage.marks);
  const height = (room.h - legendAt) / section.views.length;
  const { truss, ticked } = section;
  const scales = section.views.map((name) => mapScale(truss, mapViews[name], room.w, height));
  const scale = scales.reduce((least, one) => (one.mmPerIn < least.mmPerIn ? one : least));
  const maps = section.views.map((name) =>
    damageMap(truss, marks, mapViews[name], {
      widthMm: room.w,
      heightMm: height,
      scale,
      ...(ticked ? { ticked } : {}),
    }),
  );
  return {
    scale: maps[0]!.scaleWords,
    ops: [
      ...maps.flatMap((map, k) => shift(map.ops, 0, k * height)),
      ...section.views.map((_, k) =>
        segment([0, (k + 1) * height], [room.w, (k + 1) * height], stroke(ink.faint, 0.2)),
      ),
    ],
  };
};

/** Bays close to, two beside each other, from ahead, above and the pilot's left. */
export const closeUpBodies = (
  { truss, coverage, bays }: Extract<Section, { kind: 'closeUps' }>,
  room: Room,
  legendAt: number,
): readonly Picture[] => {
  const marks = byId(coverage.marks);
  const [w, h] = [room.w / 2, room.h - legendAt];
  return Array.from({ length: Math.ceil(bays.length / 2) }, (_, page) => ({
    scale: 'not to scale',
    ops: bays.slice(2 * page, 2 * page + 2).flatMap(({ id, members }, k) => {
      const near = closeUp(truss, new Set(members));
      const map = damageMap(near, marks, mapViews.threeQuarter, { widthMm: w, heightMm: h });
      return [
        ...shift(map.ops, k * w, 0),
        text([k * w + 4, 5], `Bay ${id}`, 4, { weight: 'bold' }),
        ...(k > 0 ? [segment([w, 2], [w, h - 2], stroke(ink.faint, 0.2))] : []),
      ];
    }),
  }));
};

/** Every station seen from ahead, one small picture each, at one scale. */
export const stationBodies = (
  section: Extract<Section, { kind: 'stations' }>,
  room: Room,
  legendAt: number,
): readonly Picture[] => {
  const { truss, coverage } = section;
  const marks = byId(coverage.marks);
  const rings = truss.faces.filter((face) => face.face === 'ring' && face.members.length > 0);
  if (rings.length === 0) return [];
  const rows = 2;
  const columns = Math.min(6, Math.max(3, Math.ceil(rings.length / rows)));
  const [w, h] = [room.w / columns, (room.h - legendAt) / rows];
  const view = mapViews.fromAhead;
  const at = byId(truss.clusters);
  const members = byId(truss.members);
  const sizes = rings.map((ring) =>
    seenSize(
      ring.members.flatMap((id) => [members.get(id)!.from, members.get(id)!.to]).map((id) => at.get(id)!.at),
      view,
    ),
  );
  const scale = roundScale(
    [Math.max(...sizes.map(([x]) => x)), Math.max(...sizes.map(([, y]) => y))],
    [w - 18, h - 24],
  );
  const perSheet = columns * rows;
  return Array.from({ length: Math.ceil(rings.length / perSheet) }, (_, page) => ({
    scale: scale.words,
    ops: rings.slice(page * perSheet, (page + 1) * perSheet).flatMap((ring, k) => {
      const [x, y] = [(k % columns) * w, Math.floor(k / columns) * h];
      const map = damageMap(truss, marks, view, {
        widthMm: w,
        heightMm: h - 3,
        scale,
        only: new Set(ring.members),
        bare: true,
      });
      return [
        ...shift(map.ops, x, y),
        text([x + w / 2, y + h - 6], `Station ${ring.bay}`, 2.8, {
          weight: 'bold',
          align: 'middle',
        }),
        ...(k % columns > 0 ? [segment([x, y + 4], [x, y + h - 4], stroke(ink.faint, 0.2))] : []),
      ];
    }),
  }));
};
