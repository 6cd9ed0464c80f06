/** Captions of the ways to splice, and of one of them in full. */
export const methodsText = {
  closed: (scopes: readonly string[]) => `Weld choices closed: ${scopes.join('; ')}.`,
  named: 'Methods',
  weldClosed: (scopes: readonly string[]) => `Weld closed: ${scopes.join('; ')}`,
  missing: (names: readonly string[]) => `Missing: ${names.join('; ')}`,
} as const;

export const methodSheetText = {
  title: (method: string, fits: string) => `${method}: ${fits}`,
  missing: (names: readonly string[]) => `Missing: ${names.join('; ')}.`,
  caution: 'CAUTION',
  drawing: (method: string, id: string) => `${method} on ${id}, from the side and unrolled`,
  dimensions: 'Dimensions',
  cutCard: 'Cut card',
  cutOf: (what: string, tube: string) => `${what} · ${tube}`,
  waitNamed: 'Where sleeves wait',
  wait: 'Where it waits while the section goes in',
  waitOf: (part: string, how: string) => `${part}: ${how}`,
  needs: (length: string) => `needs ${length}`,
  rules: (count: number) => `Rules held (${count})`,
} as const;

export const sleeveText = {
  named: 'Sleeve',
  title: (tube: string) => `Sleeve for ${tube}`,
  slack: 'Slack on diameter',
  length: 'Length it asks for',
  byTableTaken: 'By your table, taken',
  byRuleTaken: 'By the general rule, taken',
  none: 'No tube of the stock list goes.',
  byRule: 'By the general rule',
  others: 'Other sizes',
  other: (tube: string, slack: string, says: readonly string[]) =>
    `${tube}: slack ${slack}${says.length > 0 ? `; ${says.join('; ')}` : ''}`,
} as const;
