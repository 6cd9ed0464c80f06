import type { Model } from '../../../src/core/job/modelSchema.ts';

/** A plain box of the stations and words given; 20 in bays, 20 wide and high, everything 3/4 × .035. */
export const box = (bracing: Model['bracing'], change: Partial<Model> = {}, bays = 2): Model => {
  const tube = { odIn: 0.75, wallIn: 0.035 };
  return {
    format: 'tubewright-model',
    version: 1,
    name: 'Box',
    source: 'Invented.',
    datum: 'Invented.',
    drawnIn: 'in',
    joints: 'welded',
    stations: Array.from({ length: bays + 1 }, (_, k) => ({
      label: `${k + 1}`,
      stationIn: 20 * k,
      upper: { waterLineIn: 20, halfWidthIn: 10 },
      lower: { waterLineIn: 0, halfWidthIn: 10 },
    })),
    bracing,
    tubes: {
      material: '4130N',
      roles: {
        upperLongeron: tube,
        lowerLongeron: tube,
        vertical: tube,
        crossMember: tube,
        sideDiagonal: tube,
        topDiagonal: tube,
        bottomDiagonal: tube,
        ringDiagonal: tube,
        other: tube,
      },
      overrides: [],
    },
    clusters: [],
    members: [],
    setups: [],
    loadCases: [],
    distances: [],
    ...change,
  };
};
