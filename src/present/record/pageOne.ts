import type { Model } from '../../core/job/modelSchema.ts';
import type { Standing } from '../../core/job/standing.ts';
import type { State } from '../../core/walkRound/result.ts';
import { showTime, whole } from '../show.ts';
import type { Showing } from '../tables/showing.ts';
import { workingAid } from '../words/cautions.ts';
import { setupWords } from '../words/held.ts';
import { countWords, listWords, zoneWords } from '../words/names.ts';
import { gateNamed } from '../words/planGates.ts';
import { stepNamed } from '../words/planSteps.ts';
import { originWords, verdictWords } from '../words/record.ts';
import { stepWords } from '../words/steps.ts';
import type { ReportHead, Section } from './sections.ts';

const share = (part: number, all: number, one: string): string => `${part} of ${countWords(all, one)}`;

/** People who entered something, each with how many records. */
const people = ({ job }: Showing): string => {
  const counts = new Map<string, number>();
  for (const { by } of job.records) counts.set(by, (counts.get(by) ?? 0) + 1);
  return counts.size === 0
    ? 'nobody yet'
    : [...counts.entries()]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([by, n]) => `${by} (${countWords(n, 'record')})`)
        .join(', ');
};

const heldWords = ({ assessment }: Showing, live: Standing, model: Model): string => {
  const latest = live.held[live.held.length - 1];
  const words = setupWords(model, assessment.statics.heldAs);
  return latest && assessment.statics.heldAs !== 'threeTwoOne'
    ? `${words}, entered by ${latest.by} ${showTime(latest.at)}`
    : words;
};

const movesFreely =
  'Held so, the truss as drawn moves freely. No forces, locked-in sums or cuts are worked on it.';

const origins = ['thisAccident', 'older', 'unknown'] as const;

const findingsWords = ({ assessment: { coverage, lockedIn } }: Showing): string => {
  const suspects = lockedIn.suspects.map(({ id }) => id);
  return [
    `${countWords(coverage.findings.length, 'finding')} on ${countWords(new Set(coverage.findings.map((f) => f.of)).size, 'member or cluster', 'members and clusters')}`,
    ...origins.flatMap((origin) => {
      const n = coverage.findings.filter((f) => f.origin === origin).length;
      return n === 0 ? [] : [`${n} ${originWords[origin]}`];
    }),
    ...(lockedIn.unmeasured.length > 0 ? [`size not yet given: ${listWords(lockedIn.unmeasured)}`] : []),
    ...(suspects.length > 0 ? [`suspected of a bend nobody has seen: ${listWords(suspects)}`] : []),
  ].join('; ');
};

/** Members, then clusters, that stand so, by name. */
const inState = ({ assessment: { coverage } }: Showing, state: State): string => {
  const ids = coverage.marks.filter((mark) => mark.state === state).map(({ id }) => id);
  return ids.length === 0 ? 'none' : `${ids.length}: ${listWords(ids)}`;
};

/** The range of hours, with what it leaves out. */
const hoursWords = ({ assessment: { estimate, coverage } }: Showing): string => {
  const { bestH, worstH } = estimate.withHidden;
  const unpriced = estimate.hidden.reduce(
    (sum, { chance, members }) => sum + (chance ? 0 : members.length),
    0,
  );
  return [
    `${whole(bestH.value)} to ${whole(worstH.value)} h for what is decided`,
    ...(unpriced > 0 ? [`${countWords(unpriced, 'tube')} not looked at not in it`] : []),
    ...(coverage.members.undecided > 0
      ? [`${countWords(coverage.members.undecided, 'tube')} undecided not in it`]
      : []),
  ].join('; ');
};

/** The latest reading of every distance, counted by its answer. */
const distancesWords = ({ assessment: { trammel } }: Showing): string => {
  const latest = trammel.targets.flatMap(({ compared }) => compared.slice(-1));
  if (latest.length === 0) return 'no reading is recorded';
  const counts = (['outside', 'cannotTell', 'inside', 'noLimit'] as const)
    .map((verdict) => [verdict, latest.filter((one) => one.verdict === verdict).length] as const)
    .filter(([, n]) => n > 0)
    .map(([verdict, n]) => `${n} ${verdictWords[verdict]}`);
  return `${latest.length} of ${trammel.targets.length} read: ${counts.join(', ')}`;
};

/** Gates that were opened: steps marked done although something asked for was not as asked, by whom and why. */
const gateLines = (live: Standing): readonly string[] =>
  live.progress
    .filter(({ done, reason, opened }) => done && (opened ?? reason) !== undefined)
    .map(
      ({ step, by, at, reason, opened }) =>
        `${gateNamed(step) === step ? stepWords(step) : gateNamed(step)}, by ${by} ${showTime(at)}: ${opened ?? reason}`,
    );

/** Page one: what the job is, what state it is in, and first of all what nobody has looked at. */
export const pageOne = (
  showing: Showing,
  head: ReportHead,
  live: Standing,
  contents: Extract<Section, { kind: 'contents' }>['rows'],
): readonly Section[] => {
  const { job, assessment } = showing;
  const { coverage, truss, estimate, plan } = assessment;
  const { handOver } = plan;
  const { notLookedAt, zones } = coverage;
  const placed = new Set<string>();
  const byZone = zones.flatMap((zone) => {
    const ids = zone.notLookedAt.filter((id) => !placed.has(id));
    for (const id of ids) placed.add(id);
    return ids.length > 0 ? [{ title: zoneWords(zone.id), ids }] : [];
  });
  const rest = notLookedAt.members.filter((id) => !placed.has(id));
  const groups = [
    ...byZone,
    ...(rest.length > 0 ? [{ title: 'In no bay', ids: rest }] : []),
    ...(notLookedAt.clusters.length > 0 ? [{ title: 'Clusters', ids: notLookedAt.clusters }] : []),
  ];
  const model = live.model ?? job.model;
  const gates = gateLines(live);
  return [
    { kind: 'title', text: head.title, under: `${job.name}` },
    { kind: 'lines', lines: [`${workingAid}. It counts and reckons; people decide and sign.`], strong: true },
    ...(job.setAside && job.setAside.length > 0
      ? ([
          {
            kind: 'lines',
            lines: [
              `${countWords(job.setAside.length, 'record')} of this job cannot be read. Kept as they came, they count for nothing here.`,
            ],
            strong: true,
          },
        ] as const)
      : []),
    {
      kind: 'notLookedAt',
      counts: [
        share(notLookedAt.members.length, truss.members.length, 'member'),
        share(notLookedAt.clusters.length, truss.clusters.length, 'cluster'),
      ],
      groups,
    },
    {
      kind: 'facts',
      rows: [
        ['Undecided', inState(showing, 'undecided')],
        ['Look again', inState(showing, 'lookAgain')],
        ['Findings', findingsWords(showing)],
        ['Distances', distancesWords(showing)],
        ...(estimate.lines.length > 0 ? [['Hours', hoursWords(showing)] as const] : []),
        ['Next', handOver.next.slice(0, 4).map(stepNamed(plan)).join('; ') || 'nothing is planned'],
        ['Gates opened by name', gates.length > 0 ? gates.join('\n') : 'none'],
      ],
    },
    ...(coverage.clashes.length > 0
      ? ([
          { kind: 'subheading', text: 'Two corrections of one record' },
          {
            kind: 'lines',
            lines: coverage.clashes.map(
              (clash) =>
                `${clash.replaced} is replaced by ${clash.by.join(' and by ')}: both stand until somebody decides.`,
            ),
          },
        ] as const)
      : []),
    { kind: 'subheading', text: 'Counts' },
    { kind: 'counts', coverage },
    ...(contents.length > 0
      ? ([
          { kind: 'subheading', text: 'On sheet' },
          { kind: 'contents', rows: contents },
        ] as const)
      : []),
    { kind: 'subheading', text: 'The job' },
    {
      kind: 'facts',
      rows: [
        ['Aircraft, as entered', job.aircraft ?? 'not entered'],
        ...(live.mishap?.story ? [['As told', live.mishap.story] as const] : []),
        ['Model', `${model.name}. ${model.source}`],
        ['People', people(showing)],
        ['Held', heldWords(showing, live, model)],
        ...(assessment.statics.kind === 'movesFreely' ? [['Truss', movesFreely] as const] : []),
      ],
    },
  ];
};
