/** Captions of finding hidden damage. */
export const hiddenText = {
  marking: 'Handed in; the marks are worked out again …',
  region: 'Hidden damage',
  title: 'Hidden damage',
  madeBy: (level: number, seed: string, exam: boolean) =>
    `level ${level} · seed ${seed}${exam ? ' · exam' : ''}`,
  struck: (place: string, id: string) =>
    `Struck at ${place.toLowerCase()} (${id}). Start there and go where the load went; "Load path" lists where.`,
  // stands after the count of looks left
  looksLeft: (allowed: number) => `of ${allowed} looks left`,
  beingMarked: 'Being marked …',
  handIn: 'Hand in',
  written: (count: number) => `${count} written down`,
  touch: 'Touch a tube or a cluster in the picture: that is what you look at.',
  lookAt: (id: string) => `Look at ${id}`,
  look: 'Look',
  finishOff: 'Take the finish off here first',
  showed: (id: string) => `What looking at ${id} showed`,
  looked: (how: string, finishOff: boolean) => `${how}${finishOff ? ', finish off' : ''}`,
  lookedAt: (how: string, id: string) => `${how}: ${id}`,
  spent: 'No looks were left.',
  nothing: 'Nothing shows.',
  isWritten: 'Written down',
  write: 'Write it down',
} as const;

/** Captions of the marks of a round. */
export const roundMarksText = {
  region: 'Marks of this round',
  title: 'Marks',
  madeBy: (level: number, seed: string) => `level ${level} · seed ${seed}`,
  said: { missed: 'missed', otherwise: 'found, called otherwise', found: 'found' },
  again: 'Again, another seed',
  truth: 'Truth in the picture',
  wasThere: 'What was there',
  damage: (word: string, size: string, older: boolean) =>
    `${word}, ${size}${older ? ', older than the blow' : ''}`,
  nextAfter: (id: string, reason: string | null) =>
    `Next to look at after it: ${id}${reason === null ? '' : `, ${reason}`}`,
  falseCalls: (ids: string) => `Called, and nothing is there: ${ids}.`,
  strippedFirst: (ids: string, rule: string) => `Finish off before the first look: ${ids}. ${rule}`,
  sizes: 'Sizes',
  size: (id: string, got: string, there: string) => `${id}: ${got} written down, ${there} there`,
  wasted: (count: number) => `Looks wasted (${count})`,
  wastedLook: (id: string, how: string, why: string) => `${id}, ${how.toLowerCase()}: ${why}`,
  choices: 'Repairs chosen',
  choice: (id: string, choice: string, mark: string) => `${id}, ${choice.toLowerCase()}: ${mark}.`,
  drawn: (tubes: number) =>
    `${tubes} tubes. Drawn: the shape as struck, enlarged, and the blow. Marked against the same results that a real job gets.`,
} as const;
