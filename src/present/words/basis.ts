import type { Basis, Figure } from '../../core/base/figure.ts';
import { assumedWords } from './assumptions.ts';
import { planRefs } from './planAssumptions.ts';
import { practiceRefs } from './practiceRefs.ts';
import { basisWords, holdWords } from './record.ts';

/** The reference of a basis in words: a record of the job says that it is one, practice and holds are spelled out. */
export const refWords = ({ kind, ref }: Basis): string => {
  if (kind === 'practice') return practiceRefs[ref] ?? (ref.includes(' ') ? ref : ref.replace(/-/g, ' '));
  if (Object.hasOwn(planRefs, ref)) return planRefs[ref]!;
  const words = ref.replace(/\b\w+$/, (last) =>
    Object.hasOwn(holdWords, last) ? `(${holdWords[last as keyof typeof holdWords]})` : last,
  );
  return kind === 'manual' || kind === 'measured' ? `record ${words}` : words;
};

/** What a number rests on: "drawing: sheet 4, view B"; the user's own data and readings by their record. */
export const basisLine = (basis: Basis): string =>
  basis.ref === '' ? basisWords[basis.kind] : `${basisWords[basis.kind]}: ${refWords(basis)}`;

/** Basis and assumptions of a figure in one line. */
export const restsOn = (figure: Pick<Figure, 'basis' | 'assumed'>): string =>
  figure.assumed.length === 0
    ? basisLine(figure.basis)
    : `${basisLine(figure.basis)}; assumed: ${figure.assumed.map(assumedWords).join('; ')}`;

const isFigure = (thing: object): thing is Figure =>
  'value' in thing && 'unit' in thing && 'basis' in thing && 'assumed' in thing;

/** What a basis was used for, and how often. */
export interface Rest {
  readonly basis: Basis;
  readonly count: number;
}

/** Every basis and every assumption that stands anywhere in a result, once each, in order of words. */
export const restsIn = (
  result: unknown,
): { readonly bases: readonly Rest[]; readonly assumed: readonly string[] } => {
  const bases = new Map<string, { basis: Basis; count: number }>();
  const assumed = new Set<string>();
  const walk = (thing: unknown): void => {
    if (Array.isArray(thing)) for (const item of thing) walk(item);
    else if (thing !== null && typeof thing === 'object' && !ArrayBuffer.isView(thing)) {
      if (isFigure(thing)) {
        const key = `${thing.basis.kind}\n${thing.basis.ref}`;
        const seen = bases.get(key);
        if (seen) seen.count++;
        else bases.set(key, { basis: thing.basis, count: 1 });
        for (const words of thing.assumed) assumed.add(assumedWords(words));
      } else for (const item of Object.values(thing)) walk(item);
    }
  };
  walk(result);
  return {
    bases: [...bases.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, rest]) => rest),
    assumed: [...assumed].sort(),
  };
};
