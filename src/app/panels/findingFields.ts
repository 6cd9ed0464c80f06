import type { Damage, Finding } from '../../core/job/jobSchema.ts';
import { showLength, type Units } from '../../present/show.ts';
import { crackPlaceWords } from '../../present/words/record.ts';
import { choiceText, sizeText } from '../text/findings.ts';

/** A size asked for, by its field in the record. */
export interface SizeField {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
}

/** What each kind of damage is measured by. */
export const findingFields: { readonly [D in Damage]: readonly SizeField[] } = {
  bow: [
    { key: 'depthIn', label: sizeText.bowDepth },
    { key: 'chordIn', label: sizeText.span, hint: sizeText.spanHint },
    { key: 'stdIn', label: sizeText.sure, hint: sizeText.sureHint },
  ],
  kink: [
    { key: 'depthIn', label: sizeText.kinkDepth },
    { key: 'chordIn', label: sizeText.span, hint: sizeText.spanHint },
    { key: 'stdIn', label: sizeText.sure, hint: sizeText.sureHint },
  ],
  dent: [
    { key: 'depthIn', label: sizeText.depth },
    { key: 'alongIn', label: sizeText.along },
    { key: 'widthIn', label: sizeText.width },
  ],
  crack: [{ key: 'crackIn', label: sizeText.crack }],
  oval: [
    { key: 'largestIn', label: sizeText.largest },
    { key: 'smallestIn', label: sizeText.smallest },
    { key: 'templateGapIn', label: sizeText.templateGap },
  ],
  thinned: [{ key: 'wallLeftIn', label: sizeText.wallLeft }],
  hole: [
    { key: 'alongIn', label: sizeText.along },
    { key: 'widthIn', label: sizeText.width },
  ],
  break: [{ key: 'gapIn', label: sizeText.gap }],
  other: [],
};

/** A choice asked for, with the words of each answer. */
export interface Choice {
  readonly key: string;
  readonly label: string;
  readonly options: Readonly<Record<string, string>>;
}

export const choicesOf: { readonly [D in Damage]: readonly Choice[] } = {
  bow: [{ key: 'shape', ...choiceText.shape }],
  kink: [],
  dent: [{ key: 'widthBy', ...choiceText.widthBy }],
  crack: [{ key: 'where', ...choiceText.where, options: crackPlaceWords }],
  oval: [],
  thinned: [{ key: 'cause', ...choiceText.cause }],
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
