/** Captions of one place of ram and blocks. */
export const setUpText = {
  drawing: (name: string, ram: string, blocks: readonly [string, string], from: string) =>
    `${name}: ram at ${ram}, blocks at ${blocks[0]} and ${blocks[1]} from ${from}`,
  caution: 'CAUTION',
  ramSide: 'Ram’s side: on the crown',
  blocksApart: 'Blocks apart',
  press: 'Press, low end first',
  clamp: 'Clamp force to expect',
  springsBack: 'Springs back',
  stays: 'Stays',
  takesOff: 'Takes off the bow',
  leavesNothing: 'Leaves nothing up to',
  mostSet: 'Most set before a hinge',
  flatPad: 'Shortest flat pad',
  bearing: 'Bearing on grooved pads',
} as const;
