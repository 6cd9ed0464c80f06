import type { RecordOf } from '../../core/job/jobSchema.ts';
import type { Standing } from '../../core/job/standing.ts';
import type { Method } from '../../core/splice/result.ts';
import { showFigure, showTime } from '../show.ts';
import { type Table, tableOf } from '../table.ts';
import { clusterWords, memberLine } from '../words/names.ts';
import { farSideWords, methodWords } from '../words/record.ts';
import { methodNames } from '../words/splice.ts';
import { byId, type Showing } from './showing.ts';

type Progress = RecordOf<'progress'>;
type WeldSeen = NonNullable<Progress['weld']>;

/** One weld of a repair: a joint at or towards a cluster, or the one weld round a patch or a split sleeve. */
export interface WeldRow {
  /** Step under which it is written down: `weldAt:MEMBER:JOINT`. */
  readonly step: string;
  readonly of: string;
  /** Cluster that the joint lies at or towards; null where the repair has one weld. */
  readonly joint: string | null;
  readonly words: string;
  readonly repair: string;
  readonly weldIn: string;
  /** What stands for this weld: its own words first, then those of the job. */
  readonly process: string | null;
  readonly filler: string | null;
  readonly farSide: WeldSeen['farSide'] | null;
  readonly method: WeldSeen['method'] | null;
  readonly result: WeldSeen['result'] | null;
  readonly doer: string | null;
  readonly qualified: string | null;
}

/** Topics of the records that hold process and filler of the whole job: where no weld has words of its own. */
export const weldTopics = { process: 'weld-process', filler: 'weld-filler' } as const;

const oneWeld: readonly Method[] = ['splitSleeve', 'patch'];
const blank = (words: string | undefined): string | null => (words?.trim() ? words.trim() : null);

/** Every weld of every repair that is welded, with what is written down of it. */
export const weldRows = ({ assessment, units }: Showing, live: Standing): readonly WeldRow[] => {
  const members = byId(assessment.truss.members);
  const own = (topic: string): string | undefined => live.manual.findLast((m) => m.topic === topic)?.words;
  const planned = assessment.plan.steps.filter(({ kind }) => kind === 'inspectWelds');
  return planned.flatMap((step): readonly WeldRow[] => {
    const of = step.of ?? step.members[0] ?? step.id;
    const member = members.get(of);
    const takes = assessment.takeoff.repairs.find((r) => r.member === of);
    const whole = live.progress.findLast((p) => p.step === step.id && p.done);
    const joints =
      member && !(takes?.method && oneWeld.includes(takes.method)) ? [member.from, member.to] : [null];
    return joints.map((joint): WeldRow => {
      const id = `weldAt:${of}${joint === null ? '' : `:${joint}`}`;
      const mine = live.progress.filter((p) => p.step === id && p.done && p.weld);
      const last = <K extends keyof WeldSeen>(name: K): WeldSeen[K] | undefined =>
        mine.findLast((p) => p.weld?.[name] !== undefined)?.weld?.[name];
      const seen = mine.at(-1) ?? whole;
      return {
        step: id,
        of,
        joint,
        words: member ? memberLine(member) : clusterWords(of),
        repair: takes?.method ? methodNames[takes.method] : 'not designed yet',
        weldIn: takes?.weldIn ? showFigure(takes.weldIn, units) : 'not told',
        process: blank(last('process')) ?? blank(own(weldTopics.process)),
        filler: blank(last('filler')) ?? blank(own(weldTopics.filler)),
        farSide: last('farSide') ?? null,
        method: last('method') ?? whole?.inspected?.method ?? null,
        result: last('result') ?? whole?.inspected?.result ?? null,
        doer: seen ? `${seen.by}, ${showTime(seen.at)}` : null,
        qualified: mine.findLast((p) => p.secondPerson)?.secondPerson ?? whole?.secondPerson ?? null,
      };
    });
  });
};

/** Where a weld lies, in a few words. */
export const jointWords = ({ joint, repair }: Pick<WeldRow, 'joint' | 'repair'>): string =>
  joint === null ? 'all round' : `${repair === methodNames.fullMember ? 'at' : 'towards'} ${joint}`;

export const weldResultWords = { clear: 'no crack seen', crack: 'crack' } as const;

/** Every weld, and what was seen of it. What nobody wrote down says so. */
export const weldsTable = (showing: Showing, live: Standing): Table =>
  tableOf<WeldRow>(
    {
      name: 'welds',
      title: 'Weld list',
      note: 'Weld length is that of the whole repair. Process and filler are those of the weld, or of the job where the weld has none of its own.',
      empty: 'No weld is planned.',
      idOf: ({ of }) => of,
      columns: [
        { id: 'where', title: 'Where', text: ({ words }) => words },
        { id: 'joint', title: 'Joint', text: jointWords },
        { id: 'repair', title: 'Repair', text: ({ repair }) => repair },
        { id: 'weld', title: 'Weld', text: ({ weldIn }) => weldIn },
        { id: 'process', title: 'Process', text: ({ process }) => process ?? 'not entered' },
        { id: 'filler', title: 'Filler', text: ({ filler }) => filler ?? 'not entered' },
        {
          id: 'farSide',
          title: 'Far side',
          text: ({ farSide }) => (farSide ? farSideWords[farSide] : 'not entered'),
        },
        {
          id: 'method',
          title: 'Method',
          text: ({ method }) => (method ? methodWords[method] : 'not looked at yet'),
        },
        { id: 'result', title: 'Result', text: ({ result }) => (result ? weldResultWords[result] : '') },
        { id: 'doer', title: 'By', text: ({ doer }) => doer ?? '' },
        {
          id: 'second',
          title: 'Qualified person',
          text: ({ qualified, doer }) => qualified ?? (doer ? 'nobody named' : ''),
        },
      ],
    },
    weldRows(showing, live),
  );
