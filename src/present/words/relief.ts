import type { CutCandidate, CutVerdict, Release } from '../../core/relief/result.ts';
import type { CutWhy, ReleaseWhy, SawWhy, TargetNote } from '../../core/relief/why.ts';

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

/** Why a candidate stands where it does. */
export const whyWords = {
  'makes-mechanism': 'without it the truss would move freely',
  'needs-fixture-barely-stands': 'without it the truss barely stands: a fixture first',
  'needs-fixture-sag': 'the truss sags too far without it: a brace or fixture first',
  'needs-fixture-only-welds':
    'without it only the stiffness of the welds keeps the truss in shape: a brace or fixture first',
  'no-help': 'it would let go less than a tenth',
  'is-the-source': 'it is what strains the tube: cutting it lets all of that go',
  'relieves-source': 'it lets go what other bends lock in',
  'target-is-scrap-itself': 'the tube itself is to be cut out',
  'due-to-be-cut-out': 'it is to be cut out in any case',
  'to-be-sleeved-anyway': 'it is to be sleeved in any case',
  'frees-its-length': 'the tube can then take its own length',
  'pair-does-more': 'the two together let go more than either',
  'second-cut-needs-gate-opened':
    'two open tubes at one cluster: the second cut needs its gate opened by name',
  'not-ranked-say-how-held': 'not ranked: say how the truss is held',
} as const satisfies Record<CutWhy, string>;

export const releaseWhyWords = {
  'bolted-tube-lets-go': 'a bolted tube lets go without a saw',
  'weight-loads-the-tube': 'its weight loads the tube',
  'support-holds-it-strained': 'the support holds the truss strained',
} as const satisfies Record<ReleaseWhy, string>;

export const sawWhyWords = {
  'whole-tube-is-scrap': 'the whole tube is to be scrapped',
  'at-the-damage': 'at the damage, which is to be cut out',
  'own-splice-of-a-sound-tube': 'where the splice of this sound tube would sit',
  'no-room-clear-of-both-cuts': 'no room clear of both finished cuts',
  'place-of-damage-not-given': 'the place of the damage is not given',
  'place-of-a-cluster-guessed': 'an end of it stands where it was guessed: measure it first',
} as const satisfies Record<SawWhy, string>;

export const targetNoteWords = {
  'every-cut-needs-a-fixture': 'Every cut needs a fixture that holds the truss first.',
  'no-cut-helps': 'No cut of another tube helps.',
  'bending-is-local-cut-at-the-tube':
    'Bending is local: only a cut at the cluster, or of the tube itself, lets it go.',
  'length-error-only-changes-shape':
    'Nothing clamps this tube: an error in its length turns into shape, not into force.',
} as const satisfies Record<TargetNote, string>;

export const ownRepairWords = {
  splice: 'its own cut makes a splice',
  replaceTube: 'its own cut makes a new tube',
} as const satisfies Record<NonNullable<CutCandidate['ownRepair']>, string>;
