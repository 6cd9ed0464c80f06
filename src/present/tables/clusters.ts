import type { Cluster } from '../../core/truss/result.ts';
import { lengthUnit, showBareLength } from '../show.ts';
import { type Column, type Table, tableOf } from '../table.ts';
import { tags } from '../tags.ts';
import { clusterWords } from '../words/names.ts';
import { choiceOf, stateWords } from './members.ts';
import { marksById, rawLength, type Showing } from './showing.ts';

/** Every cluster of the truss as a row, with where it stands as drawn. */
export const clustersTable = (showing: Showing): Table => {
  const { units, assessment } = showing;
  const marks = marksById(showing);
  const along = (id: string, title: string, axis: 0 | 1 | 2): Column<Cluster> => ({
    id,
    title,
    unit: lengthUnit(units),
    align: 'right',
    text: (cluster) => showBareLength(cluster.at[axis], units === 'inFraction' ? 'inDecimal' : units),
    raw: (cluster) => rawLength(cluster.at[axis], units),
  });
  return tableOf<Cluster>(
    {
      name: 'clusters',
      title: 'Clusters',
      note: "Shape as drawn. Butt line positive to the right as seen from the pilot's seat.",
      empty: 'The truss has no clusters.',
      idOf: (cluster) => cluster.id,
      columns: [
        { id: 'id', title: 'Id', text: (cluster) => cluster.id },
        { id: 'words', title: 'In words', text: (cluster) => clusterWords(cluster.id) },
        { id: 'state', title: 'State', text: (cluster) => stateWords(marks.get(cluster.id)) },
        {
          id: 'chalk',
          title: 'Chalk',
          text: (cluster) => tags[marks.get(cluster.id)?.state ?? 'notLookedAt'].chalk,
        },
        { id: 'decision', title: 'Decision', text: (cluster) => choiceOf(marks.get(cluster.id)) },
        along('station', 'Station', 0),
        along('buttLine', 'Butt line', 1),
        along('waterLine', 'Water line', 2),
        { id: 'fitting', title: 'Fitting', text: (cluster) => cluster.fitting ?? '' },
      ],
    },
    assessment.truss.clusters,
  );
};
