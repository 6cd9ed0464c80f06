/** Opening by the browser's own picker, dropping, and saving by download. Nothing leaves the device otherwise. */

/** Above these a file is no job of this program; reading it whole would only stall the page. */
export const LARGEST_BYTES = 40_000_000;
export const LARGEST_ARCHIVE_BYTES = 400_000_000;

export type Opened =
  | { readonly kind: 'text'; readonly name: string; readonly text: string }
  | { readonly kind: 'archive'; readonly name: string; readonly bytes: Uint8Array }
  | { readonly kind: 'tooLarge'; readonly name: string; readonly bytes: number }
  | { readonly kind: 'unreadable'; readonly name: string };

/** The four bytes that every zip archive begins with. */
const zipBegins = [0x50, 0x4b, 3, 4];

export const readFile = async (file: File): Promise<Opened> => {
  const { name, size } = file;
  try {
    const head = new Uint8Array(await file.slice(0, 4).arrayBuffer());
    const archive = zipBegins.every((byte, i) => head[i] === byte);
    if (size > (archive ? LARGEST_ARCHIVE_BYTES : LARGEST_BYTES))
      return { kind: 'tooLarge', name, bytes: size };
    return archive
      ? { kind: 'archive', name, bytes: new Uint8Array(await file.arrayBuffer()) }
      : { kind: 'text', name, text: await file.text() };
  } catch {
    return { kind: 'unreadable', name };
  }
};

/** Hands a file to the browser's download. */
export const saveFile = (name: string, data: string | Uint8Array<ArrayBuffer>, type: string): void => {
  const address = URL.createObjectURL(new Blob([data], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has its own hold on the bytes after a while; at once would cut it off in some browsers.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

/** A file name of plain letters made from a job's name. */
export const fileName = (jobName: string, ending: string): string =>
  `${
    jobName
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'job'
  }${ending}`;
