import type { Standing } from '../../core/job/standing.ts';
import { heading } from '../record/heading.ts';
import type { Part, Section } from '../record/sections.ts';
import type { Showing } from '../tables/showing.ts';
import { listWords } from '../words/names.ts';
import { byHandAsked, entriesOf, entryFields, entryFieldsAsked, ourOwn } from './entryFields.ts';

/** Draft text for the maintenance entry: what stands on the record, what is missing in words; a person signs. */
export const entrySheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const entries = entriesOf(showing, live);
  return [
    {
      lie: 'upright',
      side,
      sections: [
        heading(
          'Draft for the maintenance entry',
          'A draft from what was entered. It is no entry until a person entitled to has read, completed and signed it.',
        ),
        ...(entries.length === 0 ? [{ kind: 'lines', lines: ['No repair is decided.'] } as const] : []),
        ...entries.flatMap(({ of, fields, missing }): readonly Section[] => [
          { kind: 'subheading', text: of },
          {
            kind: 'facts',
            rows: entryFields.map((f) => [entryFieldsAsked[f].words, fields[f] ?? 'NOT ENTERED'] as const),
          },
          {
            kind: 'lines',
            lines: [missing.length > 0 ? `Missing: ${listWords(missing)}.` : 'Every field is entered.'],
            strong: true,
          },
        ]),
        { kind: 'subheading', text: 'By hand' },
        { kind: 'blanks', names: byHandAsked.map(({ words }) => words) },
        { kind: 'subheading', text: 'What asks for each field' },
        {
          kind: 'lines',
          lines: [...entryFields.map((f) => entryFieldsAsked[f]), ...byHandAsked]
            .filter(({ source }) => source !== ourOwn)
            .map(({ words, source }) => `${words}: ${source}.`),
        },
        { kind: 'lines', lines: ['All other fields: common practice, no source.'] },
      ],
    },
  ];
};
