/** Captions of the order of work as a whole. */
export const planText = {
  none: 'Nothing is planned yet: decide a tube or cluster first. The steps follow from the decisions.',
  through: 'Through the plan',
  sagLimit: 'Own-weight sag may grow by',
  next: 'To the next open step',
  whole: 'Show the whole truss',
  notPlannedNamed: 'Not in the plan',
  notPlanned: (count: number) => `Not in the plan: ${count}`,
  notPlannedAt: (clusters: string) => ` at ${clusters}`,
} as const;

/** Captions of the plan as it was agreed, and of whose order it is in. */
export const agreedText = {
  region: 'Plan as agreed',
  changed: (steps: string) => `Changed since it was frozen: ${steps}`,
  unchanged: 'Frozen, unchanged',
  notFrozen: 'Not frozen yet',
  /** `now`: the mark of the plan as it stands, when it is another. */
  frozenBy: (by: string, at: string, digest: string, now: string | null, reordered: boolean) =>
    `Frozen by ${by}, ${at} · ${digest}${now === null ? '' : ` · now ${now}`}${
      reordered ? ' · steps in another order' : ''
    }`,
  steps: {
    added: (steps: string) => `${steps} added`,
    removed: (steps: string) => `${steps} removed`,
    altered: (steps: string) => `${steps} altered`,
  },
  whyChanged: 'Why it changed',
  agreedWith: 'Agreed with',
  again: 'Freeze it again',
  freeze: 'Freeze the plan',
  ownOrder: 'In your own order.',
  takeWorked: 'Take the worked order',
} as const;

/** Captions of the hold points of the work. */
export const gatesText = {
  title: 'Hold points of the work',
  open: (open: number, all: number) => `Hold points of the work: ${open} of ${all} open`,
  note: 'Who looks too is our proposal, yours to change; no source.',
  /** `reason`: why it was opened although something was missing. */
  stamp: (by: string, at: string, reason: string | null) =>
    reason === null ? `Done by ${by}, ${at}` : `Opened by ${by}, ${at}: ${reason}`,
  takeOff: 'Take the tick off',
  secondName: (second: string) => `${second}: name`,
  why: 'Something is missing. Why it is opened all the same (page one repeats it):',
  openIt: 'Open it under my name',
  tick: 'Tick this hold point',
} as const;

/** Captions of the list of steps. */
export const stepsText = {
  title: 'Steps',
  onlyThose: (ids: string) => `Only those of ${ids}`,
  rules: 'The rules of the order, and their sources',
  close: 'Close',
  phase: (from: number, to: number, ticked: number, steps: string) =>
    `${from}–${to} · ${ticked} of ${steps} ticked`,
  last: 'Let go here: last of all',
} as const;

/** Captions of one step. */
export const stepText = {
  drag: 'Drag to another place',
  done: (step: string) => `Done: ${step}`,
  doneBy: (by: string, at: string) => `${by}, ${at}`,
  closedUntil: (gates: string) => `Closed until: ${gates}`,
  facts: {
    tools: 'Tools',
    material: 'Material',
    brace: 'Brace',
    solved: 'Solved',
    next: 'Then',
    after: 'Comes after',
  },
  fitUp: 'Gap, overlap and marks: fit-up card under Splice',
  trammel: 'Read the distances under Trammel',
  up: 'Move up',
  down: 'Move down',
  putBefore: 'Put it before',
  putBeforeChoose: 'Put it before …',
  other: (place: number, step: string) => `${place} ${step}`,
  last: 'last of all',
  method: 'Method',
  result: 'Result',
  results: { clear: 'no crack seen', crack: 'crack' },
  second: 'Second person, qualified for the method',
  write: 'Write it down and tick',
} as const;
