/** Captions of the cuts that would let a tube go. */
export const relieveText = {
  notRanked: 'Not ranked: say below how the truss is held now.',
  movesFreely:
    'The truss as it is held can move without straining a tube. Say below how it is held, before any cut.',
  nothing: 'Select a tube, or record a finding: the cuts that would relieve it come here.',
  targets: 'Tubes with findings',
  which: 'Which tube is to be relieved?',
  candidates: (count: number) => `${count} candidates`,
  targetNamed: (id: string) => `Cuts that would relieve ${id}`,
  target: (id: string) => `To relieve ${id}`,
  alongNow: 'Locked in now, along the tube',
  bendingNow: 'Locked in now, bending',
  restsOn: 'What these figures rest on',
  rests: (sagLimit: string) => [
    'Elastic sums of the frame as it is held now, each bent tube as soft as its bow makes it. Only damage recorded with a size counts; tubes carry no more than their yield and buckling let them.',
    'A range lies between the two readings of a bow: shortening only, and full end slopes.',
    `A cut is worked on the same frame with that tube taken out. It counts as a help from a tenth on; the sag limit of ${sagLimit} and a brace of the cut tube’s own size are starting values of this program: no published limit is known.`,
  ],
  measureFirst: (ids: string) =>
    `Measure first: ${ids}. Damage is recorded there without a size, so what it locks in is missing here.`,
  withoutSawNamed: 'Without a saw',
  withoutSaw: 'First, without a saw',
  nothingWithoutSaw: 'Nothing here can be let go without cutting.',
  cutsNamed: 'Cut candidates, best first',
  cuts: 'Cuts, best first',
  noCut: 'No cut is offered.',
  sound: (count: number) => `Sound tubes (${count}): each cut makes a repair of its own`,
  soundNotListed: (count: number) => `${count} sound tubes more are not listed.`,
  noHelp: (count: number) => `${count} more that help nothing`,
} as const;

export const cutText = {
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  // stands between two cuts made after each other
  inTurn: ', then ',
  sourceRelief: 'Of what other bends lock in, goes',
  ownRelief: 'Of a length error of its own, goes',
  leftAlong: 'Left along the tube',
  leftBending: 'Left bending',
  kerf: 'The kerf',
  secondKerf: 'The second kerf',
  sag: 'Own-weight sag grows by',
  sagNotWorked: 'not worked',
  stability: 'Stability left (0: moves freely)',
  brace: 'Temporary brace first',
  braceSag: (from: string, to: string, sag: string) => `${from} to ${to}: sag ${sag}`,
  oneAtATime: (gate: boolean) =>
    `One at a time: the first is closed or braced and read again before the second is opened${
      gate ? '; they share a cluster, so the second needs its gate opened by name' : ''
    }.`,
  braceOf: (from: string, to: string) =>
    `Brace of the cut tube's own size, ${from.toLowerCase()} to ${to.toLowerCase()}, clamped or tacked before the saw.`,
  show: 'Show in the picture',
  shown: 'Shown in the picture',
  where: 'Where to saw, and what moves',
  standClear:
    'The kerf may close on the blade or jump open: stand clear of its line, and measure it after the cut.',
  movesMost: (moves: string) => `Moves most: ${moves}.`,
  released: (range: string) => `Let go at the saw: ${range}.`,
} as const;
