import type { AskedReading, FitUp } from '../../core/trammel/result.ts';

/** Captions of the hold points: what each asks for, and whether it can be marked done. */
export const holdsText = {
  title: 'Hold points',
  done: (withReason: boolean) => (withReason ? 'done, with a reason' : 'done'),
  outside: (count: number) => `${count} outside`,
  taken: (taken: number, all: number) => `${taken} of ${all} read`,
  why: {
    plan: 'of the plan',
    canMove: 'can have moved',
    wasSpread: 'was spread',
  } satisfies Record<AskedReading['why'], string>,
} as const;

export const holdText = {
  whatCanMove: 'Asks only for what can have moved.',
  wholeTruss: (readings: number) => `The whole truss: ${readings} readings, by the measuring plan.`,
  read: 'Read for this hold',
  notRead: 'not read',
  repeat: (lines: string) => `Cannot tell: repeat ${lines} once, or use a better instrument.`,
  wasDone: (by: string, reason: string | undefined) => `Done, ${by}${reason ? `: ${reason}` : ''}`,
  openAgain: 'Open it again',
  closedBy: {
    outside: (lines: string) => `outside: ${lines}`,
    manyNotRead: (count: number) => `${count} not read`,
    notRead: (lines: string) => `not read: ${lines}`,
    noFitUp: (members: string) => `no fit-up of ${members}`,
  },
  closed: (by: readonly string[]) =>
    `Cannot be marked done yet: ${by.join('; ')}. Or write why it counts as done:`,
  markDone: 'Mark this hold done',
} as const;

export const fitUpText = {
  recorded: (member: string) => `Fit-up of ${member}: recorded`,
  lacks: (member: string, lacks: string) => `Fit-up of ${member}: lacks ${lacks}`,
  lack: {
    gap: 'gap',
    overlap: 'overlap',
    marks: 'sleeve marks centred',
    secondPerson: 'second person',
    secondPersonIsDoer: 'a second person who is not the doer',
  } satisfies Record<FitUp['lacks'][number], string>,
  gap: 'Largest gap',
  overlap: 'Overlap',
  marks: 'Sleeve marks centred in the rosette holes',
  second: 'Seen by a second person, not the doer',
  record: 'Record the fit-up',
} as const;
