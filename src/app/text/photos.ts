import type { PhotoMark } from '../../core/job/jobSchema.ts';

/** Captions of photos and the marks on them. */
export const photosText = {
  section: (of: string) => `Photos of ${of}`,
  title: (count: number) => (count > 0 ? `Photos: ${count}` : 'Photos'),
  take: 'Take a photo',
  fromFile: 'Photo from a file',
  noPicture: (file: string) => `"${file}" is no picture that this browser can read. Use a JPEG or PNG.`,
  photoOf: (of: string, shows: string) => `Photo of ${of}${shows === '' ? '' : `: ${shows}`}`,
  inFull: (words: string) => `${words}, in full`,
  bytesMissing: 'The bytes of this photo are not on this device.',
  remove: 'Remove',
  removeNamed: (words: string) => `Remove: ${words}`,
  removed: (of: string) => `Photo of ${of} removed`,
  correct: 'Change marks',
  correctNamed: (words: string) => `Change marks: ${words}`,
  shows: 'Shows',
  asItIs: (of: string) => `${of} as it is`,
  time: 'Stage of the repair',
  byItsTime: 'told by its time',
  looking: 'Looking',
  lookingHint: 'from below, aft',
  record: 'Record the photo',
  recordCorrected: 'Record the change',
  leave: 'Leave it',
  notKept: 'Place and camera data of the file are not kept.',
  corrected: 'The marks as recorded before stay in the record.',
} as const;

const asks = {
  arrow: ['Touch where the arrow begins.', 'Touch where it points.'],
  ring: ['Touch the middle of the ring.', 'Touch its rim.'],
  text: ['Write the words first, then touch where they go.', 'Touch where the words go.'],
} as const satisfies Record<PhotoMark['mark'], readonly [string, string]>;

export const markerText = {
  tools: { arrow: 'Arrow', ring: 'Ring', text: 'Words' },
  /** `begun`: the first of two touches is made, or the words are written. */
  asks: (tool: PhotoMark['mark'], begun: boolean): string => asks[tool][begun ? 1 : 0],
  words: 'Words on the photo',
  marks: 'Marks on the photo',
  picture: 'Photo to mark',
  pictureNamed: (ask: string) => `Photo to mark. ${ask} Arrow keys move the cross, Enter touches.`,
  takeOff: (mark: string, place: number) => `Take off ${mark.toLowerCase()} ${place}`,
  takeOffWords: (words: string) => `Take off "${words}"`,
} as const satisfies {
  readonly tools: Record<PhotoMark['mark'], string>;
  readonly [caption: string]: unknown;
};
