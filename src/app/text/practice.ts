/** Captions of the exercises to choose from, and of an exercise that was not made. */
export const practiceText = {
  making: 'The exercise is being worked out …',
  cancel: 'Cancel',
  others: 'Other exercises',
  noTruss: 'Open a truss first.',
  region: 'Exercises',
  title: (model: string) => `Practice on: ${model}`,
  lead: 'Rounds open a practice job of their own; the job that is open stays as it is.',
  locked: 'Exam, no hints',
  layout: 'Begin the drill',
  due: (count: number) => `${count} due again today`,
  hidden: 'Break the truss',
  trammel: 'Break and measure',
  plan: 'Mix the steps',
  jobName: (model: string, seed: string) => `Practice: ${model}, ${seed}`,
  what: (model: string, seed: string) => `${model}, seed ${seed}`,
  movesFreely:
    'No exercise was made: loads cannot be followed through this truss, it can move without straining a tube.',
  failed: 'No exercise was made: it could not be worked out on this device.',
  close: 'Close',
  leave: 'Leave',
} as const;

/** Captions of what an exercise is made by. */
export const askText = {
  level: 'Level',
  seed: 'Seed',
} as const;

/** Captions of the card for the bench. */
export const couponText = {
  scrap: 'Scrap tube',
  drawing: 'Being drawn …',
  save: 'Card and templates, PDF',
} as const;

/** Captions of marks, one skill a line. */
export const sharesText = {
  notAsked: 'not asked',
  share: (got: number, of: number) => `${got} of ${of}`,
} as const;

/** Captions of the rounds done on this device. */
export const progressText = {
  title: (count: number) => `Progress on this device (${count} done)`,
  of: (exercise: string) => `Progress: ${exercise}`,
  lead: 'Of the last twenty. Each skill by itself; kept on this device only.',
  table: 'Practice results',
  save: 'Save the results as CSV',
  forget: 'Forget them',
} as const;

/** Captions of an exercise to hand out. */
export const instructorText = {
  title: 'For the instructor',
  lead: 'A file to hand out. Trainees open it like a job; what is wrong with the truss cannot be read in it at a glance. The same seed and level break the same truss the same way.',
  from: 'Made from',
  sources: {
    seed: 'a crash by seed',
    job: 'the findings of the open job, without names, notes and photos',
  },
  task: 'To practise',
  lock: 'Lock hints',
  save: 'Save the exercise file',
  nothingFound: 'No exercise was made: the open job has no finding with a size to hide.',
  movesFreely: 'No exercise was made: loads cannot be followed through this truss.',
} as const;
