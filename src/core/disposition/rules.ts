import type { Unit } from '../base/figure.ts';
import type { ShareOf } from '../base/row.ts';
import { damageLimits } from '../walkRound/limits.ts';

/** A rule as its source has it, with the number in it when there is one. */
export interface RuleRow {
  readonly id: string;
  /** What it says, in plain words. */
  readonly says: string;
  readonly value?: number;
  readonly unit?: Unit;
  readonly shareOf?: ShareOf;
  /** Document; or `common practice, no source`; or `no published limit`. */
  readonly source: string;
  /** Paragraph, table or page in it; what was searched when nothing was found. */
  readonly place: string;
}

const AC = 'FAA AC 43.13-1B with CHG 1 (1998/2001)';
const PRACTICE = 'common practice, no source';

const ac = (id: string, place: string, says: string): RuleRow => ({ id, says, source: AC, place });
const ofDiameter = (row: RuleRow, value: number): RuleRow => ({
  ...row,
  value,
  unit: '1',
  shareOf: 'outsideDiameter',
});
const practice = (id: string, says: string): RuleRow => ({ id, says, source: PRACTICE, place: '' });

const own: readonly RuleRow[] = [
  // Bends, ovals and what may not be kept.
  ac(
    'straighten-then-sleeve',
    '4-91d',
    'a bend in a bay is carefully straightened, then reinforced with a split sleeve: no permission to straighten and leave it at that',
  ),
  ac('no-crack-kept', '4-79, 4-91d', 'a crack may not stay: stop-drilled and sleeved in a bay, or cut out'),
  practice(
    'inspect-before-straightening',
    'a bend is looked at closely for cracks, finish off, before it is straightened',
  ),
  practice(
    'kink-cut-out',
    'a sharp kink, a ripple in the wall or a necked tube is cut out, not straightened',
  ),
  practice(
    'flattening-is-dent',
    'an oval (flattened) stretch is judged as a dent; rounding out alone has no published permission',
  ),
  ac('nothing-to-straighten', '4-91d', 'straightening answers a bend; none is recorded'),
  ac('nothing-to-round-out', '4-94a(3)', 'rounding out answers a flattened or dented tube; none is recorded'),
  ac(
    'no-filling',
    '4-92, 4-81',
    'no dent or crack is filled with weld, solder or braze, and no weld ground for looks',
  ),

  // Welded patch.
  ac(
    'patch-of-dents-and-holes',
    '4-94',
    'a welded patch is for a small dent or hole; it leaves any other damage as it is',
  ),
  ac('patch-no-crack', '4-94a', 'a dent with a crack, abrasion or sharp corner is not patched'),
  ac(
    'patch-reform',
    '4-94a(3)',
    'the dent is mostly pushed back to shape, without cracking, before it is patched',
  ),
  ac(
    'patch-gauge',
    '4-94a',
    'patch of the same material, one gauge thicker; its overlap is only in figure 4-36: see the figure',
  ),
  practice('dents-side-by-side', 'dents or holes nearer to one another than 1.5 diameters are judged as one'),

  // Split sleeve.
  ac('split-sleeve', '4-91d, 4-92', 'a dent, bend or crack in a bay: straighten, stop-drill, split sleeve'),
  ofDiameter(
    ac(
      'split-sleeve-reach',
      '4-92',
      'nearest end of the sleeve from the edge of the dent or crack, in diameters of the tube',
    ),
    1.5,
  ),
  {
    ...ac('sleeve-ends', '4-92', 'ends of the split sleeve cut at an angle to the axis'),
    value: 30,
    unit: 'deg',
  },
  ac(
    'sleeve-not-through',
    '4-92',
    'a tube that is parted is spliced; a split sleeve reinforces one that is not',
  ),

  // Splices and replacement.
  ac(
    'splice',
    '4-95, 4-96, 4-97',
    'the damaged part is cut out and a section spliced in; inner sleeve recommended',
  ),
  ofDiameter(
    ac(
      'inner-sleeve-reach',
      '4-95',
      'inner sleeve past the nearest end of the diagonal cut, in diameters of the tube',
    ),
    1.5,
  ),
  ofDiameter(
    ac('outer-sleeve-reach', '4-96', 'nearest end of the outer sleeve from the square cut, in diameters'),
    1.5,
  ),
  ofDiameter(
    ac('larger-short-stub', '4-97', 'short stub left for a larger-diameter replacement tube, in diameters'),
    2.5,
  ),
  ofDiameter(
    ac('larger-long-stub', '4-97', 'long stub left for a larger-diameter replacement tube, in diameters'),
    4.5,
  ),
  ac('splice-anywhere', '4-91b', 'a splice may be made anywhere along a tube unless something else is said'),
  practice(
    'two-splices-or-whole',
    'a bay too short for two splices gets the tube replaced from cluster to cluster',
  ),
  ac('replace', '4-91, 4-95', 'the member is cut out at both clusters and a new one welded in'),
  ac(
    'same-material',
    '4-76, 4-91',
    'same material, same outside diameter, wall not less: identified before welding',
  ),
  practice(
    'corroded-cut-out',
    'a tube rusted inside or through is cut out; both stubs are proven sound by ultrasonic thickness',
  ),

  // Clusters.
  ac(
    'finger-plate',
    '4-91c',
    'dents at a cluster get a welded finger plate, as thick as the heaviest tube damaged',
  ),
  ofDiameter(ac('finger-length', '4-91c', 'fingers of the plate, in diameters of each tube'), 1.5),
  practice(
    'at-cluster',
    'damage whose edge reaches the weld of a cluster is at the cluster; the text gives no distance',
  ),
  practice(
    'near-cluster',
    'within 1.5 diameters of a cluster weld: hold figure 4-36 against the tube, its overlap is not in the text',
  ),
  ac(
    'joint-rebuild',
    '4-103',
    'a bad or cracked joint: cut out and replaced by a gusseted one, or old weld chipped out and rewelded with inserts or gussets',
  ),
  practice(
    'joint-crushed',
    'a cracked cluster, or a tube crushed, necked or parted at it, is cut out and rebuilt',
  ),
  ac('no-weld-over-weld', '4-81', 'old weld is taken out first: never weld over weld or over brazing'),
  ac(
    'fitting-there',
    '4-60a, 4-98',
    'a fitting sits here: look for tears, kinks and long holes; its own figure shows the repair',
  ),
  ac('not-in-a-bay', '4-91c, 4-91d', 'this repair is for damage in a bay; at a cluster other rules hold'),
  ac('not-at-a-cluster', '4-91c, 4-103', 'this repair is for damage at a cluster'),

  // What closes the weld choices.
  ac(
    'scope-heatTreated',
    '4-85',
    'heat-treated tube: a rod that responds to heat treatment and re-heat-treatment to the maker’s specification, else no weld',
  ),
  ac('scope-brazed', '4-81, 4-89', 'brazed or soldered parts are not welded'),
  ac('scope-coldWorked', '4-89', 'parts whose strength comes from cold working are not welded'),
  ac(
    'scope-engineMountRing',
    '4-99',
    'an engine-mount ring with more than small damage is repaired only by the method of the maker or of data that the authority recognises',
  ),
  ac('scope-axle', '4-102d', 'machined, heat-treated axle and oleo parts are replaced, not welded'),
  ac(
    'scope-streamline',
    '4-99, 4-102, figures 4-42 to 4-45',
    'streamline tube has its own figures, not loaded here',
  ),
  ac(
    'scope-unknownMaterial',
    '4-76',
    'the material is found out from the maker or by analysis before welding',
  ),
  practice('scope-otherScope', 'the user has put this part outside the general rules'),
  ac('heat-forbidden', '4-85, 4-89', 'no heat on heat-treated or cold-worked parts'),

  // When nothing is published, and when it is someone else’s to say.
  ac(
    'refer',
    'cover, 1a to 1c',
    'the general rules hold only where the maker gives no instruction and does not contradict',
  ),
  practice('judged-together', 'every finding on a member counts: this repair would leave one as it is'),
  practice('nothing-found', 'no damage is recorded here'),
  practice('damage-in-words', 'damage described in words only: no rule can be held against it'),
  {
    id: 'wall-no-rule',
    says: 'loss of wall: the maker’s limit, else an engineering decision',
    source: AC,
    place: '6-113, 6-167',
  },
  practice('manual', 'the user’s own data, which outranks the general rules'),
];

/** Every rule a disposition may quote; the published damage limits are those of the walk-round, once. */
export const rules: readonly RuleRow[] = [
  ...own,
  ...damageLimits.map(({ value, ...row }): RuleRow => (value === null ? row : { ...row, value })),
];

const byId: ReadonlyMap<string, RuleRow> = new Map(rules.map((r) => [r.id, r]));

/** The row with this id. Throws on an unknown one: that is our own mistake. */
export const ruleOf = (id: string): RuleRow => {
  const row = byId.get(id);
  if (!row) throw new Error(`no rule row ${id}`);
  return row;
};

/** The number in a row. Throws when it has none: that is our own mistake. */
export const numberOf = (id: string): number => {
  const { value } = ruleOf(id);
  if (value === undefined) throw new Error(`rule row ${id} has no number`);
  return value;
};
