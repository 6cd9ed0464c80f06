/** Opening by the browser's own picker, dropping, and saving by download. Nothing leaves the device otherwise. */

/** Above this a file is no job of this program; reading it whole would only stall the page. */
export const LARGEST_BYTES = 40_000_000;

export interface FileText {
  readonly name: string;
  readonly text: string;
}

export type Opened =
  | ({ readonly kind: 'text' } & FileText)
  | { readonly kind: 'tooLarge'; readonly name: string; readonly bytes: number }
  | { readonly kind: 'unreadable'; readonly name: string };

export const readFile = async (file: File): Promise<Opened> => {
  if (file.size > LARGEST_BYTES) return { kind: 'tooLarge', name: file.name, bytes: file.size };
  try {
    return { kind: 'text', name: file.name, text: await file.text() };
  } catch {
    return { kind: 'unreadable', name: file.name };
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
