import type { Vec3 } from '../../core/base/vec3.ts';
import { holds } from '../../core/job/jobSchema.ts';
import type { AdjustedCluster, Adjustment } from '../../core/trammel/adjustment.ts';
import { principal } from '../../core/trammel/sym3.ts';
import { fixed, lengthUnit } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { clusterWords } from '../words/names.ts';
import { holdWords } from '../words/record.ts';
import { rawLength, type Showing } from './showing.ts';

/** χ²(0.95) with three degrees of freedom. Source: any χ² table. */
const CHI_95 = 7.815;

const ways = ['aft', 'sideways', 'up'] as const;

/** The main way of an axis in words: `mostly aft`, `aft and up`. */
const wayWords = (axis: Vec3): string => {
  const order = [0, 1, 2].sort((a, b) => Math.abs(axis[b]!) - Math.abs(axis[a]!));
  const [first, second] = order as [0 | 1 | 2, 0 | 1 | 2];
  return Math.abs(axis[second]) > 0.4 ? `${ways[first]} and ${ways[second]}` : `mostly ${ways[first]}`;
};

interface Row {
  readonly adjustment: Adjustment;
  readonly cluster: AdjustedCluster;
  readonly halfAxes: readonly { readonly halfIn: number; readonly axis: Vec3 }[];
}

/** The space a cluster lies in with 95 %: three half-axes √(7.815 λ) of its covariance, largest first, and their ways. */
export const ellipsoidsTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const half = (k: 0 | 1 | 2, id: string, title: string): Column<Row> => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right',
    text: ({ halfAxes, cluster }) =>
      k < cluster.free.length
        ? 'not fixed'
        : fixed(rawLength(halfAxes[k - cluster.free.length]!.halfIn, units)!, units === 'mm' ? 1 : 3),
    raw: ({ halfAxes, cluster }) => rawLength(halfAxes[k - cluster.free.length]?.halfIn, units),
  });
  return tableOf<Row>(
    {
      name: 'error-ellipsoids',
      title: 'How surely each cluster is placed',
      note: 'Half-axes of the space that holds the cluster with 95 %, largest first.',
      empty: 'No hold has readings enough to place a cluster.',
      idOf: ({ cluster }) => cluster.id,
      columns: [
        { id: 'cluster', title: 'Id', text: ({ cluster }) => cluster.id },
        { id: 'words', title: 'In words', text: ({ cluster }) => clusterWords(cluster.id) },
        { id: 'hold', title: 'When', text: ({ adjustment }) => holdWords[adjustment.hold] },
        half(0, 'first', 'Largest'),
        half(1, 'second', 'Middle'),
        half(2, 'third', 'Smallest'),
        {
          id: 'way',
          title: 'Largest lies',
          text: ({ cluster, halfAxes }) => wayWords(cluster.free[0] ?? halfAxes[0]?.axis ?? [1, 0, 0]),
        },
      ],
    },
    holds.flatMap((hold) => {
      const adjustment = assessment.trammel.byHold[hold];
      return (adjustment?.clusters ?? []).map((cluster): Row => {
        const axes = principal(cluster.covariance).slice(0, 3 - cluster.free.length);
        return {
          adjustment: adjustment!,
          cluster,
          halfAxes: axes.map(({ value, axis }) => ({ halfIn: Math.sqrt(CHI_95 * Math.max(0, value)), axis })),
        };
      });
    }),
  );
};
