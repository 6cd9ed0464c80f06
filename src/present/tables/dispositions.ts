import type { DispositionRow, Option } from '../../core/disposition/result.ts';
import { showFigure } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { choiceWords, tags } from '../tags.ts';
import {
  answerWords,
  conditionWords,
  limitOfWords,
  limitVerdictWords,
  missingShort,
  missingWords,
  reasonSentence,
  reasonSource,
  scopeWords,
  sentence,
} from '../words/disposition.ts';
import { type Showing, wordsOf } from './showing.ts';

interface OptionRow {
  readonly of: DispositionRow;
  readonly option: Option;
}

/** The reasons that decide an answer: those that say it, else all. */
const deciding = ({ option: { answer, reasons } }: OptionRow): Option['reasons'] => {
  const said = reasons.filter((r) => r.says === answer);
  return said.length > 0 ? said : reasons;
};

const isChosen = ({ of, option }: OptionRow): boolean => of.decided?.choice === option.choice;

const note =
  'What the rules loaded answer to each way of repair. Nothing is preselected; the decision is a person’s. No published dent, bow, ovality or wall loss may be left as it is: without your own data there is no verdict.';
const empty = 'No member and no cluster has a finding or a decision.';

const optionTable = (
  name: string,
  title: string,
  withId: boolean,
  showing: Showing,
  rows: readonly OptionRow[],
): Table => {
  const { units } = showing;
  const words = wordsOf(showing);
  return tableOf<OptionRow>(
    {
      name,
      title,
      ...(withId ? { note } : {}),
      empty,
      idOf: ({ of }) => of.id,
      columns: [
        ...(withId
          ? [
              { id: 'of', title: 'Id', text: ({ of }: OptionRow) => of.id },
              { id: 'words', title: 'In words', text: ({ of }: OptionRow) => words(of.id) },
              { id: 'state', title: 'State', text: ({ of }: OptionRow) => tags[of.state].word },
            ]
          : []),
        { id: 'option', title: 'Way', text: ({ option }) => choiceWords[option.choice] },
        { id: 'answer', title: 'Answer', text: ({ option }) => answerWords[option.answer] },
        {
          id: 'why',
          title: 'Why',
          text: (row) =>
            deciding(row)
              .map((r) => reasonSentence(r, units))
              .join(' '),
        },
        {
          id: 'source',
          title: 'Source',
          text: (row) => [...new Set(deciding(row).map(reasonSource))].join('; '),
        },
        {
          id: 'missing',
          title: 'Still missing',
          text: ({ option }) => [...new Set(option.missing.map(missingWords))].map(sentence).join('; '),
        },
        {
          id: 'with',
          title: 'Goes with it',
          text: ({ option }) => option.conditions.map(conditionWords).join(' '),
        },
        { id: 'chosen', title: 'Decided', text: (row) => (isChosen(row) ? 'decided' : '') },
      ],
    },
    rows,
  );
};

/** Every way of repair for every member and cluster with a finding or a decision, undecided first. */
export const dispositionsTable = (showing: Showing): Table =>
  optionTable(
    'dispositions',
    'Dispositions',
    true,
    showing,
    showing.assessment.disposition.rows.flatMap((of) => of.options.map((option) => ({ of, option }))),
  );

/** The ways of repair for one member or cluster. */
export const dispositionOf = (showing: Showing, row: DispositionRow): Table =>
  optionTable(
    'dispositions',
    `${row.id}: ${wordsOf(showing)(row.id)}`,
    false,
    showing,
    row.options.map((option) => ({ of: row, option })),
  );

/** One row a member or cluster: the decision and what it is against the rules, or what is missing to decide. */
export const decidedTable = (showing: Showing): Table => {
  const words = wordsOf(showing);
  const reasons = new Map(showing.assessment.coverage.decisions.map((d) => [d.id, d]));
  return tableOf<DispositionRow>(
    {
      name: 'decided',
      title: 'Members by disposition',
      note: 'Undecided first.',
      empty,
      idOf: (row) => row.id,
      columns: [
        { id: 'of', title: 'Id', text: (row) => row.id },
        { id: 'words', title: 'In words', text: (row) => words(row.id) },
        { id: 'state', title: 'State', text: (row) => tags[row.state].word },
        {
          id: 'decision',
          title: 'Decision',
          text: ({ decided }) => (decided ? choiceWords[decided.choice] : 'none'),
        },
        {
          id: 'answer',
          title: 'By the rules loaded',
          text: ({ decided }) => (decided ? answerWords[decided.answer] : ''),
        },
        {
          id: 'reason',
          title: 'Reason written',
          text: ({ decided }) => {
            if (!decided) return '';
            const written = reasons.get(decided.record)?.reason?.trim() ?? '';
            return written !== '' ? written : decided.reasonNeeded ? 'none: a reason is needed' : 'none';
          },
        },
        {
          id: 'by',
          title: 'By',
          text: ({ decided }) => (decided ? (reasons.get(decided.record)?.by ?? '') : ''),
        },
        {
          id: 'scope',
          title: 'Weld closed by',
          text: ({ scope }) => scope.map((s) => scopeWords[s]).join('; '),
        },
        {
          id: 'missing',
          title: 'Missing to decide',
          text: ({ decided, missing }) =>
            decided ? '' : [...new Set(missing.map(missingShort))].map(sentence).join('; '),
        },
      ],
    },
    showing.assessment.disposition.rows,
  );
};

/** Every size against the user's own limit; without one there is no verdict. */
export const ownLimitsTable = (showing: Showing): Table => {
  const { units } = showing;
  return tableOf(
    {
      name: 'own-limits',
      title: 'Sizes against your own limits',
      note: 'No published limit says what may be left as it is.',
      empty: 'No size that a limit could be set against.',
      idOf: ({ of }) => of,
      columns: [
        { id: 'of', title: 'Id', text: ({ of }) => of },
        { id: 'size', title: 'Size', text: ({ check }) => sentence(limitOfWords[check.of]) },
        {
          id: 'measured',
          title: 'Measured',
          align: 'right',
          text: ({ check }) => (check.measured ? showFigure(check.measured, units) : 'not measured'),
        },
        {
          id: 'limit',
          title: 'Your limit',
          align: 'right',
          text: ({ check }) => (check.limit ? showFigure(check.limit, units) : 'none loaded'),
        },
        { id: 'verdict', title: 'Verdict', text: ({ check }) => limitVerdictWords[check.verdict] },
        { id: 'finding', title: 'Record', text: ({ check }) => check.finding },
      ],
    },
    showing.assessment.disposition.rows.flatMap((row) => row.limits.map((check) => ({ of: row.id, check }))),
  );
};
