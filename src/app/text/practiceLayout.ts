/** Captions of the layout drill. */
export const layoutText = {
  region: 'Layout drill',
  exam: 'Layout exam',
  drill: 'Layout drill',
  noQuestion: 'This truss gives no question of these kinds.',
  steps: (at: number, of: number) => `Question ${at} of ${of}`,
  step: (at: number, state: 'right' | 'wrong' | 'given' | 'open') => `Question ${at} ${state}`,
  kind: (at: number, of: number, kind: string) => `${at} of ${of} · ${kind}`,
  nothingDrawn: 'Nothing drawn yet.',
  drawnFrom: (place: string, id: string) =>
    `From ${place.toLowerCase()} (${id}). Touch the other end; touched again, the first is let go.`,
  next: 'Next question',
  seeMarks: 'See the marks',
  place: 'Or by its place: station, butt line, water line',
  choosePlace: 'choose a place',
  length: 'True length',
  lengthHint: 'to the nearest 1/16',
  answer: 'Answer',
  right: 'Right.',
  wrong: (should: string) => `Not so. ${should}.`,
  askedAgain: 'Asked again today',
  again: 'Again, other questions',
} as const;
