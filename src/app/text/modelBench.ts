/** Captions of the page on which a model is built: its head, its parts, the picture and what is odd. */
export const modelBenchText = {
  page: 'Model bench',
  undo: 'Undo',
  undoNamed: (change: string | null) => `Undo: ${change ?? 'nothing to undo'}`,
  undoNothing: 'nothing yet',
  redo: 'Redo',
  redoNamed: (change: string | null) => `Redo: ${change ?? 'nothing to redo'}`,
  redoNothing: 'nothing',
  units: 'Units',
  light: 'Light',
  back: 'Back to the job',
  parts: 'Parts of the bench',
  part: {
    begin: 'Begin',
    stations: 'Stations',
    bracing: 'Bracing',
    tubes: 'Sizes',
    points: 'Points and tubes',
    loads: 'Held and loaded',
    distances: 'Distances',
    tables: 'Tables',
    use: 'Use it',
  },
  partFailed: 'This part of the bench failed. The model is kept; the other parts go on working.',
  truss: 'The truss',
} as const;

export const benchPictureText = {
  picture: 'Truss picture',
  view: 'View',
  views: { leftSide: 'Left', plan: 'Plan', fromAhead: 'Ahead', threeQuarter: '¾' },
  fit: 'Fit',
  names: 'Names in the picture',
  named: {
    clusters: 'Name clusters',
    members: 'Name tubes',
    selection: 'Name what is in hand',
    none: 'No names',
  },
  empty: 'The truss is drawn here as you type, from the first ring on.',
  failed: 'The picture cannot be drawn here. Everything can be entered without it.',
  coming: 'The picture is being set up …',
} as const;

export const oddText = {
  title: 'What is odd',
  notDone: (why: string) => `Not done: ${why}`,
  odd: (count: number) => (count === 0 ? 'Nothing odd' : `${count} odd`),
  counts: (tubes: number, clusters: number) => `${tubes} tubes · ${clusters} clusters`,
  assumed: (count: number) => ` · ${count} assumed, drawn dotted`,
  none: 'What does not fit is listed here as you type.',
  goThere: 'Go there',
  show: 'Show',
  mends: {
    takeWordOut: 'Take the word out',
    takeOpeningOut: 'Take the opening out',
    takeSizeOut: 'Take the size out',
    takeClusterOut: 'Take the cluster out',
    takeTubeOut: 'Take the tube out',
    takeLineOut: 'Take the line out',
    takeDistanceOut: 'Take the distance out',
    rightAsLeft: 'Right as the left',
    leftAsRight: 'Left as the right',
    addTwin: 'Add its twin',
  },
  take: (what: string) => `Take ${what}`,
} as const;

export const sidesText = {
  title: 'Left and right',
  alike: 'Left and right are alike.',
  differ: (count: number) =>
    `${count} ${count === 1 ? 'thing differs' : 'things differ'} between left and right.`,
  what: 'What differs',
  toRight: 'Copy left to right',
  wasToRight: 'left copied to right',
  toLeft: 'Copy right to left',
  wasToLeft: 'right copied to left',
} as const;
