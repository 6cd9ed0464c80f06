import type { Tagging } from '../../core/job/change.ts';
import type { Units } from '../../present/show.ts';
import type { Light, SceneProps, ViewName } from '../scene/sceneProps.ts';
import type { Middle, Route } from '../state/view.ts';

/** Captions of what always stands on the sheet: head, route, toolbar, find box, legend, lines of work. */

export const routeText = {
  start: 'Start',
  walkRound: 'Walk-round',
  loadPath: 'Load path',
  trammel: 'Trammel',
  decide: 'Decide',
  plan: 'Plan',
  estimate: 'Estimate',
  relieve: 'Relieve',
  straighten: 'Straighten',
  splice: 'Splice',
  record: 'Record',
  practice: 'Practice',
  bench: 'Bench sums',
} as const satisfies Record<Route, string>;

/** Counts beside the words of the route. */
export const countText = {
  unseen: (n: number, of: number) => `${n} of ${of} not looked at`,
  next: (id: string) => `next: ${id}`,
  outside: (n: number) => `${n} outside`,
  measured: (n: number, of: number) => `${n} of ${of} measured`,
  undecided: (n: number) => `${n} undecided`,
  noneUndecided: 'none undecided',
  ticked: (n: number, of: number) => `${n} of ${of} ticked`,
  hours: (least: string, most: string) => `${least} to ${most} h`,
  cuts: (tubes: string) => `${tubes} with cuts to weigh`,
  toStraighten: (n: number) => `${n} to straighten`,
  decided: (tubes: string) => `${tubes} decided`,
} as const;

/** Views by name, as they stand on a button, and their keys. */
export const viewText = {
  leftSide: { name: 'Left side', short: 'Left', keys: '1' },
  rightSide: { name: 'Right side', short: 'Right', keys: '2' },
  plan: { name: 'Plan', short: 'Plan', keys: '3' },
  fromAhead: { name: 'From ahead', short: 'Ahead', keys: '4' },
  fromBelow: { name: 'From below', short: 'Below', keys: '5' },
  threeQuarter: { name: 'Three-quarter', short: '¾', keys: '6' },
} as const satisfies Record<
  ViewName,
  { readonly name: string; readonly short: string; readonly keys: string }
>;

/** Tags by name, and their keys. */
export const tagText = {
  bent: { name: 'Bent', keys: 'B' },
  cracked: { name: 'Cracked', keys: 'C' },
  forReplacement: { name: 'For replacement', keys: 'R' },
  lookAgain: { name: 'Look again', keys: 'A' },
  lookedAt: { name: 'Looked at', keys: 'L' },
} as const satisfies Record<Tagging['tag'], { readonly name: string; readonly keys: string }>;

export const lightText = { day: 'Day', night: 'Night', outdoor: 'Outdoor' } as const satisfies Record<
  Light,
  string
>;

export const unitText = {
  inFraction: 'in, fraction',
  inDecimal: 'in, decimal',
  mm: 'mm',
} as const satisfies Record<Units, string>;

export const toolbarText = {
  region: 'View',
  more: 'More',
  moreNamed: 'More ways to look',
  fitAll: 'Fit all',
  fitSelected: 'Fit selected',
  names: 'Names in the picture',
  labels: {
    selection: 'Name selected',
    clusters: 'Name clusters',
    members: 'Name tubes',
    all: 'Name all',
    none: 'No names',
  } satisfies Record<SceneProps['labels'], string>,
  apart: 'Bay or face set apart',
  whole: 'Whole truss',
  chosen: 'Those chosen',
  bays: 'Bays',
  bay: (id: string) => `Bay ${id}`,
  faces: 'Faces',
  several: 'Several',
  severalNamed: 'Pick several',
  middleNamed: 'Picture or table',
  middle: { picture: 'Picture', both: 'Both', table: 'Table' } satisfies Record<Middle, string>,
} as const;

export const headText = {
  job: 'Job',
  noJob: 'Tubewright',
  noAircraft: 'No aircraft entered',
  undo: 'Undo',
  undoes: (name: string) => `Undo: ${name}`,
  nothingToUndo: 'Undo: nothing to undo',
  nothingYet: 'nothing yet',
  redo: 'Redo',
  redoes: (name: string) => `Redo: ${name}`,
  nothingToRedo: 'Redo: nothing to redo',
  nothing: 'nothing',
  units: 'Units',
  light: 'Light',
  kept: 'Kept',
  saved: 'Saved',
  savedAgo: (age: string) => `Saved ${age}`,
  saving: 'Saving …',
  notSaved: 'NOT SAVED on this device',
  nothingToSave: 'Nothing to save yet',
  overdue: 'Save a copy: ',
  copied: (age: string, newer: number) =>
    `Copy off this device ${age}${newer > 0 ? `, ${newer} newer records` : ''}`,
  noCopy: 'No copy off this device yet',
  noCopyOverdue: 'none off this device yet',
} as const;

export const findText = {
  label: 'Find a tube, a cluster or an action',
  hint: 'Find: U4R, left bay 4, brace',
  found: 'Found',
  nothing: 'Nothing in this truss is called that.',
} as const;

export const legendText = {
  title: 'Legend and filter',
  lead: 'Tubes + clusters in each state; press one to fade it',
  filter: 'Legend and filter: tubes and clusters in each state',
  counts: (tubes: number, clusters: number) => `${tubes} tubes, ${clusters} clusters`,
  item: (word: string, counts: string, shown: boolean) => `${word}: ${counts}. ${shown ? 'Shown' : 'Faded'}`,
} as const;

/** What each stage is called while it is worked on. */
const stages: Readonly<Record<string, string>> = {
  standing: 'reading the records',
  expandTruss: 'setting out the truss',
  walkRound: 'counting what was looked at',
  heldNow: 'setting the supports',
  prepareFrame: 'setting up the frame',
  statics: 'solving the load cases',
  measuringPlan: 'planning what to measure',
  openTubes: 'reading what is open',
  trammel: 'comparing distances',
  holdPoints: 'listing what each hold asks for',
  lockedIn: 'working the locked-in forces',
  loadPath: 'following the load',
  relief: 'trying the cuts',
  disposition: 'holding findings against the rules',
  straighten: 'setting up the presses',
  splice: 'working out the splices',
};

export const workText = {
  region: 'Work in hand',
  fault: (why: string) => `The sums failed by our own fault: ${why} What you entered is saved.`,
  again: 'Work it out again',
  stopped: 'Stopped. Figures shown are from before the last change.',
  workOut: 'Work it out',
  working: (stage: string | null) => `Working: ${stages[stage ?? ''] ?? 'starting'} …`,
  upToDate: 'Figures are up to date.',
  stop: 'Stop',
  noFigures: 'No figures: see the line above.',
  awaited: 'Being worked out …',
} as const;

export const frameText = {
  truss: 'Truss',
  picture: 'Truss picture',
  benchFailed: 'The bench failed. The model on it is kept; load the page again.',
  partFailed: 'This part of the screen failed. The job is saved; the other parts go on working.',
  screenFailed:
    'The screen failed by our own fault. What you entered is saved on this device; load the page again.',
  saveCopy: 'Save a copy of the job',
  close: 'Close',
  ourFault: (why: string) => `Our own fault: ${why}`,
  tryAgain: 'Try again',
  said: 'Said',
  savedHere: 'Saved on this device',
} as const;

export const newerText = {
  ready: 'A newer version of this program is ready.',
  keeps: 'What you entered stays as it is.',
  take: 'Use it now',
  later: 'Later',
  typing: 'Record or clear what you are typing first.',
  notSaved: 'The job is not saved on this device. Save a copy as a file first.',
  otherTab: 'Another tab took it already; this page goes on with the older one until it is loaded again.',
} as const;

export const pictureText = {
  noWebGl:
    'This browser cannot draw the 3D picture (WebGL is missing or switched off). Everything in it is in the table, and the route works as it does with the picture.',
  noTruss: 'No truss is open.',
  cannot: 'The picture cannot be drawn here. The table does everything the picture does.',
  coming: 'The picture is being set up …',
  faded: (n: number) => `${n} faded`,
  fadeThese: 'Fade these instead',
  fadeRest: 'Fade the rest instead',
  showAll: 'Show all',
} as const;

export const inspectorText = {
  region: 'Selected',
  nothing: 'Nothing selected. Touch a tube in the picture, pick a row of the table, or find one by its name.',
  ownSection: 'own section numbers',
  noLength: 'length not measured',
  lengthTrue: (length: string) => `${length} true`,
  nearby: (ids: string) => `Nearby: ${ids}`,
  twin: (id: string) => `Twin ${id}`,
  onCentre: 'on the centre plane',
  right: 'right',
  left: 'left',
  place: (station: string, buttLine: string, hand: string, waterLine: string) =>
    `Station ${station}; butt line ${buttLine} ${hand}; water line ${waterLine}. As drawn.`,
  selected: (n: number) => `${n} selected`,
  selectNothing: 'Select nothing',
  more: (n: number) => `and ${n} more`,
} as const;
