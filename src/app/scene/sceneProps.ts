import type { Vec3 } from '../../core/base/vec3.ts';
import type { Truss } from '../../core/truss/result.ts';
import type { Mark } from '../../core/walkRound/result.ts';

export type Light = 'day' | 'night' | 'outdoor';
export type ViewName = 'leftSide' | 'rightSide' | 'plan' | 'fromAhead' | 'fromBelow' | 'threeQuarter';

/** A request to the camera; a new `turn` number asks again. `fit` keeps the direction. */
export interface ViewAsk {
  readonly view: ViewName | 'keep';
  readonly fit: 'all' | 'selection' | 'none';
  readonly turn: number;
}

/** A line between two points with a number on a paper label (readings, targets). */
export interface SceneLine {
  readonly id: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly label: string;
  readonly strong: boolean;
}

/** Another shape of the same truss: as found, deflected. Moves are true; the picture enlarges them by `factor` and prints it in the corner. */
export interface SceneShape {
  readonly name: string;
  readonly moves: ReadonlyMap<string, Vec3>;
  readonly factor: number;
  /** The same moves the other way too, as a second hairline: both ends of a swing, for those who want no motion. */
  readonly bothWays?: boolean;
  /** Said in the corner in place of the factor, for a movement that has no size of its own. */
  readonly size?: string;
}

/** A load on a cluster: an arrow that ends there, its length a share of the longest one's. */
export interface SceneArrow {
  readonly cluster: string;
  /** Unit vector the load points to; for a moment, the axis it turns about by the right hand. */
  readonly towards: Vec3;
  readonly share: number;
  readonly label: string;
  /** A moment: drawn with two heads. */
  readonly turns?: boolean;
}

/** Where a tube is to be sawn: a kerf in the middle of the length that may be cut, from the `from` cluster. */
export interface SceneCut {
  readonly member: string;
  readonly fromIn: number;
  readonly toIn: number;
  readonly label: string;
}

/** Where a photo was taken: on a cluster, or at a share of a tube's length from its `from` end. */
export interface ScenePin {
  readonly id: string;
  readonly share: number;
  readonly label: string;
}

export interface Hit {
  readonly kind: 'member' | 'cluster';
  readonly id: string;
  /** Distance from the member's `from` cluster where it was hit. */
  readonly alongIn?: number;
  readonly additive: boolean;
}

/** The scene shows what it is given and says what was touched; it keeps no truth of its own. */
export interface SceneProps {
  readonly truss: Truss;
  readonly marks: ReadonlyMap<string, Mark>;
  readonly selected: ReadonlySet<string>;
  /** Drawn faint and not pickable. */
  readonly ghosted: ReadonlySet<string>;
  readonly labels: 'none' | 'selection' | 'clusters' | 'members' | 'all';
  /** Colour by id (CSS colour) in place of the tag's, for force and stress. */
  readonly colours?: ReadonlyMap<string, string>;
  readonly lines?: readonly SceneLine[];
  /** Numbers by member or cluster id, the most important first; each with its unit. */
  readonly numbers?: ReadonlyMap<string, string>;
  readonly arrows?: readonly SceneArrow[];
  readonly cutMarks?: readonly SceneCut[];
  readonly pins?: readonly ScenePin[];
  readonly shape?: SceneShape;
  readonly light: Light;
  readonly view: ViewAsk;
  readonly reducedMotion: boolean;
  /** Unit of the scale bar; inches when not said. */
  readonly scaleUnit?: 'in' | 'mm';
  /** Every tap adds to the selection, as with Shift or Ctrl held. */
  readonly adding?: boolean;
  readonly onPick: (hit: Hit | null) => void;
  /** The browser has no WebGL; the table still holds everything. */
  readonly onUnavailable?: () => void;
}
