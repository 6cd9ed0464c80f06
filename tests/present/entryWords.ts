/** What 14 CFR 43.9(a)(1) to (4) asks an entry to hold, sorted into what a draft can carry and what is written by hand. */
export const entryWordsAsked = {
  drafted: ['what', 'data', 'completed', 'doers'],
  byHand: ['name of the person', 'signature', 'licence number', 'kind of licence'],
} as const;
