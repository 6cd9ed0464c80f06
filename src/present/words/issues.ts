import type { Fact, Issue } from '../../core/base/issue.ts';
import { issueSentences } from './issueSentences.ts';
import { mendSentences } from './mendSentences.ts';

/** A fact as text: lists read as lists, numbers without a tail. */
export const factText = (fact: Fact | undefined): string => {
  if (fact === undefined || fact === null) return 'nothing';
  if (typeof fact === 'number') return String(Math.round(fact * 1e4) / 1e4);
  if (typeof fact === 'boolean') return fact ? 'yes' : 'no';
  return typeof fact === 'string' ? fact : fact.map((item) => factText(item)).join(', ');
};

/** Kebab-case or camelCase to words: `drawing-off-station` → "Drawing off station". */
export const spelled = (code: string): string => {
  const words = code
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/-/g, ' ')
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
};

const fill = (sentence: string, facts: Issue['facts']): string =>
  sentence.replace(/\{(\w+)\}/g, (_, name: string) => factText(facts[name]));

/** What is wrong, in one sentence. A code without a sentence of its own is spelled, with its facts behind it. */
export const issueSentence = (issue: Pick<Issue, 'code' | 'facts'>): string => {
  const sentence = Object.hasOwn(issueSentences, issue.code) ? issueSentences[issue.code] : undefined;
  if (sentence !== undefined) return fill(sentence, issue.facts);
  const facts = Object.entries(issue.facts).map(
    ([name, fact]) => `${spelled(name).toLowerCase()} ${factText(fact)}`,
  );
  return facts.length === 0 ? `${spelled(issue.code)}.` : `${spelled(issue.code)}: ${facts.join(', ')}.`;
};

/** What to do about it, in one sentence; empty when the issue asks for nothing. */
export const mendSentence = (issue: Pick<Issue, 'mend' | 'facts'>): string => {
  if (issue.mend === '') return '';
  const sentence = Object.hasOwn(mendSentences, issue.mend) ? mendSentences[issue.mend] : undefined;
  return sentence === undefined ? `${spelled(issue.mend)}.` : fill(sentence, issue.facts);
};

/** Where in the document, for a person: `records[12].lengthIn` → "record 13, length in". */
export const placeWords = (at: string): string =>
  at === ''
    ? 'the whole'
    : at
        .replace(/(\w+?)s\[(\d+)\]/g, (_, list: string, k: string) => `${list} ${Number(k) + 1}`)
        .replace(/\[(\d+)\]/g, (_, k: string) => ` ${Number(k) + 1}`)
        .replace(/\./g, ', ')
        .replace(/([a-z])([A-Z])/g, '$1 $2')
        .toLowerCase();
