import { type ExerciseKind, exerciseKinds } from '../../core/practice/areas.ts';
import { showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { areaNote, areaWords, exerciseWords, questionWords } from '../words/practice.ts';

/** One finished exercise as it is kept on a device. */
export interface PracticeResult {
  readonly at: string;
  readonly who: string;
  readonly kind: ExerciseKind;
  readonly what: string;
  readonly level: number | null;
  readonly exam: boolean;
  readonly shares: Readonly<Record<string, { readonly got: number; readonly of: number }>>;
}

/** Results of practice, one skill a row: there is no sum of them. */
export const practiceResultsTable = (results: readonly PracticeResult[]): Table =>
  tableOf(
    {
      name: 'practice-results',
      title: 'Practice results',
      note: areaNote,
      empty: 'Nothing practised yet.',
      columns: [
        { id: 'at', title: 'Handed in', text: ({ result }) => showTime(result.at) },
        { id: 'who', title: 'Trainee', text: ({ result }) => result.who },
        {
          id: 'exercise',
          title: 'Exercise',
          text: ({ result }) =>
            exerciseKinds.includes(result.kind) ? exerciseWords[result.kind] : result.kind,
        },
        { id: 'what', title: 'Truss and seed', text: ({ result }) => result.what },
        {
          id: 'level',
          title: 'Level',
          text: ({ result }) => (result.level === null ? '' : `${result.level}`),
          raw: ({ result }) => result.level,
        },
        { id: 'mode', title: 'Mode', text: ({ result }) => (result.exam ? 'exam' : 'with hints') },
        {
          id: 'skill',
          title: 'Skill',
          text: ({ skill }) => (questionWords as Readonly<Record<string, string>>)[skill] ?? skill,
        },
        { id: 'got', title: 'Right', align: 'right', text: ({ got }) => `${got}`, raw: ({ got }) => got },
        { id: 'of', title: 'Of', align: 'right', text: ({ of }) => `${of}`, raw: ({ of }) => of },
        {
          id: 'areas',
          title: 'Subject areas',
          text: ({ result }) => (exerciseKinds.includes(result.kind) ? areaWords(result.kind) : ''),
        },
      ],
    },
    results.flatMap((result) =>
      Object.entries(result.shares).map(([skill, { got, of }]) => ({ result, skill, got, of })),
    ),
  );
