import type { Model } from '../../core/job/modelSchema.ts';

/** Captions of where a model on the bench begins, and of what it is. */
export const aboutText = {
  title: 'The model on the bench',
  name: 'Name',
  nameOf: 'Name of the model',
  source: 'Where its numbers come from',
  sourceOf: 'Source of the model',
  sourceHint: 'drawing and sheet, or measured by whom',
  datum: 'Where station 0, butt line 0 and water line 0 are',
  datumOf: 'Datum in words',
  datumHint: 'station 0 at the firewall; butt line 0 on the centre plane; water line 0 …',
  drawnIn: 'Drawn in',
  units: { in: 'inches', mm: 'millimetres' },
  joints: 'Joints',
  joint: { welded: 'welded', pinned: 'pinned' },
  changed: {
    name: 'name',
    source: 'source',
    datum: 'datum',
    drawnIn: 'unit of the drawing',
    joints: 'joints',
  },
} as const satisfies {
  readonly units: Record<Model['drawnIn'], string>;
  readonly joint: Record<Model['joints'], string>;
  readonly [caption: string]: unknown;
};

export const beginText = {
  title: 'Start from',
  blank: 'Blank',
  wasBlank: 'a blank model',
  ofJob: 'This job’s model',
  wasOfJob: 'this job’s model',
  copyOf: (model: string) => `A copy of ${model.replace(/-/g, ' ')}`,
  wasCopy: (model: string) => `model ${model}`,
  fromFile: 'From a model file',
  wasFromFile: (file: string) => `model from ${file}`,
  undoable: 'What is on the bench now can be brought back with Undo.',
} as const;

export const roughText = {
  region: 'Rough truss',
  title: 'Rough truss, from a tape and a count',
  lead: 'Enough for the walk-round, counts and a price range on the first day. Every cluster is marked assumed: no distance is given to work to until it has been measured.',
  rings: 'Rings, forward to aft',
  sizes: {
    lengthIn: 'Length, first ring to last',
    forwardHeightIn: 'Height, forward',
    aftHeightIn: 'Height, aft',
    forwardWidthIn: 'Width, forward',
    aftWidthIn: 'Width, aft',
  },
  sizeNamed: (size: string) => `Rough truss: ${size.toLowerCase()}`,
  tailPost: 'Ends in a tail post',
  build: 'Build the rough truss',
  built: 'a rough truss',
} as const;

export const measuredUpText = {
  region: 'From distances of the sound side',
  title: 'No drawing: measure the sound side',
  roughFirst: 'Build a rough truss first: it says which tubes meet where. Distances then put it in place.',
  lead: 'Distances between axis points of the truss on the bench. What they fix is put in place by least squares and mirrored; a mirrored cluster counts as not measured. Fill in as many as you have.',
  side: 'Sound side',
  sides: { L: 'Left side is sound', R: 'Right side is sound' },
  withJob: (readings: string) => `With the ${readings} of the open job`,
  toTake: (filled: number, all: number) => `Distances to take: ${filled} of ${all} filled in`,
  distance: (from: string, to: string) => `Distance ${from} to ${to}`,
  build: 'Put the clusters where the distances say',
  built: 'places from distances',
  fixed: (clusters: string) => `${clusters} measured, their twins mirrored. `,
  loose: (clusters: string) => `Not fixed yet, left as assumed: ${clusters}. `,
  worst: (off: string, unit: string) => `The reading that fits worst is off by ${off} ${unit}. `,
} as const;

/** What a file is, where the text of a model was looked for. */
export const fileText = {
  text: 'the text of a model',
  archive: 'An archive',
  unreadable: 'A file that the browser cannot read',
} as const;
