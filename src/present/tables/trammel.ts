import { holds } from '../../core/job/jobSchema.ts';
import type { AdjustedCluster, Adjustment } from '../../core/trammel/adjustment.ts';
import type { Compared, Target } from '../../core/trammel/result.ts';
import { fixed, lengthUnit, showBareLength, showDifference, showFigure, showLength } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { restsOn } from '../words/basis.ts';
import { clusterWords } from '../words/names.ts';
import { distanceWords, holdWords, verdictMends, verdictWords } from '../words/record.ts';
import { distanceLine, inPairs, pairKey, twinKey } from './pairs.ts';
import { rawLength, type Showing } from './showing.ts';

/** The distances to hold, true lengths, left and right together, with the latest reading beside each. */
export const targetsTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const pairs = inPairs(assessment.trammel.targets);
  const byPair = new Map(pairs.map((target) => [pairKey(target.from, target.to), target]));
  const latest = (target: Target): Compared | undefined => target.compared[target.compared.length - 1];
  const twinDifference = (target: Target): number | null => {
    const twin = byPair.get(twinKey(target));
    const [a, b] = [latest(target), twin && twin !== target ? latest(twin) : undefined];
    return a && b && a.hold === b.hold ? a.foundIn.value - b.foundIn.value : null;
  };
  return tableOf<Target>(
    {
      name: 'trammel-targets',
      title: 'Trammel targets',
      note: 'True distances between tube axes at the clusters. Left and right of a pair stand together.',
      empty: 'The truss has no distances.',
      idOf: (target) => target.id,
      columns: [
        { id: 'distance', title: 'Distance', text: (target) => target.id },
        { id: 'words', title: 'In words', text: distanceLine },
        { id: 'kind', title: 'Kind', text: (target) => distanceWords[target.kind] },
        { id: 'bay', title: 'Bay', text: (target) => target.bay },
        {
          id: 'target',
          title: 'Target, true',
          unit: lengthUnit(units),
          align: 'right',
          text: (target) => showBareLength(target.targetIn.value, units),
          raw: (target) => rawLength(target.targetIn.value, units),
        },
        { id: 'basis', title: 'Rests on', text: (target) => restsOn(target.targetIn) },
        {
          id: 'tolerance',
          title: 'Limit',
          text: (target) =>
            target.toleranceIn ? `± ${showFigure(target.toleranceIn, units)}` : 'no limit loaded',
          raw: (target) => rawLength(target.toleranceIn?.value, units),
          csv: [
            {
              title: 'Limit ±',
              unit: lengthUnit(units),
              raw: (target) => rawLength(target.toleranceIn?.value, units),
            },
          ],
        },
        {
          id: 'found',
          title: 'Latest reading',
          unit: lengthUnit(units),
          align: 'right',
          text: (target) => {
            const c = latest(target);
            return c ? showBareLength(c.foundIn.value, units) : '';
          },
          raw: (target) => rawLength(latest(target)?.foundIn.value, units),
        },
        {
          id: 'twin',
          title: 'Less its twin',
          unit: lengthUnit(units),
          align: 'right',
          text: (target) => {
            const d = twinDifference(target);
            return d === null ? '' : fixed(rawLength(d, units)!, units === 'mm' ? 1 : 3);
          },
          raw: (target) => rawLength(twinDifference(target), units),
        },
      ],
    },
    pairs,
  );
};

interface ReadingRow {
  readonly target: Target;
  readonly compared: Compared;
}

/** Every measured distance against its target, at each hold, with its verdict and what to do about it. */
export const readingsTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const rows = inPairs(assessment.trammel.targets).flatMap((target) =>
    target.compared.map((compared) => ({ target, compared })),
  );
  return tableOf<ReadingRow>(
    {
      name: 'trammel-readings',
      title: 'Trammel readings against targets',
      note: 'Uncertainty is one standard deviation. No verdict stands where no limit is loaded.',
      empty: 'No reading is recorded.',
      idOf: (row) => row.target.id,
      columns: [
        { id: 'distance', title: 'Distance', text: (row) => row.target.id },
        { id: 'words', title: 'In words', text: (row) => distanceLine(row.target) },
        { id: 'hold', title: 'When', text: (row) => holdWords[row.compared.hold] },
        {
          id: 'target',
          title: 'Target',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => showBareLength(row.target.targetIn.value, units),
          raw: (row) => rawLength(row.target.targetIn.value, units),
        },
        {
          id: 'found',
          title: 'Found',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => showBareLength(row.compared.foundIn.value, units),
          raw: (row) => rawLength(row.compared.foundIn.value, units),
        },
        {
          id: 'std',
          title: 'Uncertainty ±',
          unit: lengthUnit(units),
          align: 'right',
          text: (row) => {
            const std = rawLength(row.compared.foundIn.std, units);
            return std === null ? 'not known' : fixed(std, units === 'mm' ? 1 : 3);
          },
          raw: (row) => rawLength(row.compared.foundIn.std, units),
        },
        {
          id: 'difference',
          title: 'Difference',
          text: (row) =>
            showDifference(row.compared.differenceIn.value, units, row.compared.verdict === 'outside'),
          raw: (row) => rawLength(row.compared.differenceIn.value, units),
          csv: [
            {
              title: 'Found less target',
              unit: lengthUnit(units),
              raw: (row) => rawLength(row.compared.differenceIn.value, units),
            },
          ],
        },
        {
          id: 'limit',
          title: 'Limit',
          text: (row) =>
            row.target.toleranceIn ? `± ${showFigure(row.target.toleranceIn, units)}` : 'none loaded',
          raw: (row) => rawLength(row.target.toleranceIn?.value, units),
          csv: [
            {
              title: 'Limit ±',
              unit: lengthUnit(units),
              raw: (row) => rawLength(row.target.toleranceIn?.value, units),
            },
          ],
        },
        { id: 'verdict', title: 'Answer', text: (row) => verdictWords[row.compared.verdict] },
        { id: 'mend', title: 'What to do', text: (row) => verdictMends[row.compared.verdict] },
        {
          id: 'scatter',
          title: 'Repeats differ by',
          text: (row) =>
            row.compared.scatterIn === undefined ? '' : showLength(row.compared.scatterIn, units, 64),
          raw: (row) => rawLength(row.compared.scatterIn, units),
          csv: [
            {
              title: 'Repeats differ by',
              unit: lengthUnit(units),
              raw: (row) => rawLength(row.compared.scatterIn, units),
            },
          ],
        },
      ],
    },
    rows,
  );
};

const movedWords = {
  moved: 'moved',
  notShown: 'no move shown',
  cannotTell: 'cannot tell',
} as const satisfies Record<AdjustedCluster['moved'], string>;

interface ShapeRow {
  readonly adjustment: Adjustment;
  readonly cluster: AdjustedCluster;
}

/** A direction left free that has any share along an axis leaves that axis unknown, whatever the others say of it. */
const knownAlong = ({ fixedBy, free }: AdjustedCluster, k: 0 | 1 | 2): boolean =>
  fixedBy === 'all' || free.every((way) => Math.abs(way[k]) < 1e-3);

/** Where the readings put each cluster, less where it is drawn, with its uncertainty. */
export const shapeTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const along = (k: 0 | 1 | 2, id: string, title: string) => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right' as const,
    text: ({ cluster }: ShapeRow) => {
      const std = Math.sqrt(Math.max(0, cluster.covariance[k * 4] ?? 0));
      const places = units === 'mm' ? 1 : 3;
      return knownAlong(cluster, k)
        ? `${fixed(rawLength(cluster.moveIn[k], units)!, places)} ± ${fixed(rawLength(std, units)!, places)}`
        : 'not fixed';
    },
    raw: ({ cluster }: ShapeRow) => (knownAlong(cluster, k) ? rawLength(cluster.moveIn[k], units) : null),
  });
  return tableOf<ShapeRow>(
    {
      name: 'shape-as-found',
      title: 'Shape from the readings',
      note: 'As found less as drawn: station aft, butt line right, water line up; ± one standard deviation.',
      empty: 'No hold has readings enough to fix a shape.',
      idOf: ({ cluster }) => cluster.id,
      columns: [
        { id: 'cluster', title: 'Id', text: ({ cluster }) => cluster.id },
        { id: 'words', title: 'In words', text: ({ cluster }) => clusterWords(cluster.id) },
        { id: 'hold', title: 'When', text: ({ adjustment }) => holdWords[adjustment.hold] },
        along(0, 'x', 'Station'),
        along(1, 'y', 'Butt line'),
        along(2, 'z', 'Water line'),
        { id: 'moved', title: 'Answer', text: ({ cluster }) => movedWords[cluster.moved] },
        {
          id: 'datum',
          title: 'Reference',
          text: ({ cluster }) => (cluster.datum ? 'reference point' : ''),
        },
      ],
    },
    holds.flatMap((hold) => {
      const adjustment = assessment.trammel.byHold[hold];
      return (adjustment?.clusters ?? []).map((cluster) => ({ adjustment: adjustment!, cluster }));
    }),
  );
};
