/** What is said of keeping, opening and photos, in the banner over the sheet. */

/** Why the browser will not keep something. */
export const refusalText = {
  full: 'the storage it allows is full',
  off: 'its storage is switched off here, as in some private windows',
  unknown: 'its storage is switched off in its settings, or cannot be read',
  closed: 'its storage was closed by a newer version in another tab; load the page again',
  shut: 'its storage could not be opened',
} as const;

export const keepText = {
  refuses: (why: string) =>
    `This browser refuses to keep the job on this device: ${why}. Save a copy as a file now.`,
  otherTab: (job: string) =>
    `Another tab changed "${job}" meanwhile. Both are kept; this is the second one on the Start list, where the other can be joined to it.`,
  unreadable: (job: string) =>
    `"${job}" as kept here cannot be read. It stays on the Start list; save it as a file and ask for help.`,
  earlier: (job: string, when: string) =>
    `"${job}" as kept here cannot be read; its text stays on the Start list. What is open now is its state of ${when}.`,
  backTo: (when: string) => `Back to ${when}`,
  pointUnreadable: (when: string) => `The state of ${when} cannot be read. The open job is untouched.`,
} as const;

export const openingText = {
  notOpened: (file: string, why: string) => `"${file}" was not opened: ${why} The open job is untouched.`,
  tooLarge: 'it is far too large for a job file.',
  unreadable: 'the browser cannot read it.',
} as const;

export const photoRefusedText = (why: string): string =>
  `This browser refuses to keep a photo on this device: ${why}. It is held until the page is closed: save a copy as a file now.`;
