import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as a second, independent reader sees it. */
export interface ReadPage {
  /** Box and turn as the file says, points and degrees. */
  readonly widthPt: number;
  readonly heightPt: number;
  readonly turn: number;
  /** Pieces of text as they were set, with where they stand when the page is read, points, y up. */
  readonly pieces: readonly { readonly text: string; readonly x: number; readonly y: number }[];
  /** All of it, pieces parted by spaces. */
  readonly text: string;
}

/** Reads a PDF with pdfjs, which shares no code with the writer. */
export const readPdf = async (bytes: Uint8Array): Promise<readonly ReadPage[]> => {
  const loading = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await loading.promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const [x0, y0, x1, y1] = page.view as [number, number, number, number];
    const content = await page.getTextContent();
    const pieces = content.items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: item.transform[4] as number, y: item.transform[5] as number }]
        : [],
    );
    pages.push({
      widthPt: x1 - x0,
      heightPt: y1 - y0,
      turn: page.rotate,
      pieces,
      text: pieces.map((piece) => piece.text).join(' '),
    });
  }
  await loading.destroy();
  return pages;
};
