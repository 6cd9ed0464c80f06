import type { Method } from '../../core/splice/result.ts';

/** The ways of repair as the shop says them. */
export const methodWords = {
  innerSleeve: 'Inner-sleeve splice',
  outerSleeve: 'Outer-sleeve splice',
  largerTube: 'Larger-diameter tube',
  splitSleeve: 'Split sleeve',
  patch: 'Welded patch',
  fullMember: 'Whole member, ends coped',
} as const satisfies Record<Method, string>;
