import type { Damage, Finding } from '../../core/job/jobSchema.ts';
import { showLength, type Units } from '../../present/show.ts';
import { crackPlaceWords } from '../../present/words/record.ts';

/** A size asked for, by its field in the record. */
export interface SizeField {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
}

/** What each kind of damage is measured by. */
export const findingFields: { readonly [D in Damage]: readonly SizeField[] } = {
  bow: [
    { key: 'depthIn', label: 'Depth of the bow' },
    { key: 'chordIn', label: 'Over a span of', hint: 'empty: cluster to cluster' },
    { key: 'stdIn', label: 'Sure to about', hint: 'one standard deviation' },
  ],
  kink: [
    { key: 'depthIn', label: 'Depth of the kink' },
    { key: 'chordIn', label: 'Over a span of', hint: 'empty: cluster to cluster' },
    { key: 'stdIn', label: 'Sure to about', hint: 'one standard deviation' },
  ],
  dent: [
    { key: 'depthIn', label: 'Depth' },
    { key: 'alongIn', label: 'Length along the tube' },
    { key: 'widthIn', label: 'Width' },
  ],
  crack: [{ key: 'crackIn', label: 'Length of the crack' }],
  oval: [
    { key: 'largestIn', label: 'Largest diameter' },
    { key: 'smallestIn', label: 'Smallest diameter' },
    { key: 'templateGapIn', label: 'Or gap under a template' },
  ],
  thinned: [{ key: 'wallLeftIn', label: 'Wall left' }],
  hole: [
    { key: 'alongIn', label: 'Length along the tube' },
    { key: 'widthIn', label: 'Width' },
  ],
  break: [{ key: 'gapIn', label: 'Gap' }],
  other: [],
};

/** A choice asked for, with the words of each answer. */
export interface Choice {
  readonly key: string;
  readonly label: string;
  readonly options: Readonly<Record<string, string>>;
}

export const choicesOf: { readonly [D in Damage]: readonly Choice[] } = {
  bow: [{ key: 'shape', label: 'Shape', options: { smooth: 'smooth', kinked: 'kinked' } }],
  kink: [],
  dent: [
    {
      key: 'widthBy',
      label: 'Width taken',
      options: { across: 'across, by caliper', around: 'around, by tape' },
    },
  ],
  crack: [{ key: 'where', label: 'Where', options: crackPlaceWords }],
  oval: [],
  thinned: [{ key: 'cause', label: 'By', options: { rust: 'rust', chafe: 'chafe', unknown: 'not known' } }],
  hole: [],
  break: [],
  other: [],
};

/** The texts a form starts with: as typed when a person typed them, else the figure in the user's units. */
export const startTexts = (old: Finding | undefined, units: Units): Readonly<Record<string, string>> => {
  if (!old) return {};
  const plain = units === 'mm' ? 'mm' : 'inDecimal';
  const sizes = Object.entries(old).flatMap(([key, value]) =>
    key.endsWith('In') && typeof value === 'number'
      ? [[key, old.typed?.[key] ?? showLength(value, plain)]]
      : [],
  );
  const place = old.place ? [['place', old.typed?.atIn ?? showLength(old.place.atIn, plain)]] : [];
  return Object.fromEntries([...sizes, ...place]);
};
