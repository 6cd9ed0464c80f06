/** Captions of the bar that steps through the work under the picture. */
export const planBarText = {
  region: 'Stages of the work',
  stage: (title: string, from: number, to: number, ticked: number) =>
    `${title}: step ${from} to ${to}, ${ticked} ticked`,
  before: 'Step before',
  next: 'Next step',
  step: (place: number, all: number, says: string) => `Step ${place} of ${all}: ${says}`,
  whole: (steps: number) => `${steps} steps: go through the work`,
  brace: 'brace',
  open: (member: string) => `open: ${member}`,
} as const;
