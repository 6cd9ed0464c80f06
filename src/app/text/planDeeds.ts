/** What each entry to the plan is called, as undo names it, and the words the record keeps of it. */
export const planDeedText = {
  ticked: (what: string) => `Ticked: ${what}`,
  opened: (what: string) => `Opened by name: ${what}`,
  tickOff: (what: string) => `Tick taken off: ${what}`,
  moved: (step: string) => `Moved: ${step}`,
  ownOrder: 'own order of steps',
  ownOrderOff: 'Own order taken off',
  ownOrderOffReason: 'own order taken off',
  frozen: 'Plan frozen',
  agreed: 'agreed',
} as const;
