/** Captions of openings, clusters and tubes given by themselves. */
export const openingsText = {
  region: 'Openings',
  title: 'Openings: tubes left out',
  putBack: 'Put back',
  wasPutBack: (tube: string) => `${tube} put back`,
  leaveOut: 'Leave it out',
  leftOut: (tube: string) => `${tube} left out`,
  tube: 'Tube',
  tubeNamed: 'Tube to leave out',
} as const;

export const pointsText = {
  title: 'Clusters added or moved',
  added: (cluster: string) => `cluster ${cluster}`,
  takenOut: (cluster: string) => `${cluster} taken out`,
  add: 'Add the cluster',
  cluster: 'Cluster',
  clusterNamed: 'Cluster to add or move',
  clusterHint: 'GC, U4R',
  axes: ['Station', 'Butt line (right +)', 'Water line'],
  axisNamed: (axis: string) => `New cluster, ${axis.toLowerCase()}`,
  fitting: 'What sits there',
  fittingNamed: 'New cluster, fitting',
  fittingHint: 'landing gear, left',
} as const;

export const tubesText = {
  title: 'Tubes added or given by themselves',
  added: (from: string, to: string) => `tube ${from} to ${to}`,
  row: (from: string, to: string) => `${from} to ${to}`,
  pinned: ' · pinned',
  bolted: ' · bolted',
  near: (things: string) => ` · near ${things}`,
  takenOut: (from: string, to: string) => `${from}-${to} taken out`,
  add: 'Add the tube',
  from: 'New tube, from',
  to: 'New tube, to',
  size: 'Size (else by its kind)',
  sizeNamed: 'New tube, size',
  foot: 'Enter adds it and begins the next; the size stays. Or touch two clusters in the picture, one after the other, and join them there.',
} as const;

export const distancesText = {
  lead: 'A distance of the drawing stands in place of the one the stations give, for its own pair only. Where the two differ by more than the tolerance, the list of what is odd says so.',
  changed: (from: string, to: string) => `distance ${from} to ${to}`,
  named: (from: string, to: string) => `the distance ${from} to ${to}`,
  between: (from: string, to: string) => `${from} to ${to}: `,
  noTolerance: ', no tolerance given',
  takenOut: (from: string, to: string) => `distance ${from} to ${to} taken out`,
  change: 'Change the distance',
  add: 'Add the distance',
  from: 'Distance from',
  to: 'Distance to',
  length: 'Distance, length',
  tolerance: 'Distance, tolerance',
  toleranceShown: 'Tolerance ±',
  source: 'Drawing and place in it',
  sourceNamed: 'Distance, source',
} as const;

export const takeOutText = 'Take out';
