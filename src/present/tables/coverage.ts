import { accessStates } from '../../core/job/jobSchema.ts';
import { type State, states, type Zone } from '../../core/walkRound/result.ts';
import { showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { tags } from '../tags.ts';
import { zoneWords } from '../words/names.ts';
import { accessHides, accessWords, methodWords } from '../words/record.ts';
import { marksById, type Showing, wordsOf } from './showing.ts';

/** How many members and clusters stand in each state, in the fixed order. */
export const countsTable = ({ assessment: { coverage } }: Showing): Table =>
  tableOf<State>(
    {
      name: 'counts',
      title: 'Counts',
      empty: 'no states',
      idOf: (state) => state,
      columns: [
        { id: 'state', title: 'State', text: (state) => tags[state].word },
        { id: 'chalk', title: 'Chalk', text: (state) => tags[state].chalk },
        count('members', 'Members', (state) => coverage.members[state]),
        count('clusters', 'Clusters', (state) => coverage.clusters[state]),
      ],
    },
    states,
  );

const count = (id: string, title: string, of: (state: State) => number) => ({
  id,
  title,
  align: 'right' as const,
  text: (state: State) => String(of(state)),
  raw: of,
});

interface Unseen {
  readonly id: string;
  readonly kind: 'member' | 'cluster';
}

/** Every member and cluster not looked at. There is no setting that leaves it out. */
export const notLookedAtTable = (showing: Showing): Table => {
  const { notLookedAt, zones } = showing.assessment.coverage;
  const words = wordsOf(showing);
  const access = (id: string): string =>
    zones
      .filter((zone) => zone.members.includes(id))
      .map(
        (zone) => `${zoneWords(zone.id)}: ${zone.access ? accessWords[zone.access] : 'access not recorded'}`,
      )
      .join('; ');
  return tableOf<Unseen>(
    {
      name: 'not-looked-at',
      title: 'Not looked at',
      empty: 'Every member and cluster has been looked at.',
      idOf: (row) => row.id,
      columns: [
        { id: 'id', title: 'Id', text: (row) => row.id },
        { id: 'kind', title: 'Kind', text: (row) => row.kind },
        { id: 'words', title: 'In words', text: (row) => words(row.id) },
        { id: 'access', title: 'Access', text: (row) => access(row.id) },
      ],
    },
    [
      ...notLookedAt.members.map((id) => ({ id, kind: 'member' as const })),
      ...notLookedAt.clusters.map((id) => ({ id, kind: 'cluster' as const })),
    ],
  );
};

/** What somebody wants looked at again, with the reason they gave. */
export const lookAgainTable = (showing: Showing): Table => {
  const words = wordsOf(showing);
  const marks = marksById(showing);
  return tableOf(
    {
      name: 'look-again',
      title: 'Look again',
      empty: 'Nothing is marked to be looked at again.',
      idOf: (look) => look.of,
      columns: [
        { id: 'id', title: 'Id', text: (look) => look.of },
        { id: 'words', title: 'In words', text: (look) => words(look.of) },
        { id: 'method', title: 'Looked at', text: (look) => methodWords[look.method] },
        { id: 'note', title: 'Note', text: (look) => look.note ?? '' },
        { id: 'by', title: 'By', text: (look) => look.by },
        { id: 'at', title: 'When', text: (look) => showTime(look.at), raw: (look) => look.at },
      ],
    },
    showing.assessment.coverage.looks.filter(
      (look) => look.state === 'lookAgain' && marks.get(look.of)?.look === look.id,
    ),
  );
};

/** Each bay's faces: access, and how far it has been looked at. */
export const areasTable = ({ assessment }: Showing): Table =>
  tableOf(
    {
      name: 'areas',
      title: 'Areas',
      empty: 'The truss has no bays.',
      columns: [
        { id: 'zone', title: 'Area', text: (zone) => zoneWords(zone.id), raw: (zone) => zone.id },
        {
          id: 'access',
          title: 'Access',
          text: (zone) => (zone.access ? accessWords[zone.access] : 'not recorded'),
        },
        {
          id: 'hides',
          title: 'What that cannot rule out',
          text: (zone) => (zone.access ? accessHides[zone.access] : ''),
        },
        {
          id: 'members',
          title: 'Members',
          align: 'right',
          text: (zone) => String(zone.members.length),
          raw: (zone) => zone.members.length,
        },
        {
          id: 'unseen',
          title: 'Not looked at',
          align: 'right',
          text: (zone) => String(zone.notLookedAt.length),
          raw: (zone) => zone.notLookedAt.length,
        },
      ],
    },
    assessment.coverage.zones,
  );

interface AccessRow {
  readonly access: string;
  readonly hides: string;
  readonly zones: readonly Zone[];
}

/** The areas gathered by their access, for paper: what each state of access cannot rule out is said once. */
export const areasOnPaper = ({ assessment: { coverage } }: Showing): Table => {
  const rows = [...accessStates, undefined].map(
    (access): AccessRow => ({
      access: access ? accessWords[access] : 'not recorded',
      hides: access ? accessHides[access] : '',
      zones: coverage.zones.filter((zone) => zone.access === access),
    }),
  );
  const sum = (zones: readonly Zone[], of: (zone: Zone) => readonly string[]): number =>
    new Set(zones.flatMap(of)).size;
  return tableOf<AccessRow>(
    {
      name: 'areas',
      title: 'Areas',
      note: 'In brackets how many of its tubes nobody has looked at. One row an area: areas.csv.',
      empty: 'The truss has no bays.',
      columns: [
        { id: 'access', title: 'Access', text: (row) => row.access },
        { id: 'hides', title: 'What that cannot rule out', text: (row) => row.hides },
        {
          id: 'zones',
          title: 'Areas',
          text: ({ zones }) =>
            zones
              .map(({ id, notLookedAt }) =>
                notLookedAt.length > 0 ? `${zoneWords(id)} (${notLookedAt.length})` : zoneWords(id),
              )
              .join('; '),
        },
        {
          id: 'members',
          title: 'Members',
          align: 'right',
          text: ({ zones }) => String(sum(zones, (zone) => zone.members)),
        },
        {
          id: 'unseen',
          title: 'Not looked at',
          align: 'right',
          text: ({ zones }) => String(sum(zones, (zone) => zone.notLookedAt)),
        },
      ],
    },
    rows.filter(({ zones }) => zones.length > 0),
  );
};
