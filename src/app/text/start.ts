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

/** Captions of the first part of the route. */
export const startText = {
  inFile: 'In the file',
  oddInTruss: 'Odd in the truss',
  oddInRecords: 'Odd in the records',
  aboutSums: 'About the sums',
  thisJob: 'This job',
  job: 'Job',
  aircraft: 'Aircraft',
  aircraftHint: 'as you call it',
  who: 'Who is entering',
  whoHint: 'name on each record',
  held: 'The truss is held',
  notSaid: 'not said yet',
  truss: (name: string, source: string, datum: string) => `Truss: ${name}. ${source} ${datum}`,
  saveCopy: 'Save a copy of the job',
  ownTruss: 'Your own truss',
  modelBench: 'Model bench',
  changeModel: 'Change this job’s model',
  thisModel: 'this job’s model',
  ownTrussLead: 'From a drawing, a rough truss from a few lengths, or measured up from the sound side.',
  begin: 'Begin',
  open: 'Open a file',
  demo: (name: string) => `Demo: ${name}`,
  newJob: (name: string) => `New job: ${name}`,
  beginLead: 'Or drop a file anywhere on the page. A new job starts with everything not looked at:',
  benchSums: 'Bench sums',
  benchLead: 'One bent or dented tube, no job: fit, cut card, sleeve, template, straightening.',
  shown: 'How it is shown',
  units: 'Lengths in',
  light: 'Sheet for',
  leftHand: 'Card on the left, for the left hand',
  letterKeys: 'Single letters act as commands',
  keys: 'All keys on one sheet',
} as const;

export const earlierText = {
  title: (count: number) => `Earlier states of this job (${count})`,
  list: 'Earlier states',
  back: 'Go back to this state',
} as const;

export const joiningText = {
  region: 'Two tablets',
  title: 'Two tablets, one truss',
  lead: 'Save a copy on the other tablet and open it here. You see what comes before anything is joined; nothing of either is dropped, and undo takes it back.',
  choose: "Join another tablet's job",
  notJoined: (file: string) => `Not joined: ${file}`,
  from: (file: string) => `From ${file}`,
  joined: (file: string) => `Joined ${file}`,
  comes: (file: string) => `From ${file}: `,
  onlyHere: (count: number) => `. Only here: ${count} ${count === 1 ? 'record' : 'records'}.`,
  fields: 'The two jobs say differently',
  field: (field: string) =>
    `${field === 'name' ? 'Name of the job' : field === 'aircraft' ? 'Aircraft' : field}.`,
  sides: ['on this tablet', 'on the other tablet'],
  kept: ': kept',
  counts: ': counts',
  nothingSaid: 'not said',
  conflicts: (count: number) => `Said differently: ${count}`,
  join: 'Join them',
  leave: 'Leave it',
} as const;

export const programText = {
  title: 'This program',
  version: (version: string) => `Tubewright ${version}.`,
  states: {
    ready: 'Ready without network.',
    gettingReady: 'Being kept on this device …',
    notHere: 'This browser or this address does not let the program be kept: it needs the network to start.',
  },
  stays: 'Nothing you enter leaves this device unless you save a file.',
} as const;
