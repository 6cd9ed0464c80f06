import type { RecordOf } from '../../../src/core/job/jobSchema.ts';
import type { Wish } from '../../../src/core/splice/design.ts';
import { type BenchTube, benchPiece } from '../../../src/core/splice/piece.ts';
import type { Design, Method, Piece } from '../../../src/core/splice/result.ts';
import { designsOf } from '../../../src/core/splice/splice.ts';

/** A 1 in × .035 tube, 30 in weld to weld, hurt in the middle; change what a test is about. */
export const bench = (change: Partial<BenchTube> = {}): Piece =>
  benchPiece({
    tube: { odIn: 1, wallIn: 0.035 },
    betweenClustersIn: 30,
    damageFromIn: 14,
    damageToIn: 16,
    ...change,
  });

export const designOf = (
  piece: Piece,
  method: Method,
  wish: Wish = {},
  manual: readonly RecordOf<'manual'>[] = [],
): Design => designsOf(piece, wish, manual).find((d) => d.method === method)!;

export const manual = (topic: string, more: Partial<RecordOf<'manual'>> = {}): RecordOf<'manual'> => ({
  kind: 'manual',
  id: `m-${topic}`,
  by: 'Mira Tannahill',
  at: '2026-03-02T08:00:00Z',
  device: 'tablet-a',
  topic,
  source: 'Invented sheet 7',
  ...more,
});
