import type { Choice, Damage } from '../core/job/jobSchema.ts';
import type { State } from '../core/walkRound/result.ts';

/** How a state is told apart: never by colour alone. Colours, patterns, glyphs and words are our own set. */
export interface Tag {
  readonly word: string;
  /** On paper white and on slate. */
  readonly light: string;
  readonly dark: string;
  readonly pattern: 'dotted' | 'solid' | 'dashes' | 'chevrons' | 'rings' | 'band' | 'hatch' | 'wave';
  readonly glyph: 'ring' | 'dot' | 'triangle' | 'arc' | 'twoRings' | 'slash' | 'cross' | 'damage';
  /** Two-letter chalk code. */
  readonly chalk: string;
}

export const tags = {
  straighten: {
    word: 'Straighten',
    light: '#225C60',
    dark: '#7AAB97',
    pattern: 'chevrons',
    glyph: 'arc',
    chalk: 'ST',
  },
  splitSleeve: {
    word: 'Split sleeve / patch',
    light: '#640898',
    dark: '#C171E3',
    pattern: 'rings',
    glyph: 'twoRings',
    chalk: 'SL',
  },
  splice: { word: 'Splice', light: '#A51105', dark: '#E15D18', pattern: 'band', glyph: 'slash', chalk: 'SP' },
  replace: {
    word: 'Replace / rebuild',
    light: '#090909',
    dark: '#F7FBEC',
    pattern: 'hatch',
    glyph: 'cross',
    chalk: 'RP',
  },
  undecided: {
    word: 'Undecided',
    light: '#102848',
    dark: '#A810D0',
    pattern: 'wave',
    glyph: 'damage',
    chalk: 'UD',
  },
  lookAgain: {
    word: 'Look again',
    light: '#D66919',
    dark: '#E0BB18',
    pattern: 'dashes',
    glyph: 'triangle',
    chalk: 'CK',
  },
  lookedAt: {
    word: 'Looked at',
    light: '#3471D0',
    dark: '#81CFFC',
    pattern: 'solid',
    glyph: 'dot',
    chalk: '·',
  },
  notLookedAt: {
    word: 'Not looked at',
    light: '#929292',
    dark: '#6D7982',
    pattern: 'dotted',
    glyph: 'ring',
    chalk: '',
  },
} as const satisfies Record<State, Tag>;

/** Damage kinds: word and glyph. */
export const damageTags = {
  bow: { word: 'Bow', tagged: 'Bent', glyph: 'bowArc' },
  kink: { word: 'Kink', tagged: 'Bent', glyph: 'kinkChevron' },
  dent: { word: 'Dent', tagged: 'Dented', glyph: 'dentMoon' },
  crack: { word: 'Crack', tagged: 'Cracked', glyph: 'crackZigzag' },
  oval: { word: 'Out of round', tagged: 'Out of round', glyph: 'ovalRing' },
  thinned: { word: 'Thin wall', tagged: 'Thinned', glyph: 'thinStipple' },
  hole: { word: 'Hole', tagged: 'Holed', glyph: 'holeRing' },
  break: { word: 'Break', tagged: 'Broken', glyph: 'breakGap' },
  other: { word: 'Other damage', tagged: 'Damaged', glyph: 'otherQuery' },
} as const satisfies Record<Damage, { word: string; tagged: string; glyph: string }>;

/** The state a decision shows as. */
export const choiceWords = {
  straighten: 'Straighten',
  roundOut: 'Round out',
  patch: 'Patch',
  splitSleeve: 'Split sleeve',
  splice: 'Splice a section',
  replace: 'Replace',
  fingerPlate: 'Finger plate',
  rebuild: 'Rebuild the cluster',
  refer: 'Refer to the manufacturer',
} as const satisfies Record<Choice, string>;
