import type { Assessment } from '../../core/assessment.ts';
import { add, distance, length, scale, unit, type Vec3 } from '../../core/base/vec3.ts';
import type { Model } from '../../core/job/modelSchema.ts';
import type { CutCandidate, WhereToSaw } from '../../core/relief/result.ts';
import type { SolvedCase } from '../../core/statics/result.ts';
import {
  fixed,
  lengthUnit,
  showLength,
  showShare,
  showStress,
  type Units,
  whole,
} from '../../present/show.ts';
import type { Light, SceneArrow, SceneCut, SceneShape } from '../scene/sceneProps.ts';
import type { Overlay } from '../state/overlay.ts';
import { bordersTo, type Classes, colourIn, roundDown, signed, upward } from './classes.ts';

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

const signedText = (value: number): string => `${value < 0 ? '−' : '+'}${whole(Math.abs(value))}`;

const says = (title: string, ...notes: readonly string[]): Laid => ({ strip: { title, unit: '', notes } });

/** Largest first, as numbers are placed. */
const ranked = (
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

const coloured = (values: ReadonlyMap<string, number>, classes: Classes): ReadonlyMap<string, string> =>
  new Map([...values].map(([id, value]) => [id, colourIn(classes, value)]));

const largestOf = (values: ReadonlyMap<string, number>): number =>
  [...values.values()].reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** Size of the truss: the longest way across its bounds, inches. */
const sizeOf = ({ truss }: Assessment): number => {
  const low = [0, 1, 2].map((k) => Math.min(...truss.clusters.map(({ at }) => at[k]!)));
  const high = [0, 1, 2].map((k) => Math.max(...truss.clusters.map(({ at }) => at[k]!)));
  return distance([low[0]!, low[1]!, low[2]!], [high[0]!, high[1]!, high[2]!]) || 1;
};

/** Moves enlarged by a round factor until the largest is a twentieth of the truss; never drawn smaller than they are. */
const shapeOf = (
  all: Assessment,
  name: string,
  moves: readonly { readonly id: string; readonly moveIn: Vec3 }[],
): SceneShape => {
  const most = moves.reduce((m, { moveIn }) => Math.max(m, length(moveIn)), 0);
  const factor = most > 0 ? Math.max(1, roundDown((0.05 * sizeOf(all)) / most)) : 1;
  return { name, moves: new Map(moves.map(({ id, moveIn }) => [id, moveIn])), factor };
};

const moveNumbers = (
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

/** Loads at clusters of a case as arrows; several at one cluster are one. Own weight of the tubes is not drawn. */
const arrowsOf = (model: Model, caseId: string): readonly SceneArrow[] => {
  const loadCase = model.loadCases.find(({ id }) => id === caseId);
  if (!loadCase) return [];
  const at = new Map<string, Vec3>();
  const put = (cluster: string, force: Vec3): void => {
    at.set(cluster, add(at.get(cluster) ?? [0, 0, 0], force));
  };
  for (const { cluster, forceLbf } of loadCase.loads) if (forceLbf) put(cluster, forceLbf);
  for (const { cluster, weightLbf } of loadCase.weights ?? [])
    put(cluster, scale(loadCase.gravity, weightLbf));
  const most = Math.max(...[...at.values()].map(length));
  return [...at]
    .filter(([, force]) => length(force) > 1e-6)
    .map(([cluster, force]) => ({
      cluster,
      towards: unit(force),
      share: length(force) / most,
      label: `${whole(length(force))} lbf`,
    }));
};

const caseName = (model: Model, id: string): string => model.loadCases.find((c) => c.id === id)?.name ?? id;

/** The chosen load case, else the first one that was worked. */
export const chosenCase = (all: Assessment, overlay: Overlay): SolvedCase | undefined =>
  all.statics.kind !== 'stands'
    ? undefined
    : (all.statics.cases.find(({ id }) => id === overlay.caseId) ?? all.statics.cases[0]);

const noCase = 'No load case is worked: the truss moves freely as it is held, or the model has none.';
const asDrawn = 'Truss as drawn, undamaged; elastic sums.';

const ofCase = (given: Given, lay: (solved: SolvedCase) => Laid): Laid => {
  const solved = chosenCase(given.all, given.overlay);
  if (!solved) return says('Load cases', noCase);
  const laid = lay(solved);
  return given.overlay.arrows ? { ...laid, arrows: arrowsOf(given.model, solved.id) } : laid;
};

const forces = (given: Given): Laid =>
  ofCase(given, (solved) => {
    const values = new Map(solved.members.map((m) => [m.id, m.axialLbf]));
    const classes = signed(largestOf(values), given.light);
    return {
      colours: coloured(values, classes),
      ...(given.overlay.numbers
        ? { numbers: ranked(values, (v) => `${signedText(v)} lbf`, classes.borders[3]!) }
        : {}),
      strip: {
        title: `Force along each tube: ${caseName(given.model, solved.id)}`,
        unit: 'lbf',
        classes,
        write: signedText,
        low: '− compression',
        high: 'tension +',
        notes: [asDrawn],
      },
    };
  });

const stress = (given: Given): Laid =>
  ofCase(given, (solved) => {
    const yields = new Map(given.all.truss.members.map((m) => [m.id, m.section.yieldPsi]));
    const values = new Map(
      solved.members.flatMap((m) => {
        const yieldPsi = yields.get(m.id);
        return yieldPsi === undefined ? [] : [[m.id, m.stressPsi / yieldPsi] as const];
      }),
    );
    const classes = upward([0.05, 0.1, 0.25, 0.5, 1], given.light);
    return {
      colours: coloured(values, classes),
      ...(given.overlay.numbers ? { numbers: ranked(values, showShare, 0.02) } : {}),
      strip: {
        title: `Largest stress as a share of yield: ${caseName(given.model, solved.id)}`,
        unit: '% of yield',
        classes,
        write: (border) => fixed(100 * border, 0),
        notes: [`${asDrawn} Axial force and bending together; buckling is not in it.`],
      },
    };
  });

const deflected = (given: Given): Laid =>
  ofCase(given, (solved) => ({
    shape: shapeOf(given.all, caseName(given.model, solved.id), solved.clusters),
    ...(given.overlay.numbers ? { numbers: moveNumbers(solved.clusters, given.units, 40) } : {}),
    strip: {
      title: `Deflected shape: ${caseName(given.model, solved.id)}`,
      unit: lengthUnit(given.units),
      notes: [`${asDrawn} Solid: deflected, enlarged. Hairline: as drawn. Numbers are the true moves.`],
    },
  }));

const lockedIn = ({ all, overlay, light }: Given): Laid => {
  const { lockedIn: locked } = all;
  if (locked.kind === 'movesFreely')
    return says('Locked in by bends', 'A truss that moves freely locks nothing in.');
  if (locked.kind === 'nothingMeasured')
    return says('Locked in by bends', 'No bend has been measured yet: enter the depth of a bow or kink.');
  const values = new Map(locked.members.map((m) => [m.id, m.stressPsi.value]));
  const classes = upward(bordersTo(largestOf(values)), light);
  const most = Math.max(...locked.members.map((m) => m.stressPsi.high ?? m.stressPsi.value));
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, showStress, classes.borders[0]!) } : {}),
    strip: {
      title: 'Stress locked in by the measured bends',
      unit: 'ksi',
      classes,
      write: (border) => fixed(border / 1000, border < 950 ? 1 : border % 1000 === 0 ? 0 : 1),
      notes: [
        `Best estimate, shortening only; with full end slopes up to ${showStress(most)}. A tube's range and basis stand in its card.`,
        ...(locked.suspects.length > 0
          ? [`Suspected though nobody has seen a bend: ${locked.suspects.map(({ id }) => id).join(', ')}.`]
          : []),
        ...(locked.unmeasured.length > 0
          ? [`Not in it, no size given: ${locked.unmeasured.join(', ')}.`]
          : []),
      ],
    },
  };
};

const redundancy = ({ all: { statics }, overlay, light }: Given): Laid => {
  if (statics.kind !== 'stands') return says('Redundancy', 'The truss moves freely as it is held.');
  const values = new Map(statics.redundancy.map((m) => [m.id, m.rN]));
  const classes = upward([0.001, 0.01, 0.03, 0.1, 0.3], light);
  const { pinned } = statics;
  return {
    colours: coloured(values, classes),
    ...(overlay.numbers ? { numbers: ranked(values, (v) => `${fixed(100 * v, 1)} %`, 1e-3) } : {}),
    strip: {
      title: 'Of a length error in the tube, what share turns into force',
      unit: '%',
      classes,
      write: (border) => fixed(100 * border, border < 0.01 ? 1 : 0),
      low: 'only shape',
      high: 'clamped',
      notes: [
        `Welded frame: ${statics.indeterminacy} times statically indeterminate.`,
        pinned
          ? `Were every joint pinned: ${pinned.selfStress} states of self-stress, ${pinned.mechanisms} free movements.`
          : 'Pinned joints: not decided for this truss.',
      ],
    },
  };
};

/** Free movements: of the truss itself when it moves as it is held, else of the truss with pinned joints. */
export const movements = ({
  statics,
}: Assessment): readonly (readonly { readonly id: string; readonly moveIn: Vec3 }[])[] =>
  statics.kind === 'movesFreely' ? [statics.clusters] : statics.mechanismShapes;

/** At most eight clusters that move at least half as far as the one that moves most. */
const mostMoved = (movement: ReturnType<typeof movements>[number]): readonly string[] => {
  const sized = movement
    .map(({ id, moveIn }) => ({ id, size: length(moveIn) }))
    .sort((p, q) => q.size - p.size);
  return sized
    .filter(({ size }) => size > 0.5 * (sized[0]?.size ?? 0))
    .slice(0, 8)
    .map(({ id }) => id);
};

const moves = ({ all, overlay }: Given): Laid => {
  const list = movements(all);
  const { statics } = all;
  const total = statics.kind === 'stands' ? (statics.pinned?.mechanisms ?? null) : 1;
  if (total === null)
    return says('Free movements', 'Not decided: more than 300 tubes, or no clear gap in the sums.');
  const which = Math.min(overlay.which, list.length - 1);
  const movement = list[which];
  if (!movement)
    return says('Free movements', 'Were every joint pinned, nothing could move: no free movement.');
  const shape = shapeOf(all, `Free movement ${which + 1} of ${total}`, movement);
  return {
    swings: true,
    shape: { ...shape, size: 'its size means nothing' },
    strip: {
      title: shape.name,
      unit: '',
      notes: [
        statics.kind === 'stands'
          ? 'Were every joint a pin, the truss could move like this; welded, its bending alone holds it.'
          : 'Held as it is, the truss can move like this without straining a tube.',
        `Moves most: ${mostMoved(movement).join(', ')}.`,
      ],
    },
  };
};

const selfStress = ({ all: { statics }, overlay, light }: Given): Laid => {
  const states = statics.kind === 'stands' ? statics.selfStressStates : [];
  const total = statics.kind === 'stands' ? (statics.pinned?.selfStress ?? null) : 0;
  if (total === null)
    return says('States of self-stress', 'Not decided: more than 300 tubes, or no clear gap in the sums.');
  const which = Math.min(overlay.which, states.length - 1);
  const state = states[which];
  if (!state)
    return says(
      'States of self-stress',
      'Were every joint pinned, no tube could be tight without a load: none.',
    );
  const values = new Map(state.members.map((m) => [m.id, m.share]));
  const classes = signed(1, light);
  const none = colourIn(classes, 0);
  return {
    colours: new Map([
      ...(statics.kind === 'stands' ? statics.redundancy.map((m) => [m.id, none] as const) : []),
      ...coloured(values, classes),
    ]),
    ...(overlay.numbers
      ? { numbers: ranked(values, (v) => `${v < 0 ? '−' : '+'}${fixed(Math.abs(v), 2)}`, 0.05) }
      : {}),
    strip: {
      title: `State of self-stress ${which + 1} of ${total}`,
      unit: 'of the largest force',
      classes,
      write: (border) => `${border < 0 ? '−' : '+'}${fixed(Math.abs(border), 2)}`,
      low: '− compression',
      high: 'tension +',
      notes: [
        'Forces that balance without any load, were every joint pinned. Only their shares have a meaning.',
      ],
    },
  };
};

const sameCuts = (a: readonly string[], b: readonly string[]): boolean => a.join(' ') === b.join(' ');

/** The candidate that is to be shown, when the list still has it. */
export const shownCut = ({ relief }: Assessment, overlay: Overlay): CutCandidate | undefined => {
  const target = relief.targets.find(({ member }) => member === overlay.cut?.target);
  return [...(target?.candidates ?? []), ...(target?.soundTubes ?? [])].find(({ cuts }) =>
    sameCuts(cuts, overlay.cut?.cuts ?? []),
  );
};

const kerf =
  (all: Assessment) =>
  (place: WhereToSaw): SceneCut => {
    const long = all.truss.members.find(({ id }) => id === place.member)?.lengthIn ?? 0;
    return {
      member: place.member,
      fromIn: place.fromIn ?? long / 2,
      toIn: place.toIn ?? long / 2,
      label: place.fromIn === null ? `${place.member}: no place keeps clear` : `saw ${place.member}`,
    };
  };

const cut = ({ all, overlay, units }: Given): Laid => {
  if (!overlay.cut)
    return says('Before and after a cut', 'Press "Show in the picture" at a cut in the list.');
  const found = shownCut(all, overlay);
  const name = `${overlay.cut.cuts.join(', then ')} cut`;
  if (!found) return says(name, 'This cut is not in the list any more.');
  const cutMarks = [found.whereToSaw, ...(found.thenSaw ? [found.thenSaw] : [])].map(kerf(all));
  if (found.verdict === 'refused')
    return {
      cutMarks,
      strip: {
        title: name,
        unit: '',
        notes: ['Refused: without it the truss would move freely, so there is no shape after it.'],
      },
    };
  if (!found.shape)
    return {
      cutMarks,
      strip: { title: name, unit: '', notes: ['The shape after the cut is being worked out.'] },
    };
  return {
    cutMarks,
    shape: shapeOf(all, `After ${name}`, found.shape),
    ...(overlay.numbers ? { numbers: moveNumbers(found.shape, units, 16) } : {}),
    strip: {
      title: `Before and after: ${name}`,
      unit: lengthUnit(units),
      notes: [
        `Hairline: before. Solid: after, springing open and own weight, shortening-only reading of the bows. Most: ${found.moves
          .map(({ id, moveIn }) => `${id} ${showLength(length(moveIn), units === 'mm' ? 'mm' : 'inDecimal')}`)
          .join(', ')}.`,
      ],
    },
  };
};

const lay = { forces, stress, deflected, lockedIn, redundancy, selfStress, moves, cut } as const;

/** What the chosen overlay lays over the picture; null when nothing is chosen. */
export const overlayFor = (given: Given): Laid | null =>
  given.overlay.show === 'nothing' ? null : lay[given.overlay.show](given);
