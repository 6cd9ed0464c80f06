import type { OverlayName } from '../state/overlay.ts';

/** Captions of the control for what is laid over the picture. */
export const showText = {
  title: 'Show in the picture',
  overlays: {
    nothing: 'Nothing more',
    forces: 'Tension and compression',
    stress: 'Share of yield',
    deflected: 'Deflected shape',
    lockedIn: 'What bends lock in',
    redundancy: 'Redundancy',
    selfStress: 'States of self-stress',
    moves: 'Free movements',
    cut: 'Before and after a cut',
  } satisfies Record<OverlayName, string>,
  loadCase: 'Load case',
  numbers: 'Numbers',
  arrows: 'Load arrows',
  next: (listed: number) => `Next of ${listed}`,
  stop: 'Stop',
  play: 'Play',
  still: 'Both ends of the swing, without motion',
} as const;

/** Words at the two ends of a scale from compression to tension. */
export const signedEnds = { low: '− compression', high: 'tension +' } as const;

const asDrawn = 'Truss as drawn, undamaged; elastic sums.';

export const caseText = {
  title: 'Load cases',
  none: 'No load case is worked: the truss moves freely as it is held, or the model has none.',
  forces: (name: string) => `Force along each tube: ${name}`,
  forcesNote: asDrawn,
  stress: (name: string) => `Largest stress as a share of yield: ${name}`,
  stressUnit: '% of yield',
  stressNote: `${asDrawn} Axial force and bending together; buckling is not in it.`,
  deflected: (name: string) => `Deflected shape: ${name}`,
  deflectedNote: `${asDrawn} Solid: deflected, enlarged. Hairline: as drawn. Numbers are the true moves.`,
} as const;

export const lockedInText = {
  title: 'Locked in by bends',
  movesFreely: 'A truss that moves freely locks nothing in.',
  nothingMeasured: 'No bend has been measured yet: enter the depth of a bow or kink.',
  measured: 'Stress locked in by the measured bends',
  basis: (most: string) =>
    `Best estimate, shortening only; with full end slopes up to ${most}. A tube's range and basis stand in its card.`,
  suspects: (ids: readonly string[]) => `Suspected though nobody has seen a bend: ${ids.join(', ')}.`,
  unmeasured: (ids: readonly string[]) => `Not in it, no size given: ${ids.join(', ')}.`,
} as const;

export const redundancyText = {
  title: 'Redundancy',
  movesFreely: 'The truss moves freely as it is held.',
  share: 'Of a length error in the tube, what share turns into force',
  low: 'only shape',
  high: 'clamped',
  welded: (indeterminacy: number) => `Welded frame: ${indeterminacy} times statically indeterminate.`,
  pinned: (selfStress: number, mechanisms: number) =>
    `Were every joint pinned: ${selfStress} states of self-stress, ${mechanisms} free movements.`,
  pinnedUndecided: 'Pinned joints: not decided for this truss.',
} as const;

const undecided = 'Not decided: more than 300 tubes, or no clear gap in the sums.';

export const movementText = {
  title: 'Free movements',
  undecided,
  none: 'Were every joint pinned, nothing could move: no free movement.',
  which: (place: number, total: number) => `Free movement ${place} of ${total}`,
  size: 'its size means nothing',
  pinned: 'Were every joint a pin, the truss could move like this; welded, its bending alone holds it.',
  asHeld: 'Held as it is, the truss can move like this without straining a tube.',
  most: (ids: readonly string[]) => `Moves most: ${ids.join(', ')}.`,
} as const;

export const selfStressText = {
  title: 'States of self-stress',
  undecided,
  none: 'Were every joint pinned, no tube could be tight without a load: none.',
  which: (place: number, total: number) => `State of self-stress ${place} of ${total}`,
  unit: 'of the largest force',
  note: 'Forces that balance without any load, were every joint pinned. Only their shares have a meaning.',
} as const;

export const cutInPictureText = {
  title: 'Before and after a cut',
  press: 'Press "Show in the picture" at a cut in the list.',
  name: (cuts: readonly string[]) => `${cuts.join(', then ')} cut`,
  gone: 'This cut is not in the list any more.',
  refused: 'Refused: without it the truss would move freely, so there is no shape after it.',
  awaited: 'The shape after the cut is being worked out.',
  after: (name: string) => `After ${name}`,
  both: (name: string) => `Before and after: ${name}`,
  note: (moves: readonly string[]) =>
    `Hairline: before. Solid: after, springing open and own weight, shortening-only reading of the bows. Most: ${moves.join(', ')}.`,
  noPlace: (member: string) => `${member}: no place keeps clear`,
  saw: (member: string) => `saw ${member}`,
} as const;

export const spliceMarkText = {
  cut: (along: string, from: string) => `cut ${along} from ${from}`,
  sleeveEnd: (along: string, from: string) => `sleeve end ${along} from ${from}`,
} as const;
