/** Issue codes → sentences. `{name}` is a fact of the issue. A test reads the sources of core and fails on a code without a row. */
export const issueSentences: Readonly<Record<string, string>> = {
  'duplicate-station': 'Two stations have the label {label}.',
  'duplicate-id': 'The id {id} is given twice.',
  'unknown-station': 'The model has no station {label}.',
  'bracing-makes-nothing':
    'The bracing word {word} on the {face} at station {at} makes no tube: a corner is missing.',
};
