import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A job as kept on this device: its text as `core/job/write.ts` gives it, so that older versions are migrated on reading. */
export interface Kept {
  readonly key: string;
  readonly name: string;
  readonly text: string;
  /** Counts the saves; a second tab that saved in between is seen by it. */
  readonly turn: number;
  readonly savedAt: string;
  /** When a copy last left this device, and with how many records; null when none has. */
  readonly copy: { readonly at: string; readonly records: number } | null;
}

interface Shelf extends DBSchema {
  jobs: { key: string; value: Kept };
  marks: { key: string; value: string };
}

/** Jobs kept on this device, and which was open last. */
export interface Keep {
  readonly list: () => Promise<readonly Kept[]>;
  readonly load: (key: string) => Promise<Kept | undefined>;
  /** The job that was open last. */
  readonly latest: () => Promise<Kept | undefined>;
  /**
   * Saves if the kept version is the one this was made from (`turn`, 0 for a new job), and marks it as open.
   * Otherwise another tab saved in between: nothing is overwritten, and that version is given back.
   */
  readonly save: (kept: Kept) => Promise<{ kind: 'saved' } | { kind: 'otherVersion'; other: Kept }>;
  readonly remove: (key: string) => Promise<void>;
  readonly close: () => void;
}

export const openKeep = async (name = 'tubewright'): Promise<Keep> => {
  const shelf: IDBPDatabase<Shelf> = await openDB<Shelf>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('jobs', { keyPath: 'key' });
      fresh.createObjectStore('marks');
    },
  });
  return {
    list: async () =>
      (await shelf.getAll('jobs')).sort((a, b) =>
        a.savedAt < b.savedAt ? 1 : a.savedAt > b.savedAt ? -1 : 0,
      ),
    load: (key) => shelf.get('jobs', key),
    latest: async () => {
      const key = await shelf.get('marks', 'latest');
      return key === undefined ? undefined : shelf.get('jobs', key);
    },
    save: async (kept) => {
      const change = shelf.transaction(['jobs', 'marks'], 'readwrite');
      const jobs = change.objectStore('jobs');
      const there = await jobs.get(kept.key);
      if (there && there.turn !== kept.turn - 1) {
        await change.done;
        return { kind: 'otherVersion', other: there };
      }
      await jobs.put(kept);
      await change.objectStore('marks').put(kept.key, 'latest');
      await change.done;
      return { kind: 'saved' };
    },
    remove: (key) => shelf.delete('jobs', key),
    close: () => shelf.close(),
  };
};
