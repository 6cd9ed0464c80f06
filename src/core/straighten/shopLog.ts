import type { RecordOf } from '../job/jobSchema.ts';
import type { StraightEdge } from './axisFit.ts';

type Progress = RecordOf<'progress'>;
type Roundness = NonNullable<Progress['roundness']>;
type Inspected = NonNullable<Progress['inspected']>;
type PushEntry = NonNullable<Progress['push']>;

/** A thing that was logged, with its record. */
export interface Logged<T> {
  readonly record: string;
  readonly entry: T;
}

/** What was read and looked at between two pushes. */
export interface Epoch {
  readonly edges: readonly Logged<StraightEdge>[];
  readonly roundness: readonly Logged<Roundness>[];
  readonly inspected: readonly Logged<Inspected>[];
  readonly done?: { readonly record: string; readonly by: string };
}

/** A member's log at the bench: pushes in order, and what was read before the first, between them and after the last. */
export interface ShopLog {
  readonly pushes: readonly Logged<PushEntry>[];
  /** One more than pushes; the last is what stands now. */
  readonly epochs: readonly Epoch[];
}

const empty: Epoch = { edges: [], roundness: [], inspected: [] };

/** The step a member's shop records carry. */
export const stepOf = (member: string): string => `straighten:${member}`;

/** Reads one member's progress records, in their order. Readings in the record of a push were taken after it. */
export const shopLog = (progress: readonly Progress[], member: string): ShopLog => {
  const pushes: Logged<PushEntry>[] = [];
  const epochs: Epoch[] = [empty];
  for (const r of progress) {
    if (r.step !== stepOf(member)) continue;
    if (r.push) {
      pushes.push({ record: r.id, entry: r.push });
      epochs.push(empty);
    }
    const now = epochs.at(-1)!;
    const edges = (r.straightEdge ?? []).map((entry) => ({ record: r.id, entry }));
    epochs[epochs.length - 1] = {
      edges: [...now.edges, ...edges],
      roundness: [...now.roundness, ...(r.roundness ? [{ record: r.id, entry: r.roundness }] : [])],
      inspected: [...now.inspected, ...(r.inspected ? [{ record: r.id, entry: r.inspected }] : [])],
      ...(r.done ? { done: { record: r.id, by: r.by } } : now.done && { done: now.done }),
    };
  }
  return { pushes, epochs };
};
