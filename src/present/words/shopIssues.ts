/** Issue codes of the shop's stages → sentences. */
export const shopIssueSentences: Readonly<Record<string, string>> = {
  'limit-without-value': 'Your limit {topic} has no value above zero in a unit that fits it.',
  'lists-differ-in-length': 'A straight-edge reading has {stations} stations and {offsets} gaps.',
  'sleeve-table-unreadable': 'Your sleeve table {topic} cannot be read: {got}.',
  'splice-tube-unreadable': 'The tube at hand in {topic} cannot be read: {got}.',
  'splice-other-material': '{id}: the new tube is {got}; the old one is {want}. Only the same material goes.',
  'splice-other-diameter': '{id}: the new section is {haveIn} across; the old tube is {needIn}.',
  'length-rests-on-a-guess':
    'No length of {id} is given, on screen, card or template: the place of {clusters} is a guess.',
  'splice-wall-too-thin': '{id}: the wall of the {at} is {haveIn}, below the {needIn} of the old tube.',
  'splice-sleeve-does-not-fit': '{id}: the sleeve leaves {haveIn} of slack; {mostIn} is the most.',
};

/** Mends of the shop's stages → sentences. */
export const shopMendSentences: Readonly<Record<string, string>> = {
  'give-value-and-unit': 'Give a value above zero, in inches, as a share or in per cent.',
  'one-offset-a-station': 'Enter one gap for each station.',
  'write-sleeve-table': 'Write the tube and its sleeve like 1 x .035 and 7/8 x .035.',
  'write-tube': 'Write the tube like 1 x .035, and the material after a comma.',
  'measure-them-up': 'Measure their distances and put them in place on the model bench; then amend the job.',
  'take-another-tube': 'Take a tube that goes by the rule, or enter the data that allow this one.',
};
