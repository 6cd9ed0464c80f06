/** Names of what a person can do, as the find box and the key sheet say them. */
export const commandText = {
  undo: 'Undo',
  redo: 'Redo',
  undone: (name: string) => `Undone: ${name}`,
  redone: (name: string) => `Redone: ${name}`,
  find: 'Find a tube, a cluster or an action',
  keys: 'All keys on one sheet',
  open: 'Open a file',
  saveCopy: 'Save a copy as a file',
  tag: (name: string) => `Tag: ${name}`,
  view: (name: string) => `View: ${name}`,
  fitAll: 'Fit all',
  fitSelected: 'Fit selected',
  isolateBay: 'Show only this bay',
  ghostBay: 'Fade this bay',
  showAll: 'Show everything again',
  twin: 'Select the opposite-hand twin',
  clear: 'Select nothing',
  names: 'Names on or off',
  table: 'Picture or table',
  several: 'Pick several, on or off',
  stop: 'Stop the work in hand',
  go: (part: string) => `Go to: ${part}`,
  light: (name: string) => `Light: ${name.toLowerCase()}`,
} as const;

export const keySheetText = {
  title: 'Keys',
  close: 'Close',
  lettersOff: 'Single letters are switched off on the Start part of the route.',
  turn: 'Turn the picture when it has the focus',
  arrows: 'arrow keys',
} as const;
