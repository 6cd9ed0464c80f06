import type { Standing } from '../../core/job/standing.ts';
import { heading } from '../record/heading.ts';
import type { Part, Section, TagLabel } from '../record/sections.ts';
import { showTime } from '../show.ts';
import { asLeftTable } from '../tables/asLeft.ts';
import { decisionsTable } from '../tables/findings.ts';
import { frozenTable, gatesTable, notPlannedTable } from '../tables/planSteps.ts';
import type { Showing } from '../tables/showing.ts';
import { weldsTable } from '../tables/welds.ts';
import { choiceWords, tags } from '../tags.ts';
import { setupWords } from '../words/held.ts';
import { clusterWords, countWords, listWords, memberWords } from '../words/names.ts';
import { gateLine, gatesTogether, stepNamed } from '../words/plan.ts';
import { entriesOf, entryFields, entryFieldWords, signedByHand } from './entryFields.ts';

const none = (ids: readonly string[], empty = 'none'): string => (ids.length === 0 ? empty : listWords(ids));

/** As-left record: every distance before and after, and who saw the whole truss. */
export const asLeftSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => [
  {
    lie: 'turned',
    side,
    sections: [
      heading(
        'As found and as left',
        'As left is the last hold, after welding, of the whole truss. A distance nobody has read says so.',
      ),
      { kind: 'table', table: asLeftTable(showing) },
      { kind: 'subheading', text: 'Decisions' },
      { kind: 'table', table: decisionsTable(showing) },
      heading('Welds', 'Most misses lie on the far side: write down which side could not be seen.'),
      { kind: 'table', table: weldsTable(showing, live) },
      { kind: 'blanks', names: ['As-left distances taken by', 'Seen by a second person', 'Date'] },
    ],
  },
];

/** Weld list: where, how looked at, by whom; far side to be written in. */
export const weldSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const table = weldsTable(showing, live);
  return [
    {
      lie: 'upright',
      side,
      sections: [
        heading('Weld list'),
        { kind: 'table', table },
        { kind: 'subheading', text: 'To write in' },
        {
          kind: 'ticks',
          rows: table.rows.map(({ id, cells }) => ({
            text: `${id ?? ''} · ${cells[0]!.text}`,
            blanks: ['far side seen', 'method', 'result', 'qualified person'],
          })),
        },
      ],
    },
  ];
};

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
            rows: entryFields.map((f) => [entryFieldWords[f], fields[f] ?? 'NOT ENTERED'] as const),
          },
          {
            kind: 'lines',
            lines: [missing.length > 0 ? `Missing: ${listWords(missing)}.` : 'Every field is entered.'],
            strong: true,
          },
        ]),
        { kind: 'subheading', text: 'By hand' },
        { kind: 'blanks', names: signedByHand },
      ],
    },
  ];
};

/** What is under covers, by bay, and what has no access recorded. */
const coveredLines = ({ zones }: Showing['assessment']['coverage']): readonly string[] => {
  const bays = (access: string | undefined): readonly string[] => [
    ...new Set(zones.filter((z) => z.access === access).map(({ id }) => id.split(' ')[0]!)),
  ];
  const [covered, silent] = [bays('covered'), bays(undefined)];
  return [
    ...(covered.length > 0
      ? [`Covered, so nothing can be said of what is under it: bay ${listWords(covered)}.`]
      : []),
    ...(silent.length > 0 ? [`Access not recorded: bay ${listWords(silent)}.`] : []),
    'The inside of every tube, unless somebody has looked with a borescope.',
  ];
};

/** Start card: what must be known before the first step. */
export const startSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const { assessment, job } = showing;
  const { coverage, plan, statics } = assessment;
  const model = live.model ?? job.model;
  const released = live.progress.findLast((p) => p.step === 'makeSafe' && p.done);
  const data = live.manual.filter(({ topic }) => !/^(plan-|strike:|hidden:|exchange:)/.test(topic));
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Start card', under: job.name },
        {
          kind: 'facts',
          rows: [
            ['Aircraft, as entered', job.aircraft ?? 'not entered'],
            [
              'Released for work',
              released
                ? `ticked by ${released.by}, ${showTime(released.at)}`
                : 'NOT ENTERED: do not touch the wreck',
            ],
            ['As told', live.mishap?.story ?? 'not entered'],
            ['Model and its source', `${model.name}. ${model.source}`],
            [
              "Maker's data in hand",
              none([...new Set(data.map(({ topic, source }) => `${topic} (${source})`))], 'none entered'),
            ],
            ['Held and levelled', setupWords(model, statics.heldAs)],
            [
              'Not looked at',
              `${countWords(coverage.notLookedAt.members.length, 'member')}, ${countWords(coverage.notLookedAt.clusters.length, 'cluster')}`,
            ],
            [
              'Undecided',
              `${countWords(coverage.members.undecided, 'member')}, ${countWords(coverage.clusters.undecided, 'cluster')}`,
            ],
            [
              'Look again',
              `${countWords(coverage.members.lookAgain, 'member')}, ${countWords(coverage.clusters.lookAgain, 'cluster')}`,
            ],
          ],
        },
        { kind: 'subheading', text: 'Not in the plan' },
        { kind: 'table', table: notPlannedTable(showing) },
        { kind: 'subheading', text: 'What is unknown' },
        { kind: 'lines', lines: coveredLines(coverage) },
        {
          kind: 'ticks',
          rows: plan.steps.slice(0, 4).map((step, k) => ({
            text: `${k + 1}. ${stepNamed(plan)(step.id)}`,
            blanks: [],
            ...(step.done ? { done: `${step.done.by}, ${showTime(step.done.at)}` } : {}),
          })),
        },
        {
          kind: 'blanks',
          names: [
            'Wreck released by, and when',
            'Data in hand: document and revision',
            'Held on, levelled by',
            'Started by, date',
          ],
        },
      ],
    },
  ];
};

/** Hand-over page: what the next shift must know, on one page. */
export const handOverSheets = (showing: Showing, live: Standing, side: string): readonly Part[] => {
  const { plan } = showing.assessment;
  const { handOver } = plan;
  const named = stepNamed(plan);
  const model = live.model ?? showing.job.model;
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Hand-over', under: showing.job.name },
        {
          kind: 'facts',
          rows: [
            ['Cut and not closed', none(handOver.cutNotClosed, 'nothing')],
            ['Tacked and not welded', none(handOver.tackedNotWelded, 'nothing')],
            ['Sleeves or parts loose on tubes', none(handOver.loose, 'none')],
            [
              'In place',
              handOver.inPlace.length === 0
                ? 'no brace, no spreader'
                : handOver.inPlace.map(named).join('; '),
            ],
            ['Held', setupWords(model, handOver.heldAs)],
            ['Next', handOver.next.slice(0, 6).map(named).join('; ') || 'nothing'],
            ['Last readings', none(handOver.lastReadings.slice(0, 8))],
            ['Who knows', none(handOver.who, 'nobody has ticked a step')],
            [
              'Open hold points',
              handOver.openGates.length === 0 ? 'none' : gatesTogether(handOver.openGates).join('\n'),
            ],
          ],
        },
        ...(plan.gates.some((g) => g.state === 'openedByName')
          ? ([
              { kind: 'subheading', text: 'Opened by name' },
              {
                kind: 'lines',
                lines: plan.gates.flatMap((g) =>
                  g.opened
                    ? [`${gateLine(g)}: ${g.opened.by}, ${showTime(g.opened.at)}: ${g.opened.reason}`]
                    : [],
                ),
              },
            ] as const)
          : []),
        { kind: 'blanks', names: ['Handed over by, time', 'Taken over by, time', 'Said besides'] },
      ],
    },
    {
      lie: 'turned',
      side,
      sections: [
        heading('Hold points of the work'),
        { kind: 'table', table: gatesTable(showing), only: ['gate', 'state', 'second', 'by', 'reason'] },
        heading('Changes since the plan was frozen'),
        { kind: 'table', table: frozenTable(showing) },
      ],
    },
  ];
};

const many = (count: number, one: string, more = `${one}s`): string =>
  count === 1 ? `One ${one}` : `${count} ${more}`;

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** The owner's page, in plain words: no verdict, what is unknown, what happens next. */
export const ownerSheets = (showing: Showing, side: string): readonly Part[] => {
  const { assessment, job } = showing;
  const { coverage, estimate, plan } = assessment;
  const { members } = coverage;
  const unseen = coverage.notLookedAt.members.length;
  const done = plan.steps.filter((s) => s.done).length;
  const older = coverage.findings.filter((f) => f.origin === 'older').length;
  const unknown = coverage.findings.filter((f) => f.origin === 'unknown').length;
  const { bestH, worstH } = estimate.withHidden;
  return [
    {
      lie: 'upright',
      side,
      sections: [
        { kind: 'title', text: 'Your aircraft', under: job.aircraft ?? job.name },
        {
          kind: 'lines',
          lines: [
            `The frame of your aircraft is made of ${assessment.truss.members.length} steel tubes, welded together. So far people have looked at ${assessment.truss.members.length - unseen} of them.`,
            `On ${lower(many(new Set(coverage.findings.map((f) => f.of)).size, 'tube or joint', 'tubes and joints'))} they found damage. ${older > 0 ? `${many(older, 'mark')} ${older === 1 ? 'is' : 'are'} older than this accident. ` : ''}${unknown > 0 ? `Of ${lower(many(unknown, 'mark'))} nobody can say how old it is.` : ''}`.trim(),
          ],
        },
        { kind: 'subheading', text: 'What is planned' },
        {
          kind: 'lines',
          lines: [
            ...(members.straighten > 0
              ? [`${many(members.straighten, 'tube')} to be bent straight again.`]
              : []),
            ...(members.splitSleeve > 0
              ? [`${many(members.splitSleeve, 'tube')} to get a sleeve or a patch over the damage.`]
              : []),
            ...(members.splice > 0 ? [`${many(members.splice, 'tube')} to get a new piece let in.`] : []),
            ...(members.replace > 0 ? [`${many(members.replace, 'tube')} to be replaced.`] : []),
            ...(members.undecided > 0
              ? [`On ${lower(many(members.undecided, 'tube'))} nobody has decided yet.`]
              : []),
            ...(plan.steps.length > 0 ? [`${done} of ${plan.steps.length} steps of the work are done.`] : []),
          ],
        },
        { kind: 'subheading', text: 'What nobody knows yet' },
        {
          kind: 'lines',
          lines: [
            unseen > 0
              ? `${many(unseen, 'tube')} nobody has looked at. There may be more damage there. It costs time and money when it is found.`
              : 'Every tube has been looked at once.',
            ...(members.lookAgain > 0
              ? [`${many(members.lookAgain, 'tube')} must be looked at once more.`]
              : []),
            'Inside the tubes nobody can see everything.',
          ],
        },
        { kind: 'subheading', text: 'How long it may take' },
        {
          kind: 'lines',
          lines:
            estimate.lines.length === 0
              ? ['Nothing is planned yet, so nobody can say.']
              : [
                  `Between ${Math.round(bestH.value)} and ${Math.round(worstH.value)} hours of work on the frame, for what is decided so far. ${estimate.hidden.every((h) => h.chance === null) ? 'What nobody has looked at is not in it.' : 'A guess of the shop for tubes nobody has looked at is in it.'}`,
                  estimate.rates.every((r) => r.record === undefined)
                    ? 'The hours for each kind of work are only starting numbers. The shop has not put in its own.'
                    : "The hours for some kinds of work are the shop's own.",
                  'Fabric, paint, engine, propeller and fees are not in it.',
                ],
        },
        { kind: 'subheading', text: 'What happens next' },
        {
          kind: 'lines',
          lines: [
            ...(unseen > 0 ? ['People look at the tubes that nobody has looked at.'] : []),
            ...(members.undecided > 0 ? ['People decide what to do about the tubes that are open.'] : []),
            'You say yes or no to the plan before anything is cut.',
            'People who may do so decide if the aircraft flies again. This page does not.',
          ],
        },
        { kind: 'blanks', names: ['Explained by, date', 'Your questions'] },
      ],
    },
  ];
};

/** Chalk key and tags to cut out: one for every tube or cluster with a finding, a decision or a second look due. */
export const tagSheets = (showing: Showing, side: string): readonly Part[] => {
  const { truss, coverage, plan } = showing.assessment;
  const members = new Map(truss.members.map((m) => [m.id, m]));
  const labels = coverage.marks
    .filter(({ state }) => state !== 'lookedAt' && state !== 'notLookedAt')
    .map((mark): TagLabel => {
      const tag = tags[mark.state];
      const member = members.get(mark.id);
      const next = plan.gates.find(
        (g) => g.of === mark.id && g.state !== 'done' && g.state !== 'openedByName',
      );
      return {
        id: mark.id,
        words: member ? memberWords(member) : clusterWords(mark.id),
        chalk: tag.chalk,
        glyph: tag.glyph === 'damage' ? 'otherQuery' : tag.glyph,
        decision: mark.choice ? choiceWords[mark.choice] : tag.word,
        next: next ? `Next hold: ${gateLine({ name: next.name })}` : `${showing.job.name}`,
      };
    });
  return [
    {
      lie: 'upright',
      side,
      sections: [
        heading(
          'Chalk key',
          'Two letters in chalk on the tube; the same letters, pattern and sign stand in the maps.',
        ),
        { kind: 'counts', coverage },
        heading(
          'Tags',
          'Cut out and tie on. The id finds the tube in the program: type it into the find box.',
        ),
        { kind: 'tags', tags: labels },
      ],
    },
  ];
};
