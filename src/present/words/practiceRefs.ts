/** What common practice a number rests on, in words; by the ids of its rows in core, or where it has none, by its source. */
export const practiceRefs: Readonly<Record<string, string>> = {
  'common practice, no source': 'no source',
  'damage-cut-out': 'both cuts clear of all recorded damage',
  'diagonal-cut': 'diagonal cut at 30° to the axis, on reverse angles',
  'rosette-count': 'rosettes at each end of a sleeve',
  'run-back': 'room for a sleeve to run back before the section goes in',
  'sleeves-apart': 'two sleeves do not meet',
  'split-slack': 'slack of a split sleeve as that of an outer sleeve',
};
