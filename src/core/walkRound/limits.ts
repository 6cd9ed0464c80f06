import type { LimitRow } from '../base/row.ts';

const AC = 'FAA AC 43.13-1B with CHG 1 (1998/2001)';
const searched = 'AC 43.13-1B, paragraphs 4-91 to 4-97';

/**
 * Published limits for damage to welded steel fuselage tubes. The patch limits say what may be repaired by a welded
 * patch; none says that a dent may be left. The maker's own data outranks every row.
 */
export const damageLimits: readonly LimitRow[] = [
  {
    id: 'patch-dent-depth',
    says: 'deepest dent that may be repaired by a welded patch',
    value: 0.1,
    unit: '1',
    shareOf: 'outsideDiameter',
    source: AC,
    place: '4-94a',
  },
  {
    id: 'patch-dent-around',
    says: 'widest dent that may be repaired by a welded patch',
    value: 0.25,
    unit: '1',
    shareOf: 'circumference',
    source: AC,
    place: '4-94a',
  },
  {
    id: 'patch-dent-length',
    says: 'longest dent that may be repaired by a welded patch',
    value: 1,
    unit: '1',
    shareOf: 'outsideDiameter',
    source: AC,
    place: '4-94a',
  },
  {
    id: 'patch-hole-around',
    says: 'widest hole that may be repaired by a welded patch',
    value: 0.25,
    unit: '1',
    shareOf: 'circumference',
    source: AC,
    place: '4-94b',
  },
  {
    id: 'patch-hole-length',
    says: 'longest hole that may be repaired by a welded patch',
    value: 1,
    unit: '1',
    shareOf: 'outsideDiameter',
    source: AC,
    place: '4-94b',
  },
  {
    id: 'stop-hole',
    says: 'hole drilled at each end of a crack before a split sleeve: No. 40',
    value: 0.098,
    unit: 'in',
    source: AC,
    place: '4-91d',
  },
  {
    id: 'dent-left',
    says: 'dent that may be left as it is',
    value: null,
    source: 'no published limit',
    place: searched,
  },
  {
    id: 'bow',
    says: 'bow that may be left as it is',
    value: null,
    source: 'no published limit',
    place: searched,
  },
  {
    id: 'oval',
    says: 'ovality that may be left as it is',
    value: null,
    source: 'no published limit',
    place: searched,
  },
  {
    id: 'wall',
    says: 'loss of wall that may be left as it is',
    value: null,
    source: 'no published limit',
    place: 'AC 43.13-1B, paragraphs 6-113 and 6-167: the maker’s limit, else an engineering decision',
  },
];
