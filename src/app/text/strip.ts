/** Captions of the strip under the picture and of the pins in it: wanted before the first overlay is fetched. */
export const stripText = {
  region: 'What is shown in the picture',
  classes: (unit: string) => `Classes, ${unit}`,
  photos: (count: number) => (count === 1 ? 'photo' : `${count} photos`),
} as const;
