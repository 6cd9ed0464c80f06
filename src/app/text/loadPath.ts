/** Captions of where to look next. */
export const loadPathText = {
  movesFreely:
    'The truss as it stands can move without straining a tube, so loads cannot be followed. Neighbours by the clusters they meet at are still listed.',
  neighboursNamed: (id: string) => `Load-path neighbours of ${id}`,
  neighbours: (id: string) => `Neighbours of ${id}`,
  noOtherPath: 'No other path carries its load: a length error in it changes shape, not force.',
  noNeighbours: 'No other tube has a part in its load.',
  nextNamed: 'Look here next, whole job',
  next: 'Look here next',
  nextLead:
    'Four kinds of evidence, each from 0 to 1; the order is made of the first three. An order to look in, not a chance. Only what was looked at with the finish off drops out.',
  nothingNext: 'Nothing yet: record what you find, and this list follows the load from it.',
  suspectsNamed: 'Suspected by the sums',
  suspects: 'Bends nobody has seen yet',
  more: (count: number) => `${count} more`,
  evidence: (id: string) => `Evidence for ${id}, each from 0 to 1`,
  sharesClusters: 'Shares clusters',
  sameLoadPath: 'Same load path',
  lockedIn: 'Locked in',
  takesOver: 'Takes over',
} as const;

export const zoneText = {
  title: 'Looked at by zone',
  notDone: (open: number, all: number) => `${open} of ${all} zones not done`,
  seen: (seen: number, all: number) => `${seen} of ${all}`,
} as const;

/** The three ways a blow can push, by the pilot's left and right: along, across, and up or down. */
const ways = [
  { axis: 0, name: 'Along', words: { '-1': 'forward', '0': 'neither', '1': 'aft' } },
  { axis: 1, name: 'Across', words: { '-1': 'to the left', '0': 'neither', '1': 'to the right' } },
  { axis: 2, name: 'Up or down', words: { '-1': 'down', '0': 'neither', '1': 'up' } },
] as const;

export const mishapText = {
  ways,
  title: 'What happened',
  blow: (cluster: string, pushing: readonly string[]) => `blow at ${cluster} pushing ${pushing.join(', ')}`,
  noBlow: 'no blow given',
  caseCount: (count: number) => `${count} load ${count === 1 ? 'case' : 'cases'}`,
  blowAt: 'The blow came in at',
  notSaid: 'not said',
  pushed: 'It pushed the truss',
  cases: 'Load cases that fit what happened',
  lead: 'With none of these the load is followed for every load that may come, which names the same path less sharply.',
  changedDirection: 'Direction of the blow',
  changedPlace: 'Where the blow came in',
  changedCases: 'Load cases that fit',
} as const;
