/** Captions of the jobs kept on this device. */
export const onDeviceText = {
  region: 'Jobs on this device',
  title: 'On this device',
  open: (name: string) => `${name} (open)`,
  asFile: 'As a file',
  remove: 'Remove',
  sure: 'Remove for good?',
  kept: (saved: string, copy: string | null) =>
    `Saved ${saved}${copy === null ? '; no copy off this device' : `; copy off this device ${copy}`}`,
  promised: 'This browser has promised not to clear what is kept here by itself.',
  notPromised:
    'This browser has not promised to keep what is here: when it runs short of room it may clear it, and a private window forgets everything when it is closed. Save copies as files.',
} as const;
