/** What each change at the trammel is called, and the words it puts on record. */
export const trammelDeedText = {
  reading: (from: string, to: string) => `Reading ${from} to ${to}`,
  undone: 'Reading undone',
  undoneReason: 'reading undone',
  unreachable: 'cannot be reached',
  byHand: 'struck by hand',
  struck: (target: string) => `Struck: ${target}`,
  putBack: (target: string) => `Put back: ${target}`,
  putBackReason: 'put back',
  datum: 'Undamaged clusters named',
  drawn: (from: string, to: string) => `Drawing distance ${from} to ${to}`,
  hold: (hold: string, done: boolean) => `${done ? 'Done' : 'Open again'}: ${hold}`,
  fitUp: (member: string) => `Fit-up of ${member}`,
  spread: (from: string, to: string) => `Spread ${from} to ${to}`,
} as const;
