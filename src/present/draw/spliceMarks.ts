import { reachOf } from '../../core/splice/cut.ts';
import type { Design, Piece } from '../../core/splice/result.ts';

/** Where one saw cut, or the end of a sleeve, crosses a tube: from its `from` cluster point. */
export interface SpliceMark {
  readonly fromIn: number;
  readonly toIn: number;
  readonly what: 'cut' | 'sleeveEnd';
}

/** What a design does to the tube in the picture: its two cuts, else the ends of what lies over it. */
export const spliceMarks = (piece: Piece, { plan }: Pick<Design, 'plan'>): readonly SpliceMark[] => {
  if (!plan) return [];
  if (plan.stubs)
    return plan.stubs.map(({ cut }) => {
      const { low, high } = reachOf(cut, piece.tube.odIn / 2);
      return { fromIn: low, toIn: high, what: 'cut' };
    });
  const [part] = plan.parts;
  if (!part || part.kind === 'member') return [];
  return part.ends.map((cut) => {
    const { low, high } = reachOf(cut, part.tube.odIn / 2);
    return { fromIn: low, toIn: high, what: 'sleeveEnd' };
  });
};
