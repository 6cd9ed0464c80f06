import type { Issue } from '../core/base/issue.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { readJob } from '../core/job/read.ts';
import { writeJob } from '../core/job/write.ts';
import { showTime } from '../present/show.ts';
import { freshId } from './freshId.ts';
import { afterFrame } from './state/afterFrame.ts';
import { openJob, replaceJob, useJob } from './state/job.ts';
import { useSaved } from './state/saved.ts';
import { selectAll, setView } from './state/view.ts';
import { type Keep, type Kept, openKeep, type RestorePoint } from './storage/keep.ts';
import { refusalText, keepText as text } from './text/messages.ts';

/** Keeping: what ties the open job to this device's shelf. */

let shelf: Keep | undefined;
/** The kept version the open job stands on. */
let standsOn: Pick<Kept, 'key' | 'turn' | 'copy'> | null = null;
let waiting = false;
/** The browser refused the last time: what was said of it is taken back when it keeps again. */
let refusing = false;
let busy = false;
/** What stands on the shelf becomes a restore point with the next save, however young the last one is. */
let pointNow = false;

export const theShelf = (): Keep | undefined => shelf;

export const say = (message: string | null): void => useSaved.setState({ message });

/** Issues that came with reading, shown on the Start panel until another file is opened. */
export const tellIssues = (issues: readonly Issue[], name: string): void => {
  useSaved.setState({ readIssues: issues.map((issue) => ({ ...issue, file: name })) });
};

/** Why the browser will not keep something, in words for the names that browsers have for it. */
export const refusal = (why: unknown): string => {
  const name = (why as { readonly name?: string } | null)?.name ?? '';
  if (name === 'QuotaExceededError') return refusalText.full;
  if (name === 'SecurityError') return refusalText.off;
  if (name === 'UnknownError') return refusalText.unknown;
  if (name === 'InvalidStateError') return refusalText.closed;
  return why instanceof Error ? why.message : String(why);
};

const failed = (why: unknown): void => {
  refusing = true;
  useSaved.setState({
    state: 'failed',
    message: text.refuses(refusal(why)),
  });
};

const saveOnce = async (): Promise<void> => {
  const { job, key } = useJob.getState();
  if (!job || key === null) return;
  const at = new Date().toISOString();
  const base = standsOn?.key === key ? standsOn : { key, turn: 0, copy: null };
  const kept: Kept = {
    key,
    name: job.name,
    text: writeJob(job),
    turn: base.turn + 1,
    savedAt: at,
    copy: useSaved.getState().copy,
  };
  if (!shelf) throw new Error(refusalText.shut);
  const outcome = await shelf.save(kept, pointNow ? 'now' : 'whenDue');
  if (outcome.kind === 'otherVersion') {
    // Another tab saved this job in between: both stay, ours under a key and a name of its own.
    const ownKey = freshId();
    standsOn = { key: ownKey, turn: 0, copy: null };
    useJob.setState({ key: ownKey });
    say(text.otherTab(job.name));
    return saveOnce();
  }
  pointNow = false;
  standsOn = kept;
  // "Saved" is never said while a newer change still waits.
  useSaved.setState({ state: waiting ? 'saving' : 'saved', at });
};

/** Saves what is open now; a change that comes while saving is saved right after. */
export const save = async (): Promise<void> => {
  saving.drop();
  waiting = true;
  if (busy) return;
  busy = true;
  try {
    while (waiting) {
      waiting = false;
      useSaved.setState({ state: 'saving' });
      await saveOnce();
    }
    if (refusing) say(null);
    refusing = false;
  } catch (why) {
    failed(why);
  } finally {
    busy = false;
  }
};

const saving = afterFrame(() => void save());

/** Saves after the frame that shows the change; until then it is not called saved. */
const saveSoon = (): void => {
  waiting = true;
  if (useSaved.getState().state !== 'saving') useSaved.setState({ state: 'saving' });
  saving.soon();
};

/** Puts a job on the screen under a key, and the view back to its start. */
const show = (job: Job, kept: Pick<Kept, 'key' | 'turn' | 'copy'>, savedAt: string | null): void => {
  standsOn = kept;
  const copied = kept.copy === null ? [] : job.records.slice(0, kept.copy.records).map(({ id }) => id);
  useSaved.setState({
    state: savedAt === null ? 'nothing' : 'saved',
    at: savedAt,
    copy: kept.copy,
    message: null,
  });
  openJob(kept.key, job, new Set(copied));
  selectAll([]);
  setView({ apart: null, hidden: [], search: '' });
};

/** Starts a job under a new key and keeps it at once. */
export const startJob = (job: Job): void => {
  show(job, { key: freshId(), turn: 0, copy: null }, null);
  void save();
};

/** Opens a job kept on this device. */
export const openKept = async (key: string): Promise<boolean> => {
  const kept = await shelf?.load(key);
  return kept ? showKept(kept) : false;
};

const showKept = (kept: Kept): boolean => {
  const read = readJob(kept.text);
  tellIssues(read.issues, kept.name);
  if (!read.ok) {
    say(text.unreadable(kept.name));
    return false;
  }
  show(read.value, kept, kept.savedAt);
  return true;
};

/** The latest earlier state that can be read, as a job of its own, when what is kept now cannot. */
const showEarlier = async (kept: Kept): Promise<boolean> => {
  for (const point of (await shelf?.points(kept.key)) ?? []) {
    const read = readJob(point.text);
    if (!read.ok) continue;
    startJob(read.value);
    say(text.earlier(kept.name, showTime(point.savedAt)));
    return true;
  }
  return false;
};

export const keptJobs = async (): Promise<readonly Kept[]> => (shelf ? shelf.list() : []);

export const removeKept = async (key: string): Promise<void> => {
  await shelf?.remove(key);
};

/** Earlier states of the open job, the latest first. */
export const restorePoints = async (): Promise<readonly RestorePoint[]> => {
  const { key } = useJob.getState();
  return key === null || !shelf ? [] : shelf.points(key);
};

/** Puts another state of the open job in its place, as one change that undo takes back; what stood before is kept too. */
export const takeState = (job: Job, name: string): void => {
  pointNow = true;
  replaceJob(job, name);
};

export const restore = (point: RestorePoint): void => {
  const read = readJob(point.text);
  if (read.ok) takeState(read.value, text.backTo(showTime(point.savedAt)));
  else say(text.pointUnreadable(showTime(point.savedAt)));
};

/**
 * Opens the shelf, brings back the job that was open last, and keeps every change from then on.
 *
 * @param openFirst  opens something when there is nothing to bring back
 */
export const beginKeeping = async (openFirst: () => Promise<unknown>, shelfName?: string): Promise<void> => {
  let latest: Kept | undefined;
  let shut: unknown;
  try {
    shelf = await openKeep(shelfName);
    latest = await shelf.latest();
  } catch (why) {
    shut = why;
  }
  useJob.subscribe((now, before) => {
    if (now.job && now.job !== before.job && now.key === before.key) saveSoon();
  });
  if (latest && (showKept(latest) || (await showEarlier(latest)))) return;
  const said = useSaved.getState().message;
  await openFirst();
  if (shut !== undefined) failed(shut);
  else if (said !== null) say(said);
};
