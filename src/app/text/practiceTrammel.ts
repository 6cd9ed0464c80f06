/** Captions of the virtual trammel. */
export const trammelRoundText = {
  nothing: 'This truss gives no distances to read.',
  spread: (from: string, to: string) => `Spread ${from} to ${to}`,
  region: 'Trammel practice',
  title: 'Trammel practice',
  read: (count: number, of: number) => `${count} of ${of} read`,
  pair: 'Pair',
  pairRow: (from: string, to: string, read: boolean) => `${from} to ${to}${read ? ', read' : ''}`,
  set: 'Set the trammel, or spread to',
  setHint: (target: string) => `target ${target}, used when left empty`,
  readGap: 'Read the gap',
  push: 'Spread or draw to this, let go',
  lastRead: (set: string, point: string) => `Last read here: set ${set}, point ${point}.`,
  onMark: 'on the mark',
  offMark: (miss: string, beyond: boolean) => `${miss} ${beyond ? 'beyond' : 'short of'} the mark`,
  notRead: 'Not read yet.',
  pushed: (to: string, forceLbf: number) =>
    ` Pushed to ${to} with ${forceLbf} lbf; read again to see what stayed.`,
  advice: (action: string, amount: string, pushTo: string | null) =>
    `The readings say: ${action} ${amount}${pushTo === null ? '' : `, to ${pushTo} before letting go`}.`,
  handIn: 'Hand in the trammel round',
  springs:
    "Springs back by the frame's stiffness up to first yield; beyond that it stays. 1/16 in is this exercise's own aim, not a limit. Readings and spreads stand on the Trammel panel too.",
} as const;

/** Captions of the marks of a trammel round. */
export const trammelMarksText = {
  region: 'Marks of the trammel round',
  readings: (taken: string, planned: number) => `${taken}, ${planned} asked for.`,
  worst: (target: string, off: string, long: boolean) =>
    ` Furthest off now, as it truly is: ${target}, ${off} ${long ? 'long' : 'short'}.`,
  pair: (p: {
    readonly from: string;
    readonly to: string;
    readonly was: string;
    readonly is: string;
    readonly helped: boolean;
    readonly readAgain: boolean;
  }) =>
    `${p.from} to ${p.to}: was ${p.was} off, is ${p.is} off${
      p.helped ? '' : '; it moved more away than it brought near'
    }${p.readAgain ? '' : '; not read again'}.`,
} as const;
