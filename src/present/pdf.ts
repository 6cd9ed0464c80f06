import {
  appendBezierCurve,
  beginText,
  closePath,
  concatTransformationMatrix,
  degrees,
  drawObject,
  endText,
  fill,
  fillAndStroke,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFFont,
  type PDFImage,
  type PDFName,
  type PDFOperator,
  PDFString,
  popGraphicsState,
  pushGraphicsState,
  StandardFonts,
  setDashPattern,
  setFillingRgbColor,
  setFontAndSize,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingRgbColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib';
import type { Photos } from './backup.ts';
import { textWidth } from './draw/helvetica.ts';
import type { ImageOp, Op, PathOp, Step, TextOp } from './draw/pen.ts';
import type { Sheet } from './sheet/paper.ts';
import { winAnsi } from './winAnsi.ts';

/** What the file says of itself. No clock: the stamp is the latest record's. */
export interface PdfInfo {
  readonly title: string;
  readonly subject: string;
  /** ISO 8601, or none when there is no record yet. */
  readonly at?: string;
  readonly version: string;
}

const PT_PER_MM = 72 / 25.4;

const colour = (hex: string): readonly [number, number, number] => [
  Number.parseInt(hex.slice(1, 3), 16) / 255,
  Number.parseInt(hex.slice(3, 5), 16) / 255,
  Number.parseInt(hex.slice(5, 7), 16) / 255,
];

/** A micrometre is finer than any printer: fewer digits, smaller file. */
const r = (value: number): number => Math.round(value * 1000) / 1000 + 0;

const stepOperator = (step: Step): PDFOperator => {
  switch (step[0]) {
    case 'move':
      return moveTo(r(step[1]), r(step[2]));
    case 'line':
      return lineTo(r(step[1]), r(step[2]));
    case 'curve':
      return appendBezierCurve(r(step[1]), r(step[2]), r(step[3]), r(step[4]), r(step[5]), r(step[6]));
    case 'close':
      return closePath();
    default: {
      const never: never = step;
      return never;
    }
  }
};

const pathOperators = ({ steps, stroke: line, fill: ground }: PathOp): readonly PDFOperator[] => [
  ...(ground ? [setFillingRgbColor(...colour(ground))] : []),
  ...(line
    ? [
        setStrokingRgbColor(...colour(line.colour)),
        setLineWidth(r(line.widthMm)),
        setLineCap(line.cap === 'round' ? 1 : 0),
        setDashPattern((line.dashMm ?? []) as number[], 0),
      ]
    : []),
  ...steps.map(stepOperator),
  line && ground ? fillAndStroke() : line ? stroke() : fill(),
];

interface Fonts {
  readonly regular: { readonly name: PDFName; readonly font: PDFFont };
  readonly bold: { readonly name: PDFName; readonly font: PDFFont };
}

const textOperators = (op: TextOp, fonts: Fonts): readonly PDFOperator[] => {
  const { text } = winAnsi(op.text);
  if (text === '') return [];
  const { name, font } = fonts[op.weight];
  const width = op.align === 'left' ? 0 : textWidth(text, op.sizeMm, op.weight);
  const x = op.align === 'left' ? op.x : op.align === 'right' ? op.x - width : op.x - width / 2;
  return [
    setFillingRgbColor(...colour(op.colour)),
    beginText(),
    setFontAndSize(name, r(op.sizeMm)),
    setTextMatrix(1, 0, 0, -1, r(x), r(op.y)),
    showText(font.encodeText(text)),
    endText(),
  ];
};

/** A picture in its frame, upright although the sheet counts downwards. */
const imageOperators = ({ x, y, w, h }: ImageOp, name: PDFName): readonly PDFOperator[] => [
  pushGraphicsState(),
  concatTransformationMatrix(r(w), 0, 0, r(-h), r(x), r(y + h)),
  drawObject(name),
  popGraphicsState(),
];

const operators = (
  ops: readonly Op[],
  fonts: Fonts,
  nameOf: (hash: string) => PDFName,
): readonly PDFOperator[] =>
  ops.flatMap((op) => {
    if (op.kind === 'path') return pathOperators(op);
    return op.kind === 'text' ? textOperators(op, fonts) : imageOperators(op, nameOf(op.hash));
  });

/** `2026-03-14T09:05:00+01:00` → `D:20260314090500+01'00'` (ISO 32000-1, 7.9.4). */
const pdfDate = (at: string): string => {
  const m = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.\d+)?(Z|[+-]\d{2}:\d{2})$/.exec(at);
  if (!m) return 'D:20000101000000Z';
  const zone = m[7] === 'Z' ? 'Z' : `${m[7]!.slice(0, 3)}'${m[7]!.slice(4)}'`;
  return `D:${m.slice(1, 7).join('')}${zone}`;
};

/**
 * Sheets as a PDF, true to size. Every page is upright paper; a turned sheet is turned by the reader, so that paper sizes stay exact.
 * Same sheets, same bytes, in Node and in a browser: no clock, no chance, standard fonts only.
 */
export const pdfBytes = async (
  sheets: readonly Sheet[],
  info: PdfInfo,
  photos: Photos = new Map(),
): Promise<Uint8Array> => {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const [regular, bold] = [
    await pdf.embedFont(StandardFonts.Helvetica),
    await pdf.embedFont(StandardFonts.HelveticaBold),
  ];
  const { context } = pdf;
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: PDFString.of(winAnsi(info.title).text),
      Subject: PDFString.of(winAnsi(info.subject).text),
      Creator: PDFString.of(`Tubewright ${winAnsi(info.version).text}`),
      Producer: PDFString.of('Tubewright'),
      ...(info.at
        ? { CreationDate: PDFString.of(pdfDate(info.at)), ModDate: PDFString.of(pdfDate(info.at)) }
        : {}),
    }),
  );
  const images = new Map<string, PDFImage>();
  for (const op of sheets.flatMap(({ ops }) => ops)) {
    const bytes = op.kind === 'image' && !images.has(op.hash) && photos.get(op.hash);
    if (op.kind === 'image' && bytes) images.set(op.hash, await pdf.embedJpg(bytes));
  }
  const k = PT_PER_MM;
  for (const sheet of sheets) {
    const [w, h] = sheet.turned ? [sheet.heightMm, sheet.widthMm] : [sheet.widthMm, sheet.heightMm];
    const page = pdf.addPage([w * k, h * k]);
    const fonts: Fonts = {
      regular: { name: page.node.newFontDictionary('Regular', regular.ref), font: regular },
      bold: { name: page.node.newFontDictionary('Bold', bold.ref), font: bold },
    };
    if (sheet.turned) page.setRotation(degrees(90));
    page.pushOperators(
      pushGraphicsState(),
      // millimetres, y down; a turned sheet runs up the paper, and the reader turns it back
      sheet.turned
        ? concatTransformationMatrix(0, k, k, 0, 0, 0)
        : concatTransformationMatrix(k, 0, 0, -k, 0, h * k),
      setLineJoin(1),
      ...operators(sheet.ops, fonts, (hash) => page.node.newXObject('Photo', images.get(hash)!.ref)),
      popGraphicsState(),
    );
  }
  return pdf.save({ addDefaultPage: false, updateFieldAppearances: false });
};
