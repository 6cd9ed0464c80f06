import { describe, expect, it } from 'vitest';
import { assess } from '../../src/core/assess.ts';
import type { AdjustedCluster } from '../../src/core/trammel/adjustment.ts';
import { shapeTable } from '../../src/present/tables/trammel.ts';
import { demoJob } from './made.ts';

const job = demoJob();
const assessment = assess(job);
const rowOf = (cluster: Partial<AdjustedCluster>): readonly (string | undefined)[] => {
  const adjustment = assessment.trammel.byHold.beforeCutting!;
  const one: AdjustedCluster = { ...adjustment.clusters[0]!, ...cluster };
  const trammel = {
    ...assessment.trammel,
    byHold: { beforeCutting: { ...adjustment, clusters: [one] } },
  };
  const table = shapeTable({ job, assessment: { ...assessment, trammel }, units: 'inDecimal' });
  return ['x', 'y', 'z'].map((id) => {
    const { text, raw } = table.rows[0]!.cells[table.columns.findIndex((c) => c.id === id)]!;
    return text === 'not fixed' ? (raw === null ? text : `${raw}`) : text;
  });
};

describe('the shape from the readings', () => {
  it('gives no figure along an axis that a direction left free has a share in', () => {
    const covariance = [0, 0, 0, 0, 0, 0, 0, 0, 1e-4];
    const some = { moveIn: [0, 0, 0.1], covariance, fixedBy: 'some' } as const;
    const sure = '0.100 ± 0.010';
    expect(
      rowOf({
        ...some,
        free: [
          [1, 0, 0],
          [0, 1, 0],
        ],
      }),
    ).toEqual(['not fixed', 'not fixed', sure]);
    expect(rowOf({ ...some, free: [[0.6, 0.8, 0]] })).toEqual(['not fixed', 'not fixed', sure]);
    expect(rowOf({ ...some, free: [[0, 1, 0]] })).toEqual(['0.000 ± 0.000', 'not fixed', sure]);
    expect(rowOf({ ...some, fixedBy: 'all', free: [] })[2]).toBe(sure);
  });
});
