import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { Unzip, UnzipInflate, zipSync } from 'fflate';
import { type Issue, issue, ok, type Result, refused } from '../core/base/issue.ts';

/** Photos by the SHA-256 of their bytes. */
export type Photos = ReadonlyMap<string, Uint8Array>;

/** A job and its photos as one archive holds them: the text is read by `core/job/read.ts`. */
export interface Backup {
  readonly text: string;
  readonly photos: Photos;
}

/** Above these an archive is none of ours: about 400 photos of 2 megapixels are 200 MB. */
export const MOST_ARCHIVE_BYTES = 400_000_000;
const MOST_BYTES = 600_000_000;
const MOST_ENTRY_BYTES = 60_000_000;
const MOST_ENTRIES = 5_000;
/** A sixteenth of a megabyte in can come out as 17 MB at most, so that a bomb is seen before it fills the memory. */
const PIECE = 16_384;

export const hashOf = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

/** The archive of a job and its photos. Equal jobs and photos give equal bytes. */
export const packBackup = ({ text, photos }: Backup): Uint8Array => {
  const job = new TextEncoder().encode(text);
  const sorted = [...photos].sort(([a], [b]) => (a < b ? -1 : 1));
  return zipSync(
    {
      'job.sha256': new TextEncoder().encode(hashOf(job)),
      'job.json': job,
      ...Object.fromEntries(
        sorted.map(([hash, bytes]) => [`photos/${hash}.jpg`, [bytes, { level: 0 }] as const]),
      ),
    },
    { mtime: '1980-01-01T00:00:00', level: 6 },
  );
};

export const isArchive = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

const tooLarge = (most: number): Issue =>
  issue('archive-too-large', '', { most }, 'choose-a-tubewright-file');
const damaged = issue('archive-damaged', '', {}, 'use-another-copy');

const joined = (pieces: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
};

/** What is in an archive, whatever it is called there. Sizes are held to both as declared and as they come out. */
const entriesOf = (bytes: Uint8Array): Result<readonly Uint8Array[]> => {
  if (bytes.length > MOST_ARCHIVE_BYTES) return refused([tooLarge(MOST_ARCHIVE_BYTES)]);
  const entries: Uint8Array[][] = [];
  let [total, ended] = [0, 0];
  let fault: Issue | undefined;
  const unzip = new Unzip((file) => {
    const pieces: Uint8Array[] = [];
    let size = 0;
    entries.push(pieces);
    if (entries.length > MOST_ENTRIES) fault = tooLarge(MOST_ENTRIES);
    if ((file.originalSize ?? 0) > MOST_ENTRY_BYTES) fault = tooLarge(MOST_ENTRY_BYTES);
    if (fault) return;
    file.ondata = (error, piece, last) => {
      if (error) fault ??= damaged;
      if (fault) return;
      size += piece.length;
      total += piece.length;
      if (size > MOST_ENTRY_BYTES || total > MOST_BYTES) fault = tooLarge(MOST_ENTRY_BYTES);
      else pieces.push(piece);
      if (last) ended += 1;
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && !fault; at += PIECE)
      unzip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
  } catch {
    fault ??= damaged;
  }
  if (!fault && ended < entries.length) fault = damaged;
  return fault ? refused([fault]) : ok(entries.map(joined));
};

const isPhoto = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8;
const isHash = (bytes: Uint8Array): boolean =>
  bytes.length === 64 && bytes.every((byte) => (byte >= 48 && byte <= 57) || (byte >= 97 && byte <= 102));

/**
 * The job text and the photos of an archive. What an entry is, is told by its bytes and never by its name; a photo is
 * known by its hash. A job text that is not the one the archive was made with is refused.
 */
export const unpackBackup = (bytes: Uint8Array): Result<Backup> => {
  const read = entriesOf(bytes);
  if (!read.ok) return read;
  const photos = new Map(read.value.filter(isPhoto).map((photo) => [hashOf(photo), photo]));
  const hashes = read.value.filter(isHash).map((hash) => new TextDecoder().decode(hash));
  const texts = read.value.filter((entry) => entry.length > 0 && !isPhoto(entry) && !isHash(entry));
  const [text] = texts;
  if (!text) return refused([issue('archive-without-job', '', {}, 'choose-a-tubewright-file')]);
  if (texts.length > 1)
    return refused([issue('archive-with-several', '', { got: texts.length }, 'choose-a-tubewright-file')]);
  if (hashes.length > 0 && !hashes.includes(hashOf(text))) return refused([damaged]);
  return ok({ text: new TextDecoder().decode(text), photos });
};
