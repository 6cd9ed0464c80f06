/** What each change is called, as undo names it and the line at the foot says it; and the reasons put on record. */
export const deedText = {
  several: (count: number) => `${count} tubes and clusters`,
  tagOff: 'tag taken off',
  takenOff: (tag: string, of: string) => `${tag} taken off ${of}`,
  finding: (word: string, of: string) => `${word} on ${of}`,
  corrected: (what: string) => `${what} corrected`,
  reading: (from: string, to: string) => `Reading ${from} to ${to}`,
  photo: (of: string) => `Photo of ${of}`,
  byHand: 'removed by hand',
  lookedAt: (zone: string) => `Looked at: ${zone}`,
  access: (zone: string, access: string) => `Access to ${zone}: ${access}`,
  bothSides: (bay: string) => `Both sides hurt in bay ${bay}`,
  held: (how: string) => `Held: ${how}`,
  jobName: 'Name of the job',
  aircraft: 'Whose aircraft',
} as const;
