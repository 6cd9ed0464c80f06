/** Why one step comes before another. The rule of the trade, and where it is written, if it is. */
export interface OrderRule {
  readonly id: string;
  readonly says: string;
  readonly source: string;
}

const practice = 'common practice, no source';
const ac = (place: string): string => `FAA AC 43.13-1B with CHG 1 (1998/2001), ${place}`;

export const orderRules = [
  {
    id: 'make-safe-first',
    says: 'Nothing is touched before the wreck is released and made harmless.',
    source: practice,
  },
  {
    id: 'support-first',
    says: 'The truss is held on sound clusters before it is stripped or measured.',
    source: practice,
  },
  { id: 'look-before-strip', says: 'Clean and look, then take the finish off.', source: ac('5-18') },
  {
    id: 'strip-before-inspect',
    says: 'Finish is off before penetrant or magnetic particle, and nothing is blasted or hard-buffed before it.',
    source: practice,
  },
  {
    id: 'inspect-before-marks',
    says: 'Marks are laid out on tubes that have been looked at.',
    source: practice,
  },
  {
    id: 'marks-before-baseline',
    says: 'Station points and centre lines are laid out before the baseline; re-laid marks start a new one.',
    source: practice,
  },
  {
    id: 'baseline-first',
    says: 'Baseline distances and a photo are recorded before anything is cut, released or bent.',
    source: practice,
  },
  {
    id: 'measure-after-brace',
    says: 'A brace can pull: the distances must read as found with it in, before the cut.',
    source: practice,
  },
  { id: 'brace-before-cut', says: 'No cut before its brace.', source: ac('4-77') },
  { id: 'release-before-saw', says: 'What can be let go without a saw is let go first.', source: practice },
  { id: 'measure-after-cut', says: 'The same distances are taken again after every cut.', source: practice },
  {
    id: 'relief-before-straightening',
    says: 'What holds a tube bent is let go before the tube is straightened.',
    source: practice,
  },
  { id: 'round-after-bend', says: 'A tube is rounded out after it is straight.', source: practice },
  { id: 'crack-check-after-bend', says: 'A tube bent back is looked at again for cracks.', source: practice },
  {
    id: 'straighten-before-replace',
    says: 'Straightening comes before replacing in its neighbourhood.',
    source: practice,
  },
  {
    id: 'finish-cuts-after-opening',
    says: 'Finish cuts follow the first cut and the distances after it.',
    source: practice,
  },
  {
    id: 'measure-before-spread',
    says: 'Distances are taken before spreading, so that what it moves is known.',
    source: practice,
  },
  {
    id: 'spread-before-fitting',
    says: 'The opening is spread to its distance before the section is made.',
    source: practice,
  },
  {
    id: 'measure-after-spread',
    says: 'Spreading one distance moves others: measured again.',
    source: practice,
  },
  {
    id: 'opening-before-section',
    says: 'The section is cut to the opening measured, not to the drawing.',
    source: practice,
  },
  { id: 'parts-before-drill', says: 'Rosettes are drilled in made parts and deburred.', source: practice },
  {
    id: 'fit-before-tack',
    says: 'A dry fit comes before the torch; sleeves are on their tubes.',
    source: practice,
  },
  {
    id: 'fire-before-torch',
    says: 'Fire precautions stand, vents are open and the return clamp is beside the weld before the torch is lit.',
    source: ac('4-112 to 4-114'),
  },
  { id: 'measure-before-tack', says: 'The distances are right before they are tacked.', source: practice },
  {
    id: 'fit-up-seen-before-tack',
    says: 'Gap, overlap and marks are seen by a second person before tacking: they cannot be seen after.',
    source: practice,
  },
  { id: 'measure-tacks-before-weld', says: 'Tacks are measured before they are welded.', source: practice },
  { id: 'cool-between-ends', says: 'One end cools before the other is welded.', source: ac('4-96, 4-97') },
  {
    id: 'one-open-at-a-cluster',
    says: 'No second tube is opened at a cluster unless a brace or fixture holds it.',
    source: practice,
  },
  { id: 'measure-after-weld', says: 'Measured again when welded and cool.', source: practice },
  {
    id: 'clean-before-inspect',
    says: 'Welds are cleaned, not dressed, before they are inspected.',
    source: ac('4-78'),
  },
  {
    id: 'hold-until-welded',
    says: 'A brace stays until what it holds is welded and cool.',
    source: practice,
  },
  {
    id: 'refit-after-welds',
    says: 'What was let go goes back when the work it made room for is done.',
    source: practice,
  },
  {
    id: 'as-left-last',
    says: 'The whole truss is measured as left when nothing more will move it.',
    source: practice,
  },
  {
    id: 'as-left-before-protection',
    says: 'As-left distances and weld inspection come before protection and cover.',
    source: practice,
  },
  {
    id: 'protect-before-closing',
    says: 'The inside is protected and dry before its holes are closed.',
    source: ac('6-42'),
  },
  {
    id: 'weight-last',
    says: 'Weight and balance are decided when all that was added is on.',
    source: practice,
  },
  {
    id: 'state-stands',
    says: 'The truss with the tubes open at this step must stand and keep its sag under the limit.',
    source: 'computed: stiffness of the frame without the open tubes',
  },
] as const satisfies readonly OrderRule[];

export type RuleId = (typeof orderRules)[number]['id'];
