import type { RecordOf } from '../../core/job/jobSchema.ts';
import type { Standing } from '../../core/job/standing.ts';
import { fixed, showFigure, showLength, showTime, showTube } from '../show.ts';
import { byId, type Showing } from '../tables/showing.ts';
import { jointWords, type WeldRow, weldResultWords, weldRows } from '../tables/welds.ts';
import { choiceWords } from '../tags.ts';
import { reasonSource } from '../words/disposition.ts';
import { clusterWords, listWords, memberLine } from '../words/names.ts';
import { methodWords } from '../words/record.ts';
import { methodNames } from '../words/splice.ts';

/** One field of an entry: its words, and the published list that asks for it. */
export interface FieldAsked {
  readonly words: string;
  readonly source: string;
}

export const ourOwn = 'common practice, no source';

/**
 * What an entry in the maintenance record must hold, as a superset of the published lists; `null`: nobody has entered it.
 * Source: 14 CFR 43.9(a)(1) to (4); AC 43-9C, 5/8/18, on its wording; items 1 and 8 of FAA Form 337 (AC 43.9-1G, 11/1/19) for a
 * major repair. 14 CFR 43.11 is for inspections and does not apply; its total time is asked for all the same, by hand.
 */
export const entryFieldsAsked = {
  aircraft: {
    words: 'Aircraft, as entered',
    source: 'AC 43.9-1G, Form 337 item 1: make, model, serial number, mark',
  },
  what: { words: 'Work done', source: '14 CFR 43.9(a)(1): a description of work performed' },
  where: { words: 'Where', source: 'AC 43.9-1G, Form 337 item 8: the place of the repair on the aircraft' },
  tube: { words: 'Tube and material', source: ourOwn },
  proof: { words: 'Proof of material and size', source: ourOwn },
  process: { words: 'Process and filler', source: ourOwn },
  data: { words: 'Data used', source: '14 CFR 43.9(a)(1): or reference to data; Form 337 item 8' },
  checks: { words: 'Checks done', source: ourOwn },
  began: { words: 'Work began', source: ourOwn },
  completed: { words: 'Work completed', source: '14 CFR 43.9(a)(2): the date of completion of the work' },
  doers: {
    words: 'Done by, as ticked',
    source: '14 CFR 43.9(a)(3): the name of the person performing the work',
  },
  weight: {
    words: 'Change of weight and moment',
    source: 'FAA-G-8082-19: weight and balance data revised when appropriate, and said so on Form 337',
  },
} as const satisfies Record<string, FieldAsked>;
export type EntryField = keyof typeof entryFieldsAsked;
export const entryFields = Object.keys(entryFieldsAsked) as readonly EntryField[];

/** What a person writes and signs; never filled in here. */
export const byHandAsked: readonly FieldAsked[] = [
  { words: 'Owner: name and address', source: 'AC 43.9-1G, Form 337 item 2' },
  { words: 'Total time in service', source: '14 CFR 43.11(a)(2), for inspections; 14 CFR 91.417(a)(2)(i)' },
  {
    words: 'Seen before it was covered, by whom, date',
    source: 'AC 43.9-1G, Form 337 item 8, pre-cover inspection; from memory',
  },
  {
    words: 'Name of the person who did the work, when not the one who signs',
    source: '14 CFR 43.9(a)(3)',
  },
  {
    words: 'Signature of the person who takes responsibility for the work',
    source: '14 CFR 43.9(a)(4)',
  },
  { words: 'Licence number and kind of licence held', source: '14 CFR 43.9(a)(4)' },
  { words: 'Agency: name, address, kind, number', source: 'AC 43.9-1G, Form 337 item 6' },
  { words: 'Date of the signature', source: 'AC 43.9-1G, Form 337 items 6 and 7' },
];

export interface Entry {
  readonly of: string;
  readonly fields: Readonly<Record<EntryField, string | null>>;
  /** Fields that nobody has entered yet, in words. */
  readonly missing: readonly string[];
}

type Progress = RecordOf<'progress'>;

const blank = (words: string | undefined): string | null => (words?.trim() ? words.trim() : null);

/** Process and filler of every weld of a repair; null while one of them has neither of its own nor of the job. */
const processOf = (welds: readonly WeldRow[]): string | null => {
  if (welds.length === 0) return 'no weld';
  if (welds.some(({ process, filler }) => process === null || filler === null)) return null;
  const said = welds.map((weld) => `${weld.process}, ${weld.filler}`);
  return new Set(said).size === 1
    ? said[0]!
    : welds.map((weld, k) => `${jointWords(weld)}: ${said[k]}`).join('; ');
};

const place = (at: readonly [number, number, number], units: Showing['units']): string =>
  `station ${showLength(at[0], units)}, butt line ${showLength(at[1], units)}, water line ${showLength(at[2], units)}`;

const checksOf = (mine: readonly Progress[], welds: readonly WeldRow[]): string | null => {
  const looked = mine.flatMap(({ inspected }) =>
    inspected ? [`${methodWords[inspected.method]}: ${weldResultWords[inspected.result]}`] : [],
  );
  const welded = mine.flatMap(({ weld }) =>
    weld?.method && weld.result
      ? [`weld ${weld.joint ?? 'all round'}, ${methodWords[weld.method]}: ${weldResultWords[weld.result]}`]
      : [],
  );
  const unseen = welds.flatMap((weld) =>
    weld.farSide === 'notSeen' ? [`far side of the weld ${jointWords(weld)} could not be seen`] : [],
  );
  const fits = mine.some(({ fitUp }) => fitUp) ? ['fit-up written down before tacking'] : [];
  const all = [...new Set([...looked, ...welded, ...unseen, ...fits])];
  return all.length > 0 ? all.join('; ') : null;
};

/** Draft of the entry for every decided repair: what stands on the record, and what is missing, in words. */
export const entriesOf = (showing: Showing, live: Standing): readonly Entry[] => {
  const { assessment, job, units } = showing;
  const { truss, coverage, disposition, plan, takeoff } = assessment;
  const members = byId(truss.members);
  const clusters = byId(truss.clusters);
  const welds = weldRows(showing, live);
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
    const findings = coverage.findings.filter((f) => f.of === mark.id);
    const at = findings.flatMap((f) =>
      f.place ? [`${showLength(f.place.atIn, units)} from ${f.place.from}`] : [],
    );
    const fields: Record<EntryField, string | null> = {
      aircraft: blank(job.aircraft),
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
      process: processOf(welds.filter((weld) => weld.of === mark.id)),
      data: sources.length > 0 ? sources.join('; ') : null,
      checks: checksOf(
        mine,
        welds.filter((weld) => weld.of === mark.id),
      ),
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
        missing: entryFields
          .filter((f) => fields[f] === null)
          .map((f) => entryFieldsAsked[f].words.toLowerCase()),
      },
    ];
  });
};
