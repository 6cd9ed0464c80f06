/** Captions of what one tube carries, how clamped it is, and what a bent one has left. */
export const tubeForcesText = {
  title: (id: string) => `What ${id} carries`,
  row: (force: string, stress: string) => `${force}, ${stress}`,
  axial: 'Locked in by bends, along the tube',
  moment: 'Locked in by bends, end moment',
  stress: 'Locked in by bends, stress',
  basis: (heldAs: string) =>
    `Elastic sums on the truss as drawn, held ${heldAs}, from the load cases of the model. Stress is the largest on the tube from axial force and bending.`,
} as const;

export const tubeSumsText = {
  clamped: (id: string) => `How clamped ${id} is`,
  intoForce: 'Of a length error, turns into force',
  stability: 'Stability left when it is cut',
  movesFreely: 'none: moves freely',
  clampedBasis:
    'Redundancy share, from 0 (nothing else holds its length) to 100 % (completely clamped); the rest turns into shape. Of the truss as drawn, as it is held now.',
  leftOver: (id: string) => `Left-over strength of ${id} as it stands`,
  bow: 'Bow over the whole tube',
  straight: 'Straight, compression',
  firstYield: 'Bent, first yield',
  collapse: 'Bent, collapse estimate',
  ratio: 'Bent over straight',
  inCase: (name: string, force: string) => `${name}: ${force}`,
  shares: (ofBent: string, ofStraight: string) => `${ofBent} of bent, ${ofStraight} of straight`,
  leftBasis:
    'Arithmetic with its assumptions, one tap away at each figure. It says nothing of what is permitted.',
} as const;
