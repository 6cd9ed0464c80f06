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

/** An earlier state of a kept job. */
export type RestorePoint = Pick<Kept, 'key' | 'name' | 'text' | 'savedAt'>;

interface Shelf extends DBSchema {
  jobs: { key: string; value: Kept };
  marks: { key: string; value: string };
  photos: { key: string; value: Uint8Array };
  points: { key: [string, string]; value: RestorePoint };
}

/** How many earlier states of a job are kept, and how far apart they are. */
export const POINTS = 20;
export const POINT_EVERY_MS = 5 * 60_000;

/** Jobs kept on this device with their photos and earlier states, and which was open last. */
export interface Keep {
  readonly list: () => Promise<readonly Kept[]>;
  readonly load: (key: string) => Promise<Kept | undefined>;
  /** The job that was open last. */
  readonly latest: () => Promise<Kept | undefined>;
  /**
   * Saves if the kept version is the one this was made from (`turn`, 0 for a new job), and marks it as open.
   * Otherwise another tab saved in between: nothing is overwritten, and that version is given back.
   * Every few minutes, or when asked, what stood before is kept as a restore point.
   */
  readonly save: (
    kept: Kept,
    point?: 'whenDue' | 'now',
  ) => Promise<{ kind: 'saved' } | { kind: 'otherVersion'; other: Kept }>;
  /** Earlier states, the latest first. */
  readonly points: (key: string) => Promise<readonly RestorePoint[]>;
  /** Removes a job, its earlier states, and the photos that no other job here shows. */
  readonly remove: (key: string) => Promise<void>;
  readonly putPhoto: (hash: string, bytes: Uint8Array) => Promise<void>;
  readonly photo: (hash: string) => Promise<Uint8Array | undefined>;
  readonly close: () => void;
}

/** Every field of its kind, however damaged what was kept is: its text can then still be handed out. */
const sound = (value: Kept): Kept => ({
  ...value,
  name: typeof value.name === 'string' ? value.name : 'unnamed',
  text: typeof value.text === 'string' ? value.text : String(JSON.stringify(value)),
  turn: Number.isInteger(value.turn) ? value.turn : 0,
  savedAt: typeof value.savedAt === 'string' ? value.savedAt : '',
  copy: typeof value.copy?.at === 'string' && Number.isInteger(value.copy.records) ? value.copy : null,
});

const later = (a: { readonly savedAt: string }, b: { readonly savedAt: string }): number =>
  a.savedAt < b.savedAt ? 1 : a.savedAt > b.savedAt ? -1 : 0;

const allOf = (key: string): IDBKeyRange => IDBKeyRange.bound([key, ''], [key, '\uffff']);
const strict = { durability: 'strict' } as const;

const opened = (name: string): Promise<IDBPDatabase<Shelf>> =>
  new Promise((give, fail) => {
    const open = openDB<Shelf>(name, 2, {
      upgrade(shelf, from) {
        if (from < 1) {
          shelf.createObjectStore('jobs', { keyPath: 'key' });
          shelf.createObjectStore('marks');
        }
        shelf.createObjectStore('photos');
        shelf.createObjectStore('points', { keyPath: ['key', 'savedAt'] });
      },
      blocked: () => fail(new Error('another tab holds an older version of it; close that tab')),
      // A tab with a newer program wants it: what is open here then says that it cannot be saved.
      blocking: (_, __, event) => (event.target as IDBDatabase).close(),
    });
    open.then(give, fail);
  });

export const openKeep = async (name = 'tubewright'): Promise<Keep> => {
  const shelf = await opened(name);

  const save = async (kept: Kept, point: 'whenDue' | 'now' | 'never') => {
    const change = shelf.transaction(['jobs', 'marks', 'points'], 'readwrite', strict);
    // A failed request already says why; the transaction would say it a second time to nobody.
    change.done.catch(() => {});
    const [jobs, points] = [change.objectStore('jobs'), change.objectStore('points')];
    const raw = await jobs.get(kept.key);
    const there = raw && sound(raw);
    if (there && there.turn !== kept.turn - 1) {
      await change.done;
      return { kind: 'otherVersion', other: there } as const;
    }
    if (there && point !== 'never') {
      const keys = await points.getAllKeys(allOf(kept.key));
      const last = keys.at(-1)?.[1];
      const due = last === undefined || Date.parse(kept.savedAt) - Date.parse(last) >= POINT_EVERY_MS;
      if (due || point === 'now') {
        const { key, name: called, text, savedAt } = there;
        await points.put({ key, name: called, text, savedAt });
        for (const old of keys.slice(0, Math.max(0, keys.length + 1 - POINTS))) await points.delete(old);
      }
    }
    await jobs.put(kept);
    await change.objectStore('marks').put(kept.key, 'latest');
    await change.done;
    return { kind: 'saved' } as const;
  };

  const remove = async (key: string): Promise<void> => {
    const change = shelf.transaction(['jobs', 'points', 'photos'], 'readwrite', strict);
    await change.objectStore('jobs').delete(key);
    await change.objectStore('points').delete(allOf(key));
    const left = [
      ...(await change.objectStore('jobs').getAll()),
      ...(await change.objectStore('points').getAll()),
    ];
    const photos = change.objectStore('photos');
    for (const hash of await photos.getAllKeys())
      if (!left.some(({ text }) => String(text).includes(hash))) await photos.delete(hash);
    await change.done;
  };

  return {
    list: async () => (await shelf.getAll('jobs')).map(sound).sort(later),
    load: async (key) => {
      const kept = await shelf.get('jobs', key);
      return kept && sound(kept);
    },
    latest: async () => {
      const key = await shelf.get('marks', 'latest');
      const kept = key === undefined ? undefined : await shelf.get('jobs', key);
      return kept && sound(kept);
    },
    save: async (kept, point = 'whenDue') => {
      try {
        return await save(kept, point);
      } catch (why) {
        if ((why as DOMException | null)?.name !== 'QuotaExceededError') throw why;
        // The device is full: earlier states give way to what is entered now.
        await shelf.clear('points');
        return save(kept, 'never');
      }
    },
    points: async (key) => (await shelf.getAll('points', allOf(key))).sort(later),
    remove,
    putPhoto: async (hash, bytes) => {
      const change = shelf.transaction('photos', 'readwrite', strict);
      await change.store.put(bytes, hash);
      await change.done;
    },
    photo: (hash) => shelf.get('photos', hash),
    close: () => shelf.close(),
  };
};
