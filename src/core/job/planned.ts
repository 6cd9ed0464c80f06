import { type Issue, issue, ok, type Result, refused } from '../base/issue.ts';
import type { Change, Tagging } from './change.ts';
import type { JobRecord, RecordKind } from './jobSchema.ts';
import { jsonText } from './jsonText.ts';
import { brief } from './schemaIssues.ts';
import { latestOf } from './stampOrder.ts';

/** A record to be, without its stamp. */
export type Entry = { readonly kind: RecordKind } & Readonly<Record<string, unknown>>;
type Planned = Result<readonly Entry[]>;
type Live = readonly JobRecord[];
type RecordChange = Exclude<Change, { readonly kind: 'renameJob' | 'setAircraft' }>;

const nothing = (at: string): Planned =>
  refused([issue('nothing-to-change', at, {}, 'choose-something-else')]);
const some = (entries: readonly Entry[]): Planned => (entries.length > 0 ? ok(entries) : nothing('of'));
const each = (ids: readonly string[], entry: (of: string) => Entry): Planned =>
  some([...new Set(ids)].map(entry));

/** The entry as a correction of what stands, where something does. */
const instead = (entry: Entry, stands: JobRecord | undefined): Entry =>
  stands ? { ...entry, replaces: stands.id } : entry;

const decideFor = (live: Live, ids: readonly string[], choice: string, reason?: string): Planned => {
  const decisions = live.filter((r) => r.kind === 'decision');
  return some(
    [...new Set(ids)].flatMap((of) => {
      const stands = latestOf(decisions.filter((d) => d.of === of));
      const same = stands?.choice === choice && (reason === undefined || stands.reason === reason);
      return same ? [] : [instead({ kind: 'decision', of, choice, reason }, stands)];
    }),
  );
};

const tagFor = (live: Live, ids: readonly string[], tagging: Tagging): Planned => {
  switch (tagging.tag) {
    case 'bent':
    case 'cracked': {
      const damage = tagging.tag === 'bent' ? 'bow' : 'crack';
      const counts = tagging.tag === 'bent' ? ['bow', 'kink'] : ['crack'];
      const already = new Set(
        live.flatMap((r) => (r.kind === 'finding' && counts.includes(r.damage) ? [r.of] : [])),
      );
      const fresh = ids.filter((of) => !already.has(of));
      return each(fresh, (of) => ({ kind: 'finding', damage, of, origin: tagging.origin ?? 'unknown' }));
    }
    case 'forReplacement':
      return decideFor(live, ids, 'replace', tagging.reason);
    case 'lookedAt':
    case 'lookAgain': {
      const { tag: state, method = 'eye', finishRemoved = false } = tagging;
      const note = tagging.tag === 'lookAgain' ? tagging.note : undefined;
      return each(ids, (of) => ({ kind: 'look', of, state, method, finishRemoved, note }));
    }
  }
};

const correction = (live: Live, id: string, entry: Entry): Planned => {
  const stands = live.find((r) => r.id === id);
  if (stands?.kind !== entry.kind) return refused([notStanding(id)]);
  return ok([instead(entry, stands)]);
};
const notStanding = (id: string): Issue =>
  issue('not-standing', 'id', { id: brief(id) }, 'look-at-what-stands');

/** The entry with all that it corrects, one after the other: out together, so that no earlier value comes back. */
const withdrawals = (all: Live, live: Live, ids: readonly string[], reason: string): Planned => {
  const standing = new Set(live.map((r) => r.id));
  const missing = ids.filter((id) => !standing.has(id));
  if (missing.length > 0) return refused(missing.map(notStanding));
  const byId = new Map(all.map((r) => [r.id, r]));
  const out = new Set<string>();
  for (const id of ids)
    for (
      let at: string | undefined = id;
      at !== undefined && byId.has(at) && !out.has(at);
      at = byId.get(at)?.replaces
    )
      out.add(at);
  return each([...out], (withdraws) => ({ kind: 'note', words: reason, withdraws }));
};

/**
 * The records a change adds.
 *
 * @param all  every record of the job
 * @param live  those that stand
 */
export const planned = (change: RecordChange, all: Live, live: Live): Planned => {
  switch (change.kind) {
    case 'tag':
      return tagFor(live, change.of, change);
    case 'decide':
      return decideFor(live, change.of, change.choice, change.reason);
    case 'addFinding':
      return ok([{ kind: 'finding', ...change.finding }]);
    case 'correctFinding':
      return correction(live, change.id, { kind: 'finding', ...change.finding });
    case 'addReading':
      return ok([{ kind: 'reading', ...change.reading }]);
    case 'correctReading':
      return correction(live, change.id, { kind: 'reading', ...change.reading });
    case 'setHeld':
      return ok([{ kind: 'held', ...change.held }]);
    case 'setArea':
      return ok([{ kind: 'area', ...change.area }]);
    case 'addManual':
      return ok([{ kind: 'manual', ...change.manual }]);
    case 'addPhoto':
      return ok([{ kind: 'photo', ...change.photo }]);
    case 'correctPhoto':
      return correction(live, change.id, { kind: 'photo', ...change.photo });
    case 'addRate':
      return ok([{ kind: 'rate', ...change.rate }]);
    case 'addProgress':
      return ok([{ kind: 'progress', ...change.progress }]);
    case 'note':
      return ok([{ kind: 'note', ...change.note }]);
    case 'setMishap': {
      const stands = latestOf(live.filter((r) => r.kind === 'mishap'));
      return ok([instead({ kind: 'mishap', ...change.mishap }, stands)]);
    }
    case 'amendModel': {
      const stands = latestOf(live.filter((r) => r.kind === 'model'));
      const same = stands !== undefined && jsonText(stands.model) === jsonText(change.model);
      return same ? nothing('model') : ok([instead({ kind: 'model', model: change.model }, stands)]);
    }
    case 'withdraw':
      return withdrawals(all, live, change.ids, change.reason);
    default:
      return change satisfies never;
  }
};
