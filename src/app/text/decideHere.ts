/** Captions of the short decision beside the findings of the walk-round. */
export const decideHereText = {
  title: 'Decide what is to be done',
  decision: 'Decision',
  notChosen: 'not chosen',
  reason: 'Reason',
  reasonNeeded: 'Reason (needed)',
  answers: (choice: string, answers: readonly { readonly id: string; readonly says: string }[]) =>
    `By the rules loaded, ${choice.toLowerCase()} ${answers.map(({ id, says }) => `${says} on ${id}`).join(', ')}: write why.`,
  record: 'Record the decision',
  toRules: 'What the rules say to each way',
} as const;
