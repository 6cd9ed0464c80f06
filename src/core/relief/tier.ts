import type { Choice } from '../job/jobSchema.ts';
import type { Mark } from '../walkRound/result.ts';

/** How ready a tube is to be cut, best first: the target itself if it is scrap, scrap, to be sleeved, hurt, sound. */
export const tiers = ['target', 'replace', 'sleeve', 'undecided', 'sound'] as const;
export type Tier = (typeof tiers)[number];

const tierOfChoice = {
  replace: 'replace',
  splice: 'replace',
  rebuild: 'replace',
  splitSleeve: 'sleeve',
  patch: 'undecided',
  fingerPlate: 'undecided',
  straighten: 'undecided',
  roundOut: 'undecided',
  refer: 'undecided',
} as const satisfies Record<Choice, Tier>;

/** The tier of a tube from its mark on the damage map. Hurt and not to be cut out counts as undecided. */
export const tierOf = (mark: Mark | undefined, isTarget: boolean): Tier => {
  if (!mark) return 'sound';
  const tier: Tier = mark.choice
    ? tierOfChoice[mark.choice]
    : mark.findings.length > 0
      ? 'undecided'
      : 'sound';
  return isTarget && tier === 'replace' ? 'target' : tier;
};
