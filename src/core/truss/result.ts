import type { Issue } from '../base/issue.ts';
import type { Vec3 } from '../base/vec3.ts';
import type { EndWord, Origin, Role, Tube } from '../job/modelSchema.ts';

export type FaceName = 'left' | 'right' | 'top' | 'bottom' | 'ring';

/** A station point: where tube axes meet. */
export interface Cluster {
  readonly id: string;
  readonly at: Vec3;
  /** Station label when the id says one. */
  readonly station?: string;
  readonly height?: 'U' | 'L';
  readonly side?: 'L' | 'R' | 'C';
  readonly fitting?: string;
  readonly from: 'table' | 'moved' | 'added';
  /** Where its place comes from, when the model says that it is not the drawing. */
  readonly origin?: Exclude<Origin, 'drawing'>;
  /** Its place is a guess: no dimension that rests on it may be worked to. */
  readonly assumed?: true;
}

/** Section and material numbers of a member, all computed or given; units in the names. */
export interface Section {
  /** Outside diameter used to draw, pick and measure; computed from the area when only numbers were given. */
  readonly odIn: number;
  readonly wallIn: number;
  readonly areaIn2: number;
  readonly inertiaIn4: number;
  readonly torsionIn4: number;
  readonly elasticPsi: number;
  readonly shearPsi: number;
  readonly yieldPsi: number;
  readonly densityLbIn3: number;
}

export interface Member {
  readonly id: string;
  /** Cluster ids, forward (or upper, or left) end first. */
  readonly from: string;
  readonly to: string;
  readonly role: Role;
  /** Label of the bay's forward station; none for a member that lies in one station. */
  readonly bay?: string;
  /** Label of the station for a member that lies in one. */
  readonly station?: string;
  /** Faces it lies in; a longeron lies in two. */
  readonly faces: readonly FaceName[];
  readonly side: 'L' | 'R' | 'C';
  /** True distance between its clusters. */
  readonly lengthIn: number;
  /** Its ends whose place is a guess: no length of it may be worked to until they are measured. */
  readonly guessed?: readonly string[];
  readonly tube?: Tube;
  readonly material: string;
  readonly section: Section;
  readonly ends: readonly [EndWord, EndWord];
  readonly fixity: number;
  readonly bolted: boolean;
  readonly near: readonly string[];
  readonly shopNumber?: string;
}

/** The space between two neighbouring stations. */
export interface Bay {
  readonly id: string;
  readonly aft: string;
  readonly clusters: readonly string[];
  readonly members: readonly string[];
}

/** One face of one bay (`4 left`), or the ring across a station (`4 ring`). Corners in order around it. */
export interface Face {
  readonly id: string;
  readonly bay: string;
  readonly face: FaceName;
  readonly corners: readonly string[];
  readonly members: readonly string[];
}

/** Opposite-hand twins, left first. */
export interface Pair {
  readonly kind: 'cluster' | 'member';
  readonly left: string;
  readonly right: string;
}

/** Stage `truss`: the model expanded. Sorted by station, then id. */
export interface Truss {
  readonly clusters: readonly Cluster[];
  readonly members: readonly Member[];
  readonly bays: readonly Bay[];
  readonly faces: readonly Face[];
  readonly pairs: readonly Pair[];
  /** What is odd, each with a mend; the truss is still usable. */
  readonly odd: readonly Issue[];
  readonly issues: readonly Issue[];
}
