import { nearestFraction, parseLength } from '../../core/base/lengthText.ts';
import { inToMm } from '../../core/base/units.ts';
import type { Model, Tube } from '../../core/job/modelSchema.ts';
import { fixed } from '../../present/show.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { modelFieldText } from '../text/modelFields.ts';

type DrawnIn = Model['drawnIn'];

const bare = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** A length as the drawing would write it: a fraction when it is one to 1/64, else decimals; millimetres to 0.01. */
export const asDrawn = (valueIn: number | undefined, drawnIn: DrawnIn): string => {
  if (valueIn === undefined) return '';
  if (drawnIn === 'mm') return bare(fixed(inToMm(valueIn), 2));
  const near = nearestFraction(valueIn, 64);
  return Math.abs(near.restIn) < 1e-9 ? near.text : bare(fixed(valueIn, 4));
};

export type ReadLength =
  | { readonly kind: 'empty' }
  | { readonly kind: 'length'; readonly valueIn: number }
  | { readonly kind: 'wrong'; readonly words: string };

/** What was typed, in the unit of the drawing unless it names its own. */
export const readDrawn = (typed: string, drawnIn: DrawnIn, negative = true): ReadLength => {
  if (typed.trim() === '') return { kind: 'empty' };
  const read = parseLength(typed, drawnIn, { negative });
  if (read.ok) return { kind: 'length', valueIn: read.value.inches };
  const [first] = read.issues;
  return {
    kind: 'wrong',
    words: first ? `${issueSentence(first)} ${mendSentence(first)}`.trim() : modelFieldText.noLength,
  };
};

/** `3/4 × .035`, `19.05 × 0.89`. */
export const tubeAsDrawn = (tube: Tube | undefined, drawnIn: DrawnIn): string =>
  tube === undefined
    ? ''
    : drawnIn === 'mm'
      ? `${asDrawn(tube.odIn, 'mm')} × ${bare(fixed(inToMm(tube.wallIn), 2))}`
      : `${asDrawn(tube.odIn, 'in')} × ${bare(fixed(tube.wallIn, 4)).replace(/^0/, '')}`;

export type ReadTube =
  | { readonly kind: 'empty' }
  | { readonly kind: 'tube'; readonly tube: Tube }
  | { readonly kind: 'wrong'; readonly words: string };

/** A size as `3/4 x .035`: outside diameter, then wall. */
export const readTube = (typed: string, drawnIn: DrawnIn): ReadTube => {
  if (typed.trim() === '') return { kind: 'empty' };
  const [od, wall, ...more] = typed.split(/\s*[x×*]\s*/i);
  if (od === undefined || wall === undefined || more.length > 0)
    return { kind: 'wrong', words: modelFieldText.tubeForm };
  const [a, b] = [readDrawn(od, drawnIn, false), readDrawn(wall, drawnIn, false)];
  if (a.kind === 'wrong') return a;
  if (b.kind === 'wrong') return b;
  if (a.kind === 'empty' || b.kind === 'empty') return { kind: 'wrong', words: modelFieldText.tubeForm };
  if (a.valueIn <= 0 || b.valueIn <= 0) return { kind: 'wrong', words: modelFieldText.tubeEmpty };
  if (b.valueIn > a.valueIn / 2) return { kind: 'wrong', words: modelFieldText.wallTooThick };
  return { kind: 'tube', tube: { odIn: a.valueIn, wallIn: b.valueIn } };
};
