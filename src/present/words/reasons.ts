import type { NextRow, Reason } from '../../core/loadPath/result.ts';
import type { Suspect } from '../../core/lockedIn/result.ts';
import { showShare, showStress } from '../show.ts';
import { clusterWords, listWords } from './names.ts';

/** One reason to look at a member next, with its figure. */
export const reasonWords = (reason: Reason): string => {
  switch (reason.kind) {
    case 'sharesCluster':
      return `meets ${reason.with} at ${clusterWords(reason.cluster).toLowerCase()} (${reason.cluster})`;
    case 'nearCluster':
      return `${reason.hops} clusters away from ${reason.with}`;
    case 'samePath':
      if (reason.case === 'blow') return `carries the blow with ${reason.with} (${showShare(reason.share)})`;
      return reason.case === undefined
        ? `carries load with ${reason.with} (${showShare(reason.share)})`
        : `carries load with ${reason.with} in the case ${reason.case} (${showShare(reason.share)})`;
    case 'takesOver':
      return `takes over from ${reason.with} (${showShare(reason.share)} of what it sheds)`;
    case 'lockedIn':
      return `the bend of ${listWords(reason.from)} locks ${showStress(reason.stressPsi)} into it (${showShare(reason.share)} of what it can bear)`;
    case 'twin':
      return `opposite-hand twin of ${reason.with}`;
    case 'blow':
      return `the blow came in at ${clusterWords(reason.cluster).toLowerCase()} (${reason.cluster})`;
    default: {
      const never: never = reason;
      return never;
    }
  }
};

/** Reasons of a row in one sentence, largest first. `most`: after so many, of different kinds first, the rest is counted. */
export const reasonsLine = ({ reasons }: Pick<NextRow, 'reasons'>, most = reasons.length): string => {
  const firsts = reasons.filter((one, k) => reasons.findIndex(({ kind }) => kind === one.kind) === k);
  const said = [...firsts, ...reasons.filter((one) => !firsts.includes(one))].slice(0, most);
  const rest = reasons.length - said.length;
  const words = (rest > 0 ? said : reasons).map(reasonWords).join('; ');
  return rest > 0 ? `${words}; and ${rest} more` : words;
};

/** Why a member nobody has seen a bend in is suspected. */
export const suspectWords = (suspect: Suspect): string =>
  `${suspect.near === 'yield' ? 'near yield' : 'near column buckling'} by the bend of ${listWords(suspect.because)}: look for a bend, and measure it`;
