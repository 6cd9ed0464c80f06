/** Captions of small fields and lines that many panels use. */
export const fieldText = {
  refused: (why: string) => `Not recorded: ${why}`,
  issues: 'What to know',
  close: 'Close',
  onlyThese: 'Show only these in the picture',
  who: 'Your name, kept on this device',
  clock: (hour: number) => `${hour} o'clock`,
  noDirection: 'Direction not taken',
} as const;
