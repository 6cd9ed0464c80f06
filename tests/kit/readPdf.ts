import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** The text of every page, read by a second PDF reader that shares nothing with the writer. */
export const readPdf = async (bytes: Uint8Array): Promise<readonly string[]> => {
  const pdf = await getDocument({
    data: new Uint8Array(bytes),
    verbosity: VerbosityLevel.ERRORS,
    useSystemFonts: true,
  }).promise;
  const pages: string[] = [];
  for (let n = 1; n <= pdf.numPages; n++) {
    const { items } = await (await pdf.getPage(n)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  await pdf.destroy();
  return pages;
};
