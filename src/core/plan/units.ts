import type { Choice } from '../job/jobSchema.ts';
import { membersAt } from '../loadPath/hops.ts';
import type { Truss } from '../truss/result.ts';
import type { Coverage, Mark } from '../walkRound/result.ts';

/** How a repair is worked: bent back where it is, laid over the tube, or the tube cut open. */
export type Way = 'bend' | 'cover' | 'open';

const wayOf = {
  straighten: 'bend',
  roundOut: 'bend',
  patch: 'cover',
  splitSleeve: 'cover',
  fingerPlate: 'cover',
  splice: 'open',
  replace: 'open',
  rebuild: 'open',
  refer: null,
} as const satisfies Record<Choice, Way | null>;

/** One decided repair: a member, or a whole cluster. */
export interface WorkUnit {
  readonly id: string;
  readonly kind: 'member' | 'cluster';
  readonly choice: Choice;
  readonly way: Way;
  /** Bending that comes first; null: none. */
  readonly bend: 'straighten' | 'roundOut' | null;
  /** Tubes that are open while it is worked. */
  readonly opens: readonly string[];
  /** Clusters it touches. */
  readonly clusters: readonly string[];
  readonly bay: string;
  /** Held by bolts: it comes out without a saw and goes back without a torch. */
  readonly bolted: boolean;
}

/** The bay one stands in to work at a member or cluster: its own, else the bay of its station, else the last. */
export const bayOf = (truss: Truss, id: string): string => {
  const m = truss.members.find((one) => one.id === id);
  const label = m ? (m.bay ?? m.station) : truss.clusters.find((c) => c.id === id)?.station;
  if (truss.bays.some((b) => b.id === label)) return label!;
  return truss.bays.find((b) => b.aft === label)?.id ?? truss.bays.at(-1)?.id ?? '';
};

const bendOf = (mark: Mark, way: Way): WorkUnit['bend'] => {
  if (mark.choice === 'roundOut') return 'roundOut';
  if (mark.choice === 'straighten') return 'straighten';
  if (way !== 'cover' || mark.kind === 'cluster') return null;
  if (mark.damage.some((d) => d === 'bow' || d === 'kink')) return 'straighten';
  return mark.damage.includes('oval') ? 'roundOut' : null;
};

/** Every decided repair that there are steps for, in the truss's order. Clusters last: their tubes may have their own. */
export const workUnits = (truss: Truss, coverage: Coverage): readonly WorkUnit[] => {
  const at = membersAt(truss);
  const ends = new Map(truss.members.map((m) => [m.id, [m.from, m.to]]));
  const bolts = new Set(truss.members.filter((m) => m.bolted).map((m) => m.id));
  return coverage.marks.flatMap((mark): WorkUnit[] => {
    const way = mark.choice ? wayOf[mark.choice] : null;
    if (!mark.choice || !way) return [];
    // A cluster is not bent back.
    if (mark.kind === 'cluster' && way === 'bend') return [];
    const members = mark.kind === 'member' ? [mark.id] : (at.get(mark.id) ?? []);
    return [
      {
        id: mark.id,
        kind: mark.kind,
        choice: mark.choice,
        way,
        bend: bendOf(mark, way),
        opens: way === 'open' ? [...members].sort() : [],
        clusters:
          mark.kind === 'member'
            ? ends.get(mark.id)!
            : [mark.id, ...members.flatMap((id) => ends.get(id)!)].filter(
                (c, i, all) => all.indexOf(c) === i,
              ),
        bay: bayOf(truss, mark.id),
        bolted: bolts.has(mark.id),
      },
    ];
  });
};
