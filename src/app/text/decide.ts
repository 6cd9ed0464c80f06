/** Captions of what is decided about a tube or cluster: the whole truss, one place, and each way to go on. */
export const decidePanelText = {
  back: '‹ The whole truss by disposition',
  against: (answer: string) => `; by the rules loaded it ${answer}`,
  noReason: '; no reason written',
  waysOpen: (ways: string) => `${ways} may be taken`,
  noWay: 'no way can be said yet',
  missing: (lacks: readonly string[], more: boolean) => `missing: ${lacks.join(', ')}${more ? ' …' : ''}`,
  nothing: 'Nothing to decide: no finding is recorded. Record findings on the walk-round.',
} as const;

export const decideOneText = {
  named: (id: string) => `Decide ${id}`,
  closed: (scopes: readonly string[]) => `Weld choices closed: ${scopes.join('; ')}.`,
  ways: 'Ways to go on',
  waysLead: 'What the rules loaded say. Nothing is chosen beforehand: open one to read why, and decide.',
  noFinding: 'No finding stands here.',
  found: 'Found',
  foundTogether: 'Found, judged together',
  on: (id: string) => `on ${id}`,
  soundTube: (cluster: string) => `Sound tube to the weld at ${cluster}`,
  decisionOn: (id: string) => `Decision on ${id}`,
  reason: (reason: string) => `Reason: ${reason}`,
  reasonNeeded: 'No reason is written, and one is needed: decide again with a reason.',
  noReason: 'No reason written.',
  limitsNamed: 'Sizes against your own limits',
  limits: 'Against your own limits',
  ofLimit: (measured: string, limit: string) => `${measured} of ${limit}`,
  notMeasured: 'not measured',
} as const;

export const wayText = {
  decided: ' · decided',
  missing: 'Still missing',
  enter: 'Enter it',
  below: 'below, as your data',
  goesWithIt: 'Goes with it',
  form: (choice: string) => `Decide: ${choice}`,
  reason: 'Reason',
  reasonNeeded: (cannotSay: boolean) =>
    `Reason (needed: the rules loaded ${cannotSay ? 'cannot say' : 'do not allow it'})`,
  writeWhy: 'Write why. It stands in the record beside your name.',
  as: (who: string) => `as ${who.trim() === '' ? '“name not given” (enter it on Start)' : who}`,
} as const;

export const decideTopicText = {
  straightenOnly: (id: string) => `${id} may be straightened alone`,
  roundOutOnly: (id: string) => `${id} may be rounded out alone`,
  allowed: (choice: string, id: string) => `${choice} is allowed on ${id}`,
  noStraighten: (id: string) => `${id} may not be straightened`,
  noSplice: (id: string) => `${id} may not be spliced`,
  scope: (id: string) => `${id} is heat-treated, brazed, an axle … (in words)`,
  bow: (id: string) => `Limit of bow on ${id}`,
  allBow: 'Limit of bow, all tubes, per cent of the chord',
  ovality: (id: string) => `Limit of ovality on ${id}, per cent of D`,
  wallLoss: (id: string) => `Limit of wall loss on ${id}, per cent`,
  dentDepth: (id: string) => `Limit of dent depth on ${id}, per cent of D`,
  patchOverlap: 'Overlap of a patch (figure 4-36)',
} as const;
