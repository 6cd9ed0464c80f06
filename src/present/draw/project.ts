import { cross, dot, unit, type Vec3 } from '../../core/base/vec3.ts';
import type { FaceName } from '../../core/truss/result.ts';
import type { Point } from './pen.ts';

export type MapViewName = 'leftSide' | 'rightSide' | 'plan' | 'fromBelow' | 'fromAhead' | 'threeQuarter';

/** A place to look from. Sides in words are the pilot's. */
export interface MapView {
  readonly name: MapViewName;
  readonly title: string;
  /** Side in words, for the title block and under the drawing. */
  readonly side: string;
  /** Line of sight, from the eye into the truss; and what stands upright on the page. */
  readonly sight: Vec3;
  readonly up: Vec3;
  /** Face drawn strong; the others stand behind it, faint. None: all are drawn alike. */
  readonly near: FaceName | null;
  /** Lengths square to the line of sight are to scale. */
  readonly flat: boolean;
}

export const mapViews = {
  leftSide: {
    name: 'leftSide',
    title: 'Left side',
    side: "Pilot's left side, seen from the left",
    sight: [0, 1, 0],
    up: [0, 0, 1],
    near: 'left',
    flat: true,
  },
  rightSide: {
    name: 'rightSide',
    title: 'Right side',
    side: "Pilot's right side, seen from the right",
    sight: [0, -1, 0],
    up: [0, 0, 1],
    near: 'right',
    flat: true,
  },
  plan: {
    name: 'plan',
    title: 'Top',
    side: "Top, seen from above; pilot's right is up the page",
    sight: [0, 0, -1],
    up: [0, 1, 0],
    near: 'top',
    flat: true,
  },
  fromBelow: {
    name: 'fromBelow',
    title: 'Bottom',
    side: "Bottom, seen from below; pilot's left is up the page",
    sight: [0, 0, 1],
    up: [0, -1, 0],
    near: 'bottom',
    flat: true,
  },
  fromAhead: {
    name: 'fromAhead',
    title: 'Stations from ahead',
    side: "Seen from ahead, looking aft; pilot's left is on the right of the page",
    sight: [1, 0, 0],
    up: [0, 0, 1],
    near: 'ring',
    flat: true,
  },
  threeQuarter: {
    name: 'threeQuarter',
    title: 'Whole truss',
    side: "Seen from ahead, above and the pilot's left; not to scale",
    sight: unit([0.52, 0.74, -0.43]),
    up: [0, 0, 1],
    near: null,
    flat: false,
  },
} as const satisfies Record<MapViewName, MapView>;

export interface Projection {
  /** Page point, y down, in the unit of the truss times `scale`. */
  readonly at: (p: Vec3) => Point;
  /** How far behind the page a point lies; larger is farther from the eye. */
  readonly depth: (p: Vec3) => number;
  /** Where a direction goes on the page; shorter than one when it leans into the page. */
  readonly turn: (d: Vec3) => Point;
}

/** Parallel projection along a line of sight, `mmPerIn` to the inch. */
export const projection = (view: Pick<MapView, 'sight' | 'up'>, mmPerIn: number): Projection => {
  const sight = unit(view.sight);
  const right = unit(cross(sight, view.up));
  const up = cross(right, sight);
  const turn = (d: Vec3): Point => [dot(d, right) + 0, -dot(d, up) + 0];
  return {
    turn,
    at: (p) => {
      const [x, y] = turn(p);
      return [x * mmPerIn, y * mmPerIn];
    },
    depth: (p) => dot(p, sight),
  };
};
