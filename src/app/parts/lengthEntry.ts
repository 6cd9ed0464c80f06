import { parseLength } from '../../core/base/lengthText.ts';
import { showLength, type Units } from '../../present/show.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';

/** What a typed length was read as. */
export type Entry =
  | { readonly kind: 'empty' }
  | { readonly kind: 'length'; readonly valueIn: number; readonly shown: string }
  | { readonly kind: 'wrong'; readonly words: string };

/** Reads a field; a bare number is in the unit the person works in. */
export const readEntry = (typed: string, units: Units, signed: boolean): Entry => {
  if (typed.trim() === '') return { kind: 'empty' };
  const read = parseLength(typed, units === 'mm' ? 'mm' : 'in', { negative: signed });
  if (read.ok)
    return {
      kind: 'length',
      valueIn: read.value.inches,
      shown: `= ${showLength(read.value.inches, units, 64)}`,
    };
  const [first] = read.issues;
  return {
    kind: 'wrong',
    words: first ? `${issueSentence(first, units)} ${mendSentence(first, units)}`.trim() : 'Not a length.',
  };
};
