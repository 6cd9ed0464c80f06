import { type Fact, type Issue, issue } from '../base/issue.ts';
import { atRecord } from '../job/corrections.ts';
import type { Finding, Held, JobRecord, Mishap, Reading, RecordOf } from '../job/jobSchema.ts';
import { recordFaults } from '../job/recordFaults.ts';
import type { Member, Truss } from '../truss/result.ts';

/** The lists that name members, clusters and bays; a job's `Standing` is one, a stage may hand in its part. */
export interface Naming {
  readonly looks?: readonly RecordOf<'look'>[];
  readonly findings?: readonly Finding[];
  readonly decisions?: readonly RecordOf<'decision'>[];
  readonly areas?: readonly RecordOf<'area'>[];
  readonly readings?: readonly Reading[];
  readonly held?: readonly Held[];
  readonly mishap?: Mishap | undefined;
  readonly photos?: readonly RecordOf<'photo'>[];
  readonly notes?: readonly RecordOf<'note'>[];
}

interface Known {
  readonly members: ReadonlyMap<string, Member>;
  readonly clusters: ReadonlySet<string>;
  readonly bays: ReadonlySet<string>;
}
type Say = (code: string, path: string, facts: Readonly<Record<string, Fact>>, mend: string) => Issue;

/** A member typed from its other end, or in small letters, is most likely the one that was meant. */
const meant = (id: string, known: Known): Readonly<Record<string, string>> => {
  const upper = id.trim().toUpperCase();
  const turned = upper.split('-').reverse().join('-');
  const found = [upper, turned].find((guess) => known.members.has(guess) || known.clusters.has(guess));
  return found === undefined ? {} : { meant: found };
};

const unknownId = (id: string, path: string, known: Known, say: Say): readonly Issue[] =>
  known.members.has(id) || known.clusters.has(id)
    ? []
    : [say('unknown-id', path, { id, ...meant(id, known) }, 'name-one-of-the-truss')];

const unknownCluster = (id: string, path: string, known: Known, say: Say): readonly Issue[] =>
  known.clusters.has(id)
    ? []
    : [say('unknown-cluster', path, { id, ...meant(id, known) }, 'name-one-of-the-truss')];

const beyond = (
  got: number | undefined,
  most: number,
  path: string,
  of: string,
  say: Say,
): readonly Issue[] =>
  got === undefined || got <= most
    ? []
    : [say('beyond-member', path, { got, most, of }, 'measure-again-or-rename')];

const findingAgainst = (finding: Finding, known: Known, say: Say): readonly Issue[] => {
  const { damage, place, of } = finding;
  const member = known.members.get(of);
  if (!member) {
    const onTubesOnly = known.clusters.has(of) && (damage === 'bow' || damage === 'kink');
    return onTubesOnly ? [say('not-of-a-cluster', 'damage', { of, damage }, 'name-the-member')] : [];
  }
  const chord = damage === 'bow' || damage === 'kink' ? finding.chordIn : undefined;
  const od = member.section.odIn;
  const dent = damage === 'dent' ? finding : undefined;
  const widest = dent?.widthBy === 'across' ? od : Math.PI * od;
  return [
    ...(place && place.from !== member.from && place.from !== member.to
      ? [
          say(
            'place-not-from-its-end',
            'place.from',
            { id: place.from, ends: [member.from, member.to] },
            'name-an-end',
          ),
        ]
      : []),
    ...beyond(place?.atIn, member.lengthIn, 'place.atIn', of, say),
    ...beyond(chord, member.lengthIn, 'chordIn', of, say),
    ...(dent?.depthIn !== undefined && dent.depthIn > od
      ? [say('deeper-than-tube', 'depthIn', { got: dent.depthIn, most: od, of }, 'measure-again-or-rename')]
      : []),
    ...(dent?.widthIn !== undefined && dent.widthIn > widest
      ? [
          say(
            'wider-than-tube',
            'widthIn',
            { got: dent.widthIn, most: widest, of },
            'measure-again-or-rename',
          ),
        ]
      : []),
  ];
};

const readingAgainst = (reading: Reading, known: Known, say: Say): readonly Issue[] =>
  reading.ends.flatMap((end, i) => {
    const member = end.on === undefined ? undefined : known.members.get(end.on);
    return [
      ...unknownCluster(end.cluster, `ends[${i}].cluster`, known, say),
      ...(end.on !== undefined && !member
        ? [
            say(
              'unknown-member',
              `ends[${i}].on`,
              { id: end.on, ...meant(end.on, known) },
              'name-one-of-the-truss',
            ),
          ]
        : []),
      ...(member && member.from !== end.cluster && member.to !== end.cluster
        ? [
            say(
              'tube-not-at-cluster',
              `ends[${i}].on`,
              { id: member.id, cluster: end.cluster },
              'name-a-tube-there',
            ),
          ]
        : []),
      ...(member ? beyond(end.alongIn, member.lengthIn, `ends[${i}].alongIn`, member.id, say) : []),
    ];
  });

const heldAgainst = (held: Held, known: Known, say: Say): readonly Issue[] => [
  ...(held.held ?? []).flatMap(({ cluster }, i) => unknownCluster(cluster, `held[${i}].cluster`, known, say)),
  ...(held.braces ?? []).flatMap((brace, i) =>
    (['from', 'to'] as const).flatMap((end) => unknownCluster(brace[end], `braces[${i}].${end}`, known, say)),
  ),
];

/**
 * What the records say that the truss contradicts: unknown members, clusters and bays, places beyond a tube's end,
 * marks on a tube that does not reach the cluster; and what a record contradicts in itself. The records stay.
 */
export const checkAgainstTruss = (records: Naming, truss: Truss): readonly Issue[] => {
  const known: Known = {
    members: new Map(truss.members.map((m) => [m.id, m])),
    clusters: new Set(truss.clusters.map((c) => c.id)),
    bays: new Set([...truss.bays.map((b) => b.id), ...truss.faces.map((f) => f.bay)]),
  };
  const each = <R extends JobRecord>(
    list: readonly R[] | undefined,
    against: (record: R, known: Known, say: Say) => readonly Issue[],
  ): readonly Issue[] =>
    (list ?? []).flatMap((record) => {
      const say: Say = (code, path, facts, mend) =>
        issue(code, `${atRecord(record.id)}.${path}`, facts, mend);
      const own = recordFaults(record).map((fault) => say(fault.code, fault.at, fault.facts, fault.mend));
      return [...own, ...against(record, known, say)];
    });
  const named = (record: { readonly of?: string | undefined }, _: Known, say: Say): readonly Issue[] =>
    record.of === undefined ? [] : unknownId(record.of, 'of', known, say);
  return [
    ...each(records.looks, named),
    ...each(records.areas, ({ bay }, _, say) =>
      known.bays.has(bay) ? [] : [say('unknown-bay', 'bay', { bay }, 'name-one-of-the-truss')],
    ),
    ...each(records.findings, (f, _, say) => [...named(f, known, say), ...findingAgainst(f, known, say)]),
    ...each(records.readings, readingAgainst),
    ...each(records.decisions, named),
    ...each(records.held, heldAgainst),
    ...each(records.mishap ? [records.mishap] : [], ({ blow }, _, say) =>
      blow ? unknownCluster(blow.cluster, 'blow.cluster', known, say) : [],
    ),
    ...each(records.photos, named),
    ...each(records.notes, named),
  ];
};
