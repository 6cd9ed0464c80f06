/** A subject area of a published syllabus and how deep it was taught. No exercise gives credit for one. */
export interface Area {
  readonly id: string;
  readonly says: string;
  /** 1 know, 2 practise, 3 to return-to-service standard. */
  readonly level: 1 | 2 | 3;
  readonly source: string;
}

const source = 'former 14 CFR part 147 (until 2022), appendix B; levels as in appendix A';

export const areas = [
  { id: 'fabricate', says: 'Fabricate tubular structures', level: 1, source },
  { id: 'weld', says: 'Solder, braze, gas-weld and arc-weld steel', level: 2, source },
  { id: 'alignment', says: 'Check alignment of structures', level: 2, source },
  { id: 'welds', says: 'Inspect and check welds', level: 3, source },
  { id: 'measure', says: 'Precision measurement', level: 3, source },
  { id: 'sketch', says: 'Draw sketches of repairs', level: 3, source },
  { id: 'records', says: 'Write records of work done', level: 3, source },
] as const satisfies readonly Area[];
export type AreaId = (typeof areas)[number]['id'];

export const exerciseKinds = ['layout', 'hidden', 'trammel', 'plan', 'coupon'] as const;
export type ExerciseKind = (typeof exerciseKinds)[number];

/** Which areas an exercise touches. */
export const areasOf = {
  layout: ['fabricate', 'sketch'],
  hidden: ['welds', 'measure', 'records'],
  trammel: ['alignment', 'measure'],
  plan: ['fabricate', 'weld'],
  coupon: ['fabricate', 'weld', 'sketch'],
} as const satisfies Record<ExerciseKind, readonly AreaId[]>;
