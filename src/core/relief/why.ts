/** Why a cut stands where it does in the list; worded in `present/words`. */
export const cutWhys = [
  'makes-mechanism',
  'needs-fixture-barely-stands',
  'needs-fixture-sag',
  'needs-fixture-only-welds',
  'no-help',
  'is-the-source',
  'relieves-source',
  'target-is-scrap-itself',
  'due-to-be-cut-out',
  'to-be-sleeved-anyway',
  'frees-its-length',
  'pair-does-more',
  'second-cut-needs-gate-opened',
  'not-ranked-say-how-held',
] as const;
export type CutWhy = (typeof cutWhys)[number];

/** Why something that needs no saw is worth letting go first. */
export const releaseWhys = [
  'bolted-tube-lets-go',
  'weight-loads-the-tube',
  'support-holds-it-strained',
] as const;
export type ReleaseWhy = (typeof releaseWhys)[number];

/** Where to saw, in a word. */
export const sawWhys = [
  'whole-tube-is-scrap',
  'at-the-damage',
  'own-splice-of-a-sound-tube',
  'no-room-clear-of-both-cuts',
  'place-of-damage-not-given',
  'place-of-a-cluster-guessed',
] as const;
export type SawWhy = (typeof sawWhys)[number];

/** Said once for a target, not for each cut. */
export const targetNotes = [
  'every-cut-needs-a-fixture',
  'no-cut-helps',
  'bending-is-local-cut-at-the-tube',
  'length-error-only-changes-shape',
] as const;
export type TargetNote = (typeof targetNotes)[number];
