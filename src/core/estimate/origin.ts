import type { Coverage } from '../walkRound/result.ts';
import type { Origin } from './result.ts';

/** Whose damage a repair is for, from the findings on the member or cluster; none on it: unknown. */
export const originOf = (coverage: Coverage, id: string): Origin => {
  const found = new Set(coverage.findings.filter((f) => f.of === id).map((f) => f.origin));
  const [only] = found;
  return found.size > 1 ? 'both' : (only ?? 'unknown');
};
