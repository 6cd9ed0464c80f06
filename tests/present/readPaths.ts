import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Place = readonly [x: number, y: number];

/** Lines and words of a page as a second, independent reader sees them, mm from the paper's top left. */
export interface PathsOfPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: readonly (readonly Place[])[];
  readonly words: readonly { readonly text: string; readonly at: Place }[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM = 25.4 / 72;

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

/** pdfjs packs a path as: 0 move x y, 1 line x y, 2 curve of six, 4 close. */
const unpack = (
  data: Float32Array,
  place: (x: number, y: number) => Place,
): readonly (readonly Place[])[] => {
  const lines: Place[][] = [];
  for (let i = 0; i < data.length; ) {
    const op = data[i++];
    if (op === 0) lines.push([place(data[i++]!, data[i++]!)]);
    else if (op === 1) lines.at(-1)!.push(place(data[i++]!, data[i++]!));
    else if (op === 2) {
      lines.at(-1)!.push(place(data[i + 4]!, data[i + 5]!));
      i += 6;
    } else if (op === 4) lines.at(-1)!.push(lines.at(-1)![0]!);
    else throw new Error(`path operator ${op}`);
  }
  return lines;
};

/** Every line of every page of a PDF, through pdfjs, which shares no code with the writer. */
export const readPaths = async (bytes: Uint8Array): Promise<readonly PathsOfPage[]> => {
  const loading = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await loading.promise;
  const pages: PathsOfPage[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const [x0, y0, x1, y1] = page.view as [number, number, number, number];
    const { fnArray, argsArray } = await page.getOperatorList();
    let now: Matrix = [1, 0, 0, 1, 0, 0];
    const kept: Matrix[] = [];
    const lines: (readonly Place[])[] = [];
    const toPaper = (x: number, y: number): Place => [(x - x0) * MM, (y1 - y) * MM];
    for (const [k, fn] of fnArray.entries()) {
      if (fn === OPS.save) kept.push(now);
      else if (fn === OPS.restore) now = kept.pop()!;
      else if (fn === OPS.transform) now = times(now, argsArray[k] as unknown as Matrix);
      else if (fn === OPS.constructPath) {
        const [a, b, c, d, e, f] = now;
        const data = argsArray[k][1][0] as Float32Array;
        lines.push(...unpack(data, (x, y) => toPaper(a * x + c * y + e, b * x + d * y + f)));
      }
    }
    const content = await page.getTextContent();
    const words = content.items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, at: toPaper(item.transform[4] as number, item.transform[5] as number) }]
        : [],
    );
    pages.push({ widthMm: (x1 - x0) * MM, heightMm: (y1 - y0) * MM, lines, words });
  }
  await loading.destroy();
  return pages;
};
