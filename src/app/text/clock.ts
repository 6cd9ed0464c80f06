/** Captions of a clock position on a tube. */
export const clockSelectText = {
  notChosen: 'not chosen',
  hour: (clock: number) => `${clock} o’clock`,
} as const;

/** Which way one looks at a clock: along a tube, or at a cluster. */
export const dialText = {
  along: (way: string) => `Look ${way} along the tube.`,
  forward: 'Look forward.',
} as const;
