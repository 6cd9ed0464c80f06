/** Captions of a clock position on a tube. */
export const clockSelectText = {
  notChosen: 'not chosen',
  hour: (clock: number) => `${clock} o’clock`,
} as const;
