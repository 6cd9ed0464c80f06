/** Captions of the shape as found, over the shape as drawn. */
export const shapeText = {
  title: 'Shape as found',
  inPicture: 'In the picture',
  asDrawn: 'as drawn',
  asMeasured: (hold: string) => `as measured ${hold}`,
  measured: (hold: string) => `Measured ${hold}`,
  factor: (factor: number) => `Moves drawn × ${factor}; every figure stays true`,
  times: (factor: number) => (factor === 1 ? 'true' : `× ${factor}`),
  otherFactor: 'Other factor',
  otherHint: 'other ×',
} as const;
