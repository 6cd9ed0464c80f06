import type { Issue } from '../core/base/issue.ts';
import { jobFromModel } from '../core/job/jobFromModel.ts';
import type { Job } from '../core/job/jobSchema.ts';
import { readAny, readJob } from '../core/job/read.ts';
import { writeJob } from '../core/job/write.ts';
import { issueSentence, mendSentence } from '../present/words/issues.ts';
import { freshId } from './freshId.ts';
import { noteCopied, openJob, useJob } from './state/job.ts';
import { usePrefs } from './state/prefs.ts';
import { useSaved } from './state/saved.ts';
import { selectAll, setView } from './state/view.ts';
import { fileName, type Opened, readFile, saveFile } from './storage/files.ts';
import { type Keep, type Kept, openKeep } from './storage/keep.ts';
import { drawReport } from './worker/drawReport.ts';

/** Opening, keeping and handing out jobs: what ties the open job to this device's shelf and to files. */

let shelf: Keep | undefined;
/** The kept version the open job stands on. */
let standsOn: Pick<Kept, 'key' | 'turn' | 'copy'> | null = null;
let waiting = false;
let busy = false;

const say = (message: string | null): void => useSaved.setState({ message });

/** Issues that came with reading, shown on the Start panel until another file is opened. */
const report = (issues: readonly Issue[], name: string): void => {
  useSaved.setState({ readIssues: issues.map((issue) => ({ ...issue, file: name })) });
};

const failed = (why: unknown): void => {
  const reason = why instanceof Error ? why.message : String(why);
  useSaved.setState({
    state: 'failed',
    message: `This browser refuses to keep the job on this device (${reason}). Save a copy as a file now.`,
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
  if (!shelf) throw new Error('its storage could not be opened');
  const outcome = await shelf.save(kept);
  if (outcome.kind === 'otherVersion') {
    // Another tab saved this job in between: both stay, ours under a key and a name of its own.
    const ownKey = freshId();
    standsOn = { key: ownKey, turn: 0, copy: null };
    useJob.setState({ key: ownKey });
    say(
      `Another tab changed "${job.name}" meanwhile. Both are kept; this is the second one on the Start list.`,
    );
    return saveOnce();
  }
  standsOn = kept;
  useSaved.setState({ state: 'saved', at });
};

/** Saves what is open now; a change that comes while saving is saved right after. */
export const save = async (): Promise<void> => {
  waiting = true;
  if (busy) return;
  busy = true;
  try {
    while (waiting) {
      waiting = false;
      useSaved.setState({ state: 'saving' });
      await saveOnce();
    }
  } catch (why) {
    failed(why);
  } finally {
    busy = false;
  }
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

/** The job in a text: a job, or a model as a job with nothing entered. A text that is neither leaves the open job alone. */
export const openText = (text: string, name: string, purpose?: Job['purpose']): boolean => {
  const read = readAny(text);
  report(read.issues, name);
  if (!read.ok) {
    say(
      `"${name}" was not opened: ${read.issues
        .slice(0, 2)
        .map((one) => `${issueSentence(one)} ${mendSentence(one)}`)
        .join(' ')} The open job is untouched.`,
    );
    return false;
  }
  startJob(
    read.value.kind === 'job'
      ? read.value.job
      : jobFromModel(read.value.model, read.value.model.name, purpose),
  );
  return true;
};

export const openFile = async (file: File): Promise<void> => {
  const opened: Opened = await readFile(file);
  switch (opened.kind) {
    case 'text':
      openText(opened.text, opened.name);
      return;
    case 'tooLarge':
      say(`"${opened.name}" was not opened: it is far too large for a job file. The open job is untouched.`);
      return;
    case 'unreadable':
      say(`"${opened.name}" was not opened: the browser cannot read it. The open job is untouched.`);
      return;
    default: {
      const never: never = opened;
      return never;
    }
  }
};

/** Opens the browser's own picker, from a key or a button. */
export const openFromPicker = (): void => {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = '.json,application/json';
  picker.onchange = () => {
    const file = picker.files?.[0];
    if (file) void openFile(file);
  };
  picker.click();
};

/** Opens a job kept on this device. */
export const openKept = async (key: string): Promise<boolean> => {
  const kept = await shelf?.load(key);
  return kept ? showKept(kept) : false;
};

const showKept = (kept: Kept): boolean => {
  const read = readJob(kept.text);
  report(read.issues, kept.name);
  if (!read.ok) {
    say(
      `"${kept.name}" as kept here cannot be read. It stays on the Start list; save it as a file and ask for help.`,
    );
    return false;
  }
  show(read.value, kept, kept.savedAt);
  return true;
};

export const keptJobs = async (): Promise<readonly Kept[]> => (shelf ? shelf.list() : []);

export const removeKept = async (key: string): Promise<void> => {
  await shelf?.remove(key);
};

/** A kept job as a file, even when it cannot be read here. */
export const saveKeptCopy = (kept: Kept): void =>
  saveFile(fileName(kept.name, '.tubewright.json'), kept.text, 'application/json');

/** Hands out the job as a file. From now on undo withdraws what the copy holds. */
export const saveCopy = (): void => {
  const { job } = useJob.getState();
  if (!job) return;
  saveFile(fileName(job.name, '.tubewright.json'), writeJob(job), 'application/json');
  noteCopied(job.records.map(({ id }) => id));
  useSaved.setState({ copy: { at: new Date().toISOString(), records: job.records.length } });
  void save();
};

export type ReportState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly stop: () => void }
  | { readonly kind: 'done'; readonly what: Paper }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly why: string };

export type Paper = 'pdf' | 'csv';

const types = { pdf: 'application/pdf', csv: 'text/csv' } as const satisfies Record<Paper, string>;

/** Draws the report of the open job and hands out its PDF or its tables; `tell` hears how it goes. */
export const saveReport = async (what: Paper, tell: (state: ReportState) => void): Promise<void> => {
  const { job } = useJob.getState();
  if (!job) return;
  const { units, paper } = usePrefs.getState();
  const drawing = drawReport(job, { units, paper });
  tell({ kind: 'working', stop: drawing.stop });
  try {
    const files = await drawing.files;
    for (const { name, bytes } of files ?? [])
      if (name.endsWith(`.${what}`)) saveFile(name, new Uint8Array(bytes), types[what]);
    tell(files ? { kind: 'done', what } : { kind: 'stopped' });
  } catch (why) {
    tell({ kind: 'failed', why: why instanceof Error ? why.message : String(why) });
  }
};

/** Opens the shelf, brings back the job that was open last, and keeps every change from then on. */
export const beginKeeping = async (first: () => Promise<string>, shelfName?: string): Promise<void> => {
  let latest: Kept | undefined;
  try {
    shelf = await openKeep(shelfName);
    latest = await shelf.latest();
  } catch (why) {
    failed(why);
  }
  useJob.subscribe((now, before) => {
    if (now.job && now.job !== before.job && now.key === before.key) void save();
  });
  if (latest && showKept(latest)) return;
  if (!latest) openText(await first(), 'demo job');
};
