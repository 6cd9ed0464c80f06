/** Captions of what practice draws in the picture. */
export const drawnText = {
  pair: (from: string, to: string) => `${from} to ${to}`,
  blow: 'blow',
  struck: 'As struck',
} as const;
