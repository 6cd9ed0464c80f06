import type { Choice, Finding, JobRecord, Known, Look, RecordOf } from './jobSchema.ts';
import type { Model } from './modelSchema.ts';

type Stamped = 'kind' | 'id' | 'by' | 'at' | 'device' | 'replaces' | 'withdraws';

/** What a person enters of a record: all but its kind and its stamp. */
export type Draft<R extends JobRecord> = R extends unknown ? Omit<Known<R>, Stamped> : never;

/** Who, when, on which device; ids are handed in, so that core knows neither clock nor chance. */
export interface Stamp {
  readonly by: string;
  readonly at: string;
  readonly device: string;
  readonly newId: () => string;
}

/** Tags a person puts on several members or clusters at once. */
export type Tagging =
  /** A bow or a crack whose size is not given yet. */
  | { readonly tag: 'bent' | 'cracked'; readonly origin?: Finding['origin'] }
  | { readonly tag: 'forReplacement'; readonly reason?: string }
  | { readonly tag: 'lookedAt'; readonly method: Look['method']; readonly finishRemoved: boolean }
  /** By eye with the finish on, when nothing else is said: that takes nothing off any list. */
  | {
      readonly tag: 'lookAgain';
      readonly method?: Look['method'];
      readonly finishRemoved?: boolean;
      readonly note?: string;
    };

/** Everything a person can change in a job, as data. */
export type Change =
  | ({ readonly kind: 'tag'; readonly of: readonly string[] } & Tagging)
  | { readonly kind: 'addFinding'; readonly finding: Draft<Finding> }
  | { readonly kind: 'correctFinding'; readonly id: string; readonly finding: Draft<Finding> }
  | { readonly kind: 'addReading'; readonly reading: Draft<RecordOf<'reading'>> }
  | { readonly kind: 'correctReading'; readonly id: string; readonly reading: Draft<RecordOf<'reading'>> }
  /** The choice replaces the one that stands for the same member or cluster. */
  | {
      readonly kind: 'decide';
      readonly of: readonly string[];
      readonly choice: Choice;
      readonly reason?: string;
    }
  | { readonly kind: 'setHeld'; readonly held: Draft<RecordOf<'held'>> }
  | { readonly kind: 'setMishap'; readonly mishap: Draft<RecordOf<'mishap'>> }
  | { readonly kind: 'setArea'; readonly area: Draft<RecordOf<'area'>> }
  | { readonly kind: 'addManual'; readonly manual: Draft<RecordOf<'manual'>> }
  | { readonly kind: 'addPhoto'; readonly photo: Draft<RecordOf<'photo'>> }
  /** Other marks, another finding or another view of the same picture. */
  | { readonly kind: 'correctPhoto'; readonly id: string; readonly photo: Draft<RecordOf<'photo'>> }
  | { readonly kind: 'addRate'; readonly rate: Draft<RecordOf<'rate'>> }
  | { readonly kind: 'addProgress'; readonly progress: Draft<RecordOf<'progress'>> }
  | { readonly kind: 'note'; readonly note: Draft<RecordOf<'note'>> }
  | { readonly kind: 'amendModel'; readonly model: Model }
  /** Takes whole entries out: each record with every one that it corrects. */
  | { readonly kind: 'withdraw'; readonly ids: readonly string[]; readonly reason: string }
  | { readonly kind: 'renameJob'; readonly name: string }
  | { readonly kind: 'setAircraft'; readonly aircraft: string };

/** Stable names of changes; undo shows them, worded in `present/words.ts`. */
export type ChangeName = Exclude<Change['kind'], 'tag'> | Tagging['tag'];
