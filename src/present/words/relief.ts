import type { CutCandidate, CutVerdict, Release } from '../../core/relief/result.ts';

export const cutVerdictWords = {
  helps: 'helps',
  noHelp: 'no help',
  needsFixture: 'only after a fixture holds',
  refused: 'refused: the truss would move freely',
} as const satisfies Record<CutVerdict, string>;

export const tierWords = {
  target: 'the tube itself',
  replace: 'due for replacement',
  sleeve: 'to be sleeved anyway',
  undecided: 'damaged, not decided',
  sound: 'sound tube',
} as const satisfies Record<CutCandidate['tier'], string>;

/** What put a candidate where it stands in the list. */
export const decidedByWords = {
  gate: 'by what holds the truss when it is cut',
  source: 'by how much of what other bends lock in goes',
  tier: 'by what is due to be cut anyway',
  eta: 'by how freely the length can change',
  hops: 'by nearness',
  sag: 'by how little the truss sags',
  id: 'by name only: nothing tells them apart',
} as const satisfies Record<CutCandidate['decidedBy'], string>;

export const releaseWords = {
  bolted: 'Unbolt',
  weight: 'Take the weight off at',
  support: 'Move the support at',
} as const satisfies Record<Release['kind'], string>;

/** Why a candidate stands where it does: one sentence a code. `core/relief` gives the codes. */
const whys: Readonly<Record<string, string>> = {};

/** A `why` code in words; an unknown code is spelled, a sentence stays. */
export const whyWords = (why: string): string =>
  Object.hasOwn(whys, why) ? whys[why]! : /^[a-z0-9]+(-[a-z0-9]+)*$/.test(why) ? why.replace(/-/g, ' ') : why;
