/** Captions of what to spread or draw in, as a hold or as a set. */
export const spreadText = {
  region: 'To spread or draw',
  title: 'To spread or draw in',
  from: (hold: string) => `From the shape read ${hold}.`,
  nothing: 'The readings show nothing outside a limit or beyond their own uncertainty.',
  which: 'Which job',
  jobs: { hold: 'Hold until tacked', set: 'Set and let go' },
  how: {
    hold: 'The spreader stays in until the tubes are tacked: set to the target, no further.',
    set: 'Pushed or pulled past the target, let go, and read again: a little at a time.',
  },
  fewer: 'Show the first only',
  all: (count: number) => `Show all ${count}`,
} as const;

export const spreadLineText = {
  action: { spread: 'Spread', draw: 'Draw in' },
  stands: (amount: string, way: string, verdict: string) => `Stands ${amount} ${way}; ${verdict}.`,
  settledBy: (target: string) =>
    `${target} brings it within its uncertainty: do that first, then read this again.`,
  found: 'Found, adjusted',
  setTo: 'Set the spreader to',
  force: 'Force, estimate',
  about: (force: string) => `about ${force} lbf`,
  comesBack: 'Comes back when it is out',
  allComesBack: 'all of it: no tube is open',
  onTacks: (member: string) => `Then on the tacks of ${member}`,
  axial: (force: string, compression: boolean) => `${force} lbf ${compression ? 'compression' : 'tension'}`,
  moveTo: { spread: 'Push to', draw: 'Pull to' },
  notKnown: 'not known: say how the truss is held',
  springsBack: 'Springs back',
  firstToYield: (member: string) => `First to yield: ${member}`,
  tooMuch: (member: string, force: string) =>
    `${member} would yield first, at about ${force} lbf. Relieve or open the tube that holds it before a push this hard.`,
  change: (target: string, amount: string, shorter: boolean) =>
    `${target} ${amount} ${shorter ? 'shorter' : 'longer'}`,
  alsoChanges: (changes: string) => `Also changes ${changes}.`,
} as const;

export const pushText = {
  title: 'Record a push here',
  enterLength: 'Enter a length',
  heldAt: 'Held at',
  after: 'After letting go',
  record: 'Record the push',
} as const;

/** Captions of how each bay sits against the drawing. */
export const swingText = {
  title: 'How the bays sit',
  asDrawn: 'As drawn, as far as the readings show.',
  bay: (bay: string) => `Bay ${bay}`,
  against: 'Aft ring against forward ring; ± one standard deviation.',
  sag: (figure: string) => `Aft end low: ${figure}`,
  sweep: (figure: string) => `Aft end to the right: ${figure}`,
  twist: (figure: string) => `Right side up: ${figure}`,
  narrowed: (figure: string) => `Narrower: ${figure}`,
  shortened: (figure: string) => `Shorter: ${figure}`,
} as const;
