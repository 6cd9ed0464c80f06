/** Names of mends → what to do, as a sentence. `{name}` is a fact of the issue. */
export const mendSentences: Readonly<Record<string, string>> = {
  'give-another-label': 'Give one of them another label.',
  'give-another-id': 'Give one of them another id.',
  'name-a-station': 'Name a station of the table.',
  'take-out': 'Take the entry out, or add what it needs.',
};
