import type { RecordOf } from '../../core/job/jobSchema.ts';
import type { Standing } from '../../core/job/standing.ts';
import { fixed, showFigure, showLength, showTime, showTube } from '../show.ts';
import { byId, type Showing } from '../tables/showing.ts';
import { choiceWords } from '../tags.ts';
import { reasonSource } from '../words/disposition.ts';
import { clusterWords, listWords, memberLine } from '../words/names.ts';
import { methodWords } from '../words/record.ts';
import { methodNames } from '../words/splice.ts';

/**
 * What an entry in the maintenance record must hold, as a superset of the published lists; `null`: nobody has entered it.
 * Source: 14 CFR 43.9(a)(1) to (4); 43.11 does not apply. Wording of the fields ours; name, number and signature are left blank.
 */
export const entryFields = [
  'what',
  'where',
  'tube',
  'proof',
  'process',
  'data',
  'checks',
  'began',
  'completed',
  'doers',
  'weight',
] as const;
export type EntryField = (typeof entryFields)[number];

export const entryFieldWords = {
  what: 'Work done',
  where: 'Where',
  tube: 'Tube and material',
  proof: 'Proof of material and size',
  process: 'Process and filler',
  data: 'Data used',
  checks: 'Checks done',
  began: 'Work began',
  completed: 'Work completed',
  doers: 'Done by, as ticked',
  weight: 'Change of weight and moment',
} as const satisfies Record<EntryField, string>;

/** What a person writes and signs; never filled in here. */
export const signedByHand = [
  'Name of the person who did the work, when not the one who signs',
  'Signature of the person who takes responsibility for the work',
  'Licence number and kind of licence held',
  'Date of the signature',
] as const;

export interface Entry {
  readonly of: string;
  readonly fields: Readonly<Record<EntryField, string | null>>;
  /** Fields that nobody has entered yet, in words. */
  readonly missing: readonly string[];
}

type Progress = RecordOf<'progress'>;

const place = (at: readonly [number, number, number], units: Showing['units']): string =>
  `station ${showLength(at[0], units)}, butt line ${showLength(at[1], units)}, water line ${showLength(at[2], units)}`;

const checksOf = (mine: readonly Progress[]): string | null => {
  const looked = mine.flatMap(({ inspected }) =>
    inspected
      ? [`${methodWords[inspected.method]}: ${inspected.result === 'clear' ? 'no crack seen' : 'crack'}`]
      : [],
  );
  const fits = mine.some(({ fitUp }) => fitUp) ? ['fit-up written down before tacking'] : [];
  const all = [...new Set([...looked, ...fits])];
  return all.length > 0 ? all.join('; ') : null;
};

/** Draft of the entry for every decided repair: what stands on the record, and what is missing, in words. */
export const entriesOf = (showing: Showing, live: Standing): readonly Entry[] => {
  const { assessment, units } = showing;
  const { truss, coverage, disposition, plan, takeoff } = assessment;
  const members = byId(truss.members);
  const clusters = byId(truss.clusters);
  const own = (topic: string): string | undefined => live.manual.findLast((m) => m.topic === topic)?.words;
  const welding = [own('weld-process'), own('weld-filler')].filter((words) => words !== undefined);
  return coverage.marks.flatMap((mark): Entry[] => {
    if (!mark.choice || mark.choice === 'refer') return [];
    const member = members.get(mark.id);
    const cluster = clusters.get(mark.id);
    const steps = new Set(plan.steps.filter((s) => s.of === mark.id).map((s) => s.id));
    const mine = live.progress.filter((p) => p.of === mark.id || steps.has(p.step));
    const done = mine.filter((p) => p.done);
    const open = plan.steps.filter((s) => s.of === mark.id && !s.done);
    const row = disposition.rows.find(({ id }) => id === mark.id);
    const option = row?.options.find(({ choice }) => choice === mark.choice);
    const sources = [...new Set((option?.reasons ?? []).map(reasonSource))].filter((s) => s !== '');
    const takes = takeoff.repairs.find((r) => r.member === mark.id);
    const weight = takeoff.ledger.rows.find((r) => r.member === mark.id);
    const method = takes?.method;
    const welds = done.length > 0 && takes !== undefined;
    const findings = coverage.findings.filter((f) => f.of === mark.id);
    const at = findings.flatMap((f) =>
      f.place ? [`${showLength(f.place.atIn, units)} from ${f.place.from}`] : [],
    );
    const fields: Record<EntryField, string | null> = {
      what: `${choiceWords[mark.choice]}${takes && method ? `, ${methodNames[method].toLowerCase()}` : ''}`,
      where: member
        ? [
            memberLine(member),
            ...(at.length > 0 ? [`damage at ${listWords(at)}`] : []),
            ...[member.from, member.to].map((id) => `${id}: ${place(clusters.get(id)!.at, units)}`),
          ].join('; ')
        : cluster
          ? `${clusterWords(cluster.id)}; ${place(cluster.at, units)}`
          : mark.id,
      tube: member ? `${showTube(member.section, units)} ${member.material}` : null,
      proof: mine.findLast(({ proof }) => proof !== undefined)?.proof ?? null,
      process: welding.length > 0 ? welding.join(', ') : takes || welds ? null : 'no weld',
      data: sources.length > 0 ? sources.join('; ') : null,
      checks: checksOf(mine),
      began: done[0] ? showTime(done[0].at) : null,
      completed: done.length > 0 && open.length === 0 ? showTime(done.at(-1)!.at) : null,
      doers: done.length > 0 ? [...new Set(done.map(({ by }) => by))].join(', ') : null,
      weight: weight
        ? `${showFigure(weight.addedLb, units)} at station ${showFigure(weight.armIn, units)}, ${fixed(weight.momentLbIn.value, 1)} lb-in`
        : takes
          ? null
          : 'none',
    };
    return [
      {
        of: mark.id,
        fields,
        missing: entryFields.filter((f) => fields[f] === null).map((f) => entryFieldWords[f].toLowerCase()),
      },
    ];
  });
};
