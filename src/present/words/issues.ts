import type { Fact, Issue } from '../../core/base/issue.ts';
import { showLength, type Units } from '../show.ts';
import { issueSentences } from './issueSentences.ts';
import { mendSentences } from './mendSentences.ts';
import { holdWords } from './record.ts';

/** A fact as text: lists read as lists, numbers without a tail. */
export const factText = (fact: Fact | undefined): string => {
  if (fact === undefined || fact === null) return 'nothing';
  if (typeof fact === 'number') return String(Math.round(fact * 1e4) / 1e4);
  if (typeof fact === 'boolean') return fact ? 'yes' : 'no';
  return typeof fact === 'string'
    ? fact
    : fact.length === 0
      ? 'none'
      : fact.map((item) => factText(item)).join(', ');
};

/** Kebab-case or camelCase to words: `drawing-off-station` → "Drawing off station". */
export const spelled = (code: string): string => {
  const words = code
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/-/g, ' ')
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
};

/** A fact in its place: a length in the user's units, anything else as it is; one that was not given leaves nothing. */
const fill = (sentence: string, facts: Issue['facts'], units: Units): string =>
  sentence.replace(/\{(\w+)(\|length)?\}/g, (_, name: string, length?: string) => {
    const fact = facts[name];
    if (fact === undefined) return '';
    const isLength = length !== undefined || name.endsWith('In');
    return isLength && typeof fact === 'number' ? showLength(fact, units) : nameless(fact);
  });

/** What of a JSON text is missing, as the reader names it. */
const jsonParts: Readonly<Record<string, string>> = {
  commaOrClose: 'a comma or a closing bracket',
};

/** Holds and the like are camelCase names in facts; a person reads words. */
const nameless = (fact: Fact): string => {
  const text = factText(fact);
  const words: Readonly<Record<string, string>> = { ...holdWords, ...jsonParts };
  return Object.hasOwn(words, text) ? words[text]! : text;
};

/** What is wrong, in one sentence. A code without a sentence of its own is spelled, with its facts behind it. */
export const issueSentence = (issue: Pick<Issue, 'code' | 'facts'>, units: Units = 'inFraction'): string => {
  const sentence = Object.hasOwn(issueSentences, issue.code) ? issueSentences[issue.code] : undefined;
  if (sentence !== undefined) return fill(sentence, issue.facts, units);
  const facts = Object.entries(issue.facts).map(
    ([name, fact]) => `${spelled(name).toLowerCase()} ${factText(fact)}`,
  );
  return facts.length === 0 ? `${spelled(issue.code)}.` : `${spelled(issue.code)}: ${facts.join(', ')}.`;
};

/** What to do about it, in one sentence; empty when the issue asks for nothing. Says which id was most likely meant. */
export const mendSentence = (issue: Pick<Issue, 'mend' | 'facts'>, units: Units = 'inFraction'): string => {
  if (issue.mend === '') return '';
  const sentence = Object.hasOwn(mendSentences, issue.mend) ? mendSentences[issue.mend] : undefined;
  const words = sentence === undefined ? `${spelled(issue.mend)}.` : fill(sentence, issue.facts, units);
  return typeof issue.facts.meant === 'string' ? `${words} ${issue.facts.meant} was meant?` : words;
};

/** Where in the document, for a person: `records[id=r12].lengthIn` → "record r12, length in"; `stations[3]` → "station 4". */
export const placeWords = (at: string): string =>
  at === ''
    ? 'the whole'
    : at
        .replace(/([a-z])In\b/g, '$1')
        .replace(/\[(?:\w+=)?([^\]]+)\]/g, (_, key: string) =>
          /^\d+$/.test(key) ? ` ${Number(key) + 1}` : ` ${nameless(key)}`,
        )
        .replace(/\b(record|station|member|cluster|distance|setup|end)s (?=\S)/g, '$1 ')
        .replace(/\b(loadCase)s (?=\S)/g, 'load case ')
        .replace(/\./g, ', ')
        .replace(/([a-z])([A-Z])(?=[a-z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
