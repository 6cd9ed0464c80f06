import type { RecordOf } from '../job/jobSchema.ts';
import type { Cluster, Member } from '../truss/result.ts';
import { materialOf } from '../truss/stock.ts';
import type { Scope } from './result.ts';

/** Words that put a part outside the general weld rules, wherever a person wrote them. */
const words: Readonly<Record<Exclude<Scope, 'unknownMaterial' | 'otherScope'>, RegExp>> = {
  heatTreated: /heat[ -]?treat/i,
  brazed: /braz|solder/i,
  coldWorked: /cold[ -]?work/i,
  engineMountRing: /mount[ -]?ring/i,
  axle: /\baxle/i,
  streamline: /stream[ -]?line/i,
};

const inWords = (text: string): readonly Scope[] =>
  (Object.keys(words) as (keyof typeof words)[]).filter((scope) => words[scope].test(text));

/** The material ids of the stock list that are heat treated. */
const heatTreatedId = /^ht\d/;

/**
 * What closes the weld choices for a member or cluster: its material, the fitting at the cluster, and what the user says
 * (`manual`, topic `scope:ID`, in words: "heat treated", "brazed", "axle" …; other words close them as well, as the
 * user's own ground).
 */
export const scopeOf = (
  id: string,
  members: readonly Member[],
  cluster: Cluster | undefined,
  manual: readonly RecordOf<'manual'>[],
): readonly Scope[] => {
  const said = manual.filter((m) => m.topic === `scope:${id}`).map((m) => m.words ?? '');
  const found: readonly Scope[] = [
    ...members.flatMap((m): readonly Scope[] => {
      if (heatTreatedId.test(m.material)) return ['heatTreated'];
      return materialOf(m.material) ? [] : ['unknownMaterial'];
    }),
    ...inWords(cluster?.fitting ?? ''),
    ...said.flatMap((text) => {
      const known = inWords(text);
      return known.length > 0 ? known : (['otherScope'] as const);
    }),
  ];
  return [...new Set(found)];
};
