import type { FitUp, Method } from '../../core/splice/result.ts';
import { fitUpWords, methodNames } from './splice.ts';

/** The step of one row of a fit-up card: `fitUp:MEMBER:METHOD:ROW:PART`. The closing row is `fitUp:MEMBER`. */
export const fitUpStep = (
  member: string,
  method: Method,
  { step, part }: Pick<FitUp, 'step' | 'part'>,
): string => ['fitUp', member, method, step, ...(part === undefined ? [] : [part])].join(':');

/** A row of a fit-up card in words, for the log of work; null for a step of another kind. */
export const fitUpStepWords = (step: string): string | null => {
  const [deed, member, method, row] = step.split(':');
  if (deed !== 'fitUp' || member === undefined) return null;
  if (row === undefined) return `Fit-up of ${member} looked over`;
  const name = Object.hasOwn(methodNames, method ?? '')
    ? methodNames[method as Method].toLowerCase()
    : method;
  const words = Object.hasOwn(fitUpWords, row) ? fitUpWords[row as FitUp['step']] : row;
  return `Fit-up of ${member}, ${name}: ${words}`;
};
