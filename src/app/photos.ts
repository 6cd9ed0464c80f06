import type { Job, RecordOf } from '../core/job/jobSchema.ts';
import type { Photos } from '../present/backup.ts';
import { refusal, say, theShelf } from './jobs.ts';
import { photoRefusedText, refusalText } from './text/messages.ts';

/** Photos of this device, by the hash of their bytes. A record names a photo; the bytes are kept here. */

/** Photos of this visit that the browser would not keep: they can still be shown and handed out. */
const unkept = new Map<string, Uint8Array>();

/** Keeps photos; gives false, and says why, when this device would not. They are then held as long as the page. */
export const keepPhotos = async (photos: Photos): Promise<boolean> => {
  try {
    for (const [hash, bytes] of photos) {
      unkept.set(hash, bytes);
      const shelf = theShelf();
      if (!shelf) throw new Error(refusalText.shut);
      await shelf.putPhoto(hash, bytes);
      unkept.delete(hash);
    }
    return true;
  } catch (why) {
    say(photoRefusedText(refusal(why)));
    return false;
  }
};

export const photoBytes = async (hash: string): Promise<Uint8Array | undefined> =>
  unkept.get(hash) ?? (await theShelf()?.photo(hash));

/** Hashes of every photo that a job names, corrected and withdrawn records too: a copy loses nothing. */
const hashesOf = (job: Job): readonly string[] => [
  ...new Set(
    job.records.flatMap((record) => (record.kind === 'photo' ? [(record as RecordOf<'photo'>).hash] : [])),
  ),
];

/** The photos of a job that are on this device. */
export const photosOf = async (job: Job): Promise<Photos> => {
  const found = await Promise.all(hashesOf(job).map(async (hash) => [hash, await photoBytes(hash)] as const));
  return new Map(found.flatMap(([hash, bytes]) => (bytes ? [[hash, bytes] as const] : [])));
};
