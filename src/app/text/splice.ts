/** Captions of splices, of the opening measured after spreading, and of the fit-up card. */
export const spliceText = {
  fitsHere: (methods: readonly string[]) => `fits here: ${methods.join(', ')}`,
  answer: (method: string, fits: string) => `${method}: ${fits}`,
  nothing:
    'No tube is decided to be spliced, sleeved, patched or replaced. Select any tube to see what would fit.',
  decidedNamed: 'Tubes decided',
  decidedTitle: 'Decided, to be worked',
  anyTube: 'Or select any tube to see what would fit.',
  named: (id: string) => `Splice ${id}`,
  decided: (choice: string) => `Decided: ${choice}.`,
  notDecided: 'Not decided to be spliced, sleeved or replaced.',
  lead: 'Nothing is chosen beforehand: open a method to see why it fits, or the number that fails.',
  ownData: 'Dimensions, tubes at hand and your sleeve table',
  back: '‹ All tubes decided',
} as const;

export const spliceTopicText = {
  inside: (size: string) => `Your table: sleeve inside ${size}`,
  insideHint: 'the sleeve, like 7/8 x .035',
  over: (size: string) => `Your table: sleeve over ${size}`,
  overHint: 'the sleeve, like 1-1/8 x .058',
  cut: (cluster: string) => `Place of the cut, from ${cluster}`,
  cutHint: 'on the side nearest the damage',
  clock: 'Clock position of the longest line',
  clockHint: '1 to 12',
  section: 'Tube at hand for the section',
  sectionHint: 'like 1 x .035, 4130N',
  sleeve: 'Tube at hand for the sleeve',
  sleeveHint: 'like 7/8 x .049, 4130N',
  toe: (cluster: string) => `Where the weld ends at ${cluster}, from its centre`,
  patchOverlap: 'Overlap of a patch (figure 4-36)',
} as const;

export const openingText = {
  named: 'Opening measured',
  title: 'After spreading',
  lead: 'Computed lengths are for ordering. Measure the opening on its longest line when the distances stand, then cut.',
  computed: 'Opening as computed, longest line',
  measured: 'Opening as measured',
  longPoint: (part: string) => `${part}: cut to, long point`,
  shortPoint: (part: string) => `${part}: cut to, short point`,
  form: 'Opening measured after spreading',
  source: (method: string) => `Measured after spreading, longest line, ${method.toLowerCase()}`,
  changed: (id: string) => `Opening of ${id} measured`,
  field: 'Opening measured',
  wanted: 'Enter the opening.',
  record: 'Record the opening',
} as const;

export const fitUpText = {
  title: 'Fit-up card',
  lead: 'Before the first tack: it cannot be seen afterwards.',
  allTicked: 'All rows are ticked.',
  toTick: (count: number) => `${count} to tick.`,
  row: (part: string, step: string) => `${part}: ${step}`,
  tickOff: (id: string) => `Fit-up card of ${id}: tick taken off`,
  proof: 'Proof: mill paper no., tag photo, or wall as measured',
  close: (id: string) => `Close the fit-up of ${id}`,
  seenBy: (who: string | undefined, when: string, gap: string | null) =>
    `Seen by ${who ?? 'nobody named'}, ${when}; gap ${gap ?? 'not entered'}.`,
  gap: 'Gap found, largest',
  overlap: 'Overlap found, least',
  second: 'Second person',
  notDoer: 'Not the one who did the work.',
  marks: 'Marks stand in the middle of the joints and holes',
  closedUntil: (open: number) => `Closed until ${open} rows are ticked`,
  record: 'Record the fit-up',
} as const;
