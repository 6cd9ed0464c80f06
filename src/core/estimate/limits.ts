import type { LimitRow } from '../base/row.ts';

const AC = 'FAA AC 43.13-1B with CHG 1 (1998/2001)';

/** Empty weight under which the pound counts as the row says; above it the source has other numbers, which are not loaded. */
export const LIGHT_UNDER_LB = 5000;

/**
 * When a change is called negligible. Small changes add up, the type's own data come first, and a person entitled to it
 * decides: none of these says that weighing is not needed.
 */
export const weightLimits: readonly LimitRow[] = [
  {
    id: 'negligible-weight',
    says: 'change of empty weight called negligible on aircraft under 5,000 lb empty',
    value: 1,
    unit: 'lb',
    source: AC,
    place: '10-2c',
  },
  {
    id: 'negligible-shift',
    says: 'shift of the centre of gravity called negligible, in percent of the mean aerodynamic chord',
    value: 0.05,
    unit: '%',
    source: AC,
    place: '10-2c',
  },
];
