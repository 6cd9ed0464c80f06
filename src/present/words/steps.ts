import { fitUpStepWords } from './fitUp.ts';
import { holdWords } from './record.ts';

/** A step of the work in words: `hold:beforeTacking` → "Hold point before tacking"; `straighten:U3L-U4L` → "Straighten U3L-U4L". */
export const stepWords = (step: string): string => {
  const fitUp = fitUpStepWords(step);
  if (fitUp !== null) return fitUp;
  const [deed, what] = [step.replace(/:.*$/s, ''), step.replace(/^[^:]*:?/, '')];
  if (deed === 'hold' && Object.hasOwn(holdWords, what))
    return `Hold point ${holdWords[what as keyof typeof holdWords]}`;
  const words = deed.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${what === '' ? '' : ` ${what}`}`;
};
