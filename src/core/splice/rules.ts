import {
  numberOf as dispositionNumber,
  ruleOf as dispositionRule,
  type RuleRow,
} from '../disposition/rules.ts';

const AC = 'FAA AC 43.13-1B with CHG 1 (1998/2001)';
const PRACTICE = 'common practice, no source';

const ac = (id: string, place: string, says: string): RuleRow => ({ id, says, source: AC, place });
const practice = (id: string, says: string): RuleRow => ({ id, says, source: PRACTICE, place: '' });
const inches = (row: RuleRow, value: number): RuleRow => ({ ...row, value, unit: 'in' });
const ofDiameter = (row: RuleRow, value: number): RuleRow => ({
  ...row,
  value,
  unit: '1',
  shareOf: 'outsideDiameter',
});

/** Rows of the disposition that a splice rests on as well: one number, one row. */
const shared = [
  'split-sleeve-reach',
  'sleeve-ends',
  'sleeve-not-through',
  'inner-sleeve-reach',
  'outer-sleeve-reach',
  'larger-short-stub',
  'larger-long-stub',
  'splice-anywhere',
  'two-splices-or-whole',
  'same-material',
  'patch-gauge',
  'patch-no-crack',
  'patch-of-dents-and-holes',
  'patch-dent-depth',
  'patch-dent-around',
  'patch-dent-length',
  'stop-hole',
] as const;

/** Rules and numbers of the repairs themselves, each with its source. */
export const spliceRules: readonly RuleRow[] = [
  ...shared.map(dispositionRule),
  // Sleeves and section tube.
  inches(ac('sleeve-slack', '4-95 to 4-97', 'most difference on diameter between sleeve and tube'), 1 / 16),
  practice('split-slack', '4-92 gives no figure for the slack of a split sleeve; that of 4-96 is used'),
  ac('sleeve-wall', '4-92, 4-95 to 4-97', 'wall of sleeve and new tube not below that of the old tube'),
  ac('same-diameter', '4-95, 4-96', 'the new section has the outside diameter of the old tube'),
  practice('sleeve-table', 'the user’s own sleeve table, which outranks the general rule'),
  inches(
    practice(
      'mill-tolerance',
      'slack below this lies inside mill tolerance: it slides, binds or refuses; try it',
    ),
    0.01,
  ),
  practice('stock', 'sizes of the stock list; availability is the user’s to say'),
  // Inner sleeve.
  {
    ...practice(
      'diagonal-cut',
      'diagonal cut to the tube’s axis, on reverse angles; not in the text of 4-95',
    ),
    value: 30,
    unit: 'deg',
  },
  inches(ac('inner-gap', '4-95a', 'gap for welding at each end of the new section'), 1 / 8),
  practice('gap-along', 'the gap of 4-95 has no stated direction: taken along the tube'),
  practice('sleeves-apart', 'two sleeves do not meet inside, or on, the section between them'),
  // Outer sleeve and larger tube.
  inches(
    ac('outer-bearing', '4-96a', 'the section bears on the stubs: most gap, both ends together'),
    1 / 32,
  ),
  ac('fishmouth', '4-96, 4-97', 'sleeve ends diagonal or fishmouth, fishmouth wherever possible'),
  ofDiameter(
    ac('larger-reach', '4-97', 'nearest end of the larger tube from the end of the stub, in diameters'),
    1.5,
  ),
  ac('one-end-at-a-time', '4-96, 4-97', 'one end welded and left to cool before the other'),
  // Rosettes.
  ofDiameter(ac('rosette-hole', '4-84', 'rosette hole, in diameters of the outer tube'), 1 / 4),
  ofDiameter(
    ac('rosette-edge', '4-84', 'edge of the hole to the end of inner and outer tube, in diameters, at least'),
    1 / 2,
  ),
  inches(ac('rosette-bleed', '4-84', 'hole in the inner tube under the middle of the rosette'), 1 / 8),
  ac(
    'rosette-no-credit',
    '4-84',
    'rosettes add no strength to the sums and may be left out with tight sleeves',
  ),
  {
    ...practice('rosette-count', 'rosettes at each end of a sleeve: two pairs, a quarter turn apart'),
    value: 4,
    unit: 'count',
  },
  ofDiameter(practice('rosette-place', 'middle of a rosette from the nearest end, in diameters'), 3 / 4),
  // Room.
  practice('damage-cut-out', 'both cuts stand clear of all recorded damage'),
  practice(
    'run-back',
    'a sleeve runs back flush into the stub or section, or onto it, before the section goes in',
  ),
  inches(
    practice(
      'near-weld',
      'sleeve end nearer than this to a cluster’s weld or to another sleeve: little room for a bead',
    ),
    1 / 4,
  ),
  practice('opening-measured', 'the section is cut to the opening measured after spreading, not to this sum'),
  // Patch and whole member.
  ac('patch-overlap', '4-94, figure 4-36', 'overlap of the patch is only in the figure, which is not loaded'),
  ac('replace-whole', '4-91, 4-95', 'the whole member, its ends coped to the tubes it meets'),
  practice(
    'cope-order',
    'longerons run on; larger tubes are fitted before smaller ones, and those against them',
  ),
];

const byId: ReadonlyMap<string, RuleRow> = new Map(spliceRules.map((r) => [r.id, r]));

/** The row with this id. Throws on an unknown one: that is our own mistake. */
export const spliceRule = (id: string): RuleRow => {
  const row = byId.get(id);
  if (!row) throw new Error(`no splice rule ${id}`);
  return row;
};

/** The number in a row. Throws when it has none: that is our own mistake. */
export const spliceNumber = (id: string): number => {
  const { value } = spliceRule(id);
  return value ?? dispositionNumber(id);
};

/** A row as what a figure rests on. */
export const basisOf = (id: string): { kind: 'rule' | 'practice'; ref: string } => {
  const { source, place } = spliceRule(id);
  return source === PRACTICE ? { kind: 'practice', ref: id } : { kind: 'rule', ref: `${source}, ${place}` };
};
