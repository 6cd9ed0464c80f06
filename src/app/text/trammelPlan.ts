import type { MeasuringPlan } from '../../core/trammel/result.ts';

/** Captions of the measuring plan. */
export const measuringPlanText = {
  title: (hold: string | undefined, left: number, all: number) =>
    `Measuring plan${hold === undefined ? '' : `, ${hold}`}: ${left} of ${all} still to read`,
  datum: {
    named: 'named by you',
    noFinding: 'the largest group without a finding',
    noBend: 'the largest group without a bend or break',
    forwardStations: 'the forward station: nothing is found yet',
    none: 'none: no sound group spans a plane',
  } satisfies Record<MeasuringPlan['datumBy'], string>,
  covers: (bays: string, clusters: number, datum: string, fix: number) =>
    `Bays ${bays}. Measured from ${clusters} clusters taken as undamaged (${datum}). ${fix} fix the shape, the rest let a misreading show.`,
  leastSure: (length: string) =>
    ` Read in full, the least sure cluster is placed to ± ${length}, one standard deviation.`,
  unchecked: (count: number) => `In ${count} of them a misreading would hardly show: read those twice.`,
  loose: (clusters: string) => `The lines in reach cannot fix ${clusters}.`,
  fixed: 'Fixed by the readings so far',
  fixedBy: { all: 'In all directions', some: 'In some directions', none: 'Not at all' },
  showsNothing: 'shows no misreading',
  shows: (length: string) => `shows a misreading of ${length}`,
  strike: 'Strike',
  strikeNamed: (target: string) => `Strike ${target}`,
  struck: 'Struck',
  putBack: 'Put back',
  nothingRead: 'Nothing is read yet.',
} as const;
