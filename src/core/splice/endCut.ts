import type { CopeTube } from './result.ts';

/**
 * How one end of a tube is cut, in plain numbers: `cutAt` gives its place along the member at every clock position.
 * `atIn` is on the axis, from the member's `from` cluster point (a fishmouth's crotch). `way` 1: towards `to`.
 */
export type EndCut =
  | { readonly kind: 'square'; readonly atIn: number }
  | {
      readonly kind: 'scarf' | 'fishmouth';
      readonly atIn: number;
      /** To the axis. */
      readonly angleRad: number;
      /** Where the cut reaches furthest along `way`; a fishmouth does so here and opposite. */
      readonly pointClock: number;
      readonly way: 1 | -1;
    }
  | {
      readonly kind: 'cope';
      readonly atIn: number;
      readonly cluster: string;
      readonly against: readonly CopeTube[];
      readonly gapIn: number;
      readonly way: 1 | -1;
    };
