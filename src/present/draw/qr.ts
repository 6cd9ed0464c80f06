import { encode } from 'uqr';
import { ink, type Ops, path, type Step } from './pen.ts';

/** Modules of white around a code. Source: ISO/IEC 18004, quiet zone of a QR code: 4. */
const QUIET = 4;

/** The modules of a QR code of a text, dark ones true, its quiet zone not in it. Recovery of 15 % (level M) or better. */
export const qrModules = (text: string): readonly (readonly boolean[])[] =>
  encode(text, { ecc: 'M', boostEcc: true, border: 0 }).data;

/** A QR code as vectors in a square, quiet zone in it: one filled shape, a bar for each run of dark modules. */
export const qrOps = (text: string, x: number, y: number, sizeMm: number): Ops => {
  const rows = qrModules(text);
  const module = sizeMm / (rows.length + 2 * QUIET);
  const steps = rows.flatMap((row, r): readonly Step[] =>
    row.flatMap((dark, c): readonly Step[] => {
      if (!dark || row[c - 1]) return [];
      let end = c;
      while (row[end]) end++;
      const [left, right] = [x + (QUIET + c) * module, x + (QUIET + end) * module];
      const [top, bottom] = [y + (QUIET + r) * module, y + (QUIET + r + 1) * module];
      return [
        ['move', left, top],
        ['line', right, top],
        ['line', right, bottom],
        ['line', left, bottom],
        ['close'],
      ];
    }),
  );
  return [path(steps, { fill: ink.line })];
};
