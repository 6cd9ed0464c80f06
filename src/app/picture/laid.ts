import type { Assessment } from '../../core/assessment.ts';
import { distance, length, type Vec3 } from '../../core/base/vec3.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import { showLength, type Units, whole } from '../../present/show.ts';
import type { Light, SceneArrow, SceneCut, SceneShape } from '../scene/sceneProps.ts';
import type { Overlay } from '../state/overlay.ts';
import { type Classes, colourIn, roundDown } from './classes.ts';
import type { Stages } from './planStateFor.ts';

/** The strip under the picture that says what the colours mean, in numbers and words. */
export interface Strip {
  readonly title: string;
  readonly unit: string;
  readonly classes?: Classes;
  /** A border as it is written, without its unit. */
  readonly write?: (border: number) => string;
  /** Words at the two ends of the strip. */
  readonly low?: string;
  readonly high?: string;
  readonly notes: readonly string[];
  /** Stages of the work: then the bar of the plan is drawn in its place. */
  readonly stages?: Stages;
}

/** What an overlay lays over the picture. A movement swings: its shape's factor is for its far end. */
export interface Laid {
  readonly colours?: ReadonlyMap<string, string>;
  readonly numbers?: ReadonlyMap<string, string>;
  readonly shape?: SceneShape;
  readonly swings?: boolean;
  readonly arrows?: readonly SceneArrow[];
  readonly cutMarks?: readonly SceneCut[];
  readonly strip: Strip;
}

export interface Given {
  readonly all: Assessment;
  readonly model: Model;
  readonly overlay: Overlay;
  readonly light: Light;
  readonly units: Units;
}

export const signedText = (value: number): string => `${value < 0 ? '−' : '+'}${whole(Math.abs(value))}`;

export const says = (title: string, ...notes: readonly string[]): Laid => ({
  strip: { title, unit: '', notes },
});

/** Largest first, as numbers are placed. */
export const ranked = (
  values: ReadonlyMap<string, number>,
  text: (value: number) => string,
  least: number,
): ReadonlyMap<string, string> =>
  new Map(
    [...values]
      .filter(([, value]) => Math.abs(value) >= least)
      .sort((a, b) => Math.abs(b[1]) - Math.abs(a[1]))
      .map(([id, value]) => [id, text(value)]),
  );

export const coloured = (
  values: ReadonlyMap<string, number>,
  classes: Classes,
): ReadonlyMap<string, string> => new Map([...values].map(([id, value]) => [id, colourIn(classes, value)]));

export const largestOf = (values: ReadonlyMap<string, number>): number =>
  [...values.values()].reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** Size of the truss: the longest way across its bounds, inches. */
const sizeOf = ({ truss }: Assessment): number => {
  const low = [0, 1, 2].map((k) => Math.min(...truss.clusters.map(({ at }) => at[k]!)));
  const high = [0, 1, 2].map((k) => Math.max(...truss.clusters.map(({ at }) => at[k]!)));
  return distance([low[0]!, low[1]!, low[2]!], [high[0]!, high[1]!, high[2]!]) || 1;
};

/** Moves enlarged by a round factor until the largest is a twentieth of the truss; never drawn smaller than they are. */
export const shapeOf = (
  all: Assessment,
  name: string,
  moves: readonly { readonly id: string; readonly moveIn: Vec3 }[],
): SceneShape => {
  const most = moves.reduce((m, { moveIn }) => Math.max(m, length(moveIn)), 0);
  const factor = most > 0 ? Math.max(1, roundDown((0.05 * sizeOf(all)) / most)) : 1;
  return { name, moves: new Map(moves.map(({ id, moveIn }) => [id, moveIn])), factor };
};

export const moveNumbers = (
  moves: readonly { readonly id: string; readonly moveIn: Vec3 }[],
  units: Units,
  most: number,
): ReadonlyMap<string, string> =>
  new Map(
    [
      ...ranked(
        new Map(moves.map(({ id, moveIn }) => [id, length(moveIn)])),
        (v) => showLength(v, units === 'mm' ? 'mm' : 'inDecimal'),
        5e-4,
      ),
    ].slice(0, most),
  );
