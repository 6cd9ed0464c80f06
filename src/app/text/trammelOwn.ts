/** Captions of the user's own limits, drawing distances and reference. */
export const ownText = {
  title: 'Your own limits, drawing distances and reference',
} as const;

export const ownValueText = {
  title: 'Your own values',
  limit: (distance: string) => `Limit ±, ${distance}`,
  sure: (instrument: string) => `Sure to about, ${instrument}`,
  reach: 'Reach of the trammel',
  shrinkageOfAll: 'Weld shrinkage to allow, every distance',
  shrinkage: (distance: string) => `Weld shrinkage, ${distance}`,
  noLimit: 'No published limit exists for these distances. What you enter stands as yours.',
  what: 'What',
  value: 'Value',
  source: 'Where it comes from',
  enter: 'Enter it',
} as const;

export const drawnText = {
  region: 'Drawing distance',
  title: (target: string | undefined) => `Drawing distance of ${target ?? 'the line in hand'}`,
  length: 'Length by the drawing',
  tolerance: 'Its tolerance ±',
  toleranceHint: 'empty: none given',
  source: 'Drawing, sheet, view',
  enter: 'Enter the drawing distance',
} as const;

export const referenceText = {
  region: 'Reference clusters',
  title: 'Clusters taken as undamaged',
  pulled: (cluster: string, moved: boolean) =>
    `Pulled hardest off its drawing place by the readings: ${cluster}${
      moved ? ', more than its uncertainty explains' : ', within its uncertainty'
    }.`,
  named: 'Named by you, four at least; empty: the largest sound group',
  unknown: (clusters: readonly string[]) => `Not in the truss: ${clusters.join(', ')}`,
  why: 'Why these',
  measure: 'Measure from these',
} as const;

export const planeText = {
  region: 'String and level',
  title: 'Offset from a string, height over a level line',
  why: 'Towards the tail distances alone leave the place unsure; one of these each few stations steadies it.',
  from: 'Measured from',
  lines: { centreLine: 'string, centre line', level: 'level line' },
  cluster: 'Cluster',
  unknown: 'Not in the truss',
  off: { centreLine: 'Offset, right +', level: 'Height, above +' },
  lineAt: { centreLine: 'Butt line of the string', level: 'Water line of the line' },
  lineAtHint: 'empty: 0',
  recorded: {
    centreLine: (cluster: string) => `Offset of ${cluster}`,
    level: (cluster: string) => `Height of ${cluster}`,
  },
  record: 'Record it',
} as const;
