import { type Figure, figure } from '../base/figure.ts';
import { tubeSection } from './bending.ts';
import { pressFor, type RoundTube } from './pressFor.ts';
import type { AxisFit, SetUp } from './result.ts';
import { hinge, pressForTurn } from './springback.ts';

/** Stop this far short of straight and read again. Source: common practice, no source. */
const SHORT_IN = 1 / 64;
/** Never take more than this share of what is left in one push. Source: common practice, no source. */
const AT_ONCE = 1 / 2;
/** Blocks this share of the clear length apart: long spans press softly, short ones crush. Common practice, no source. */
const SPAN_SHARE = 2 / 3;
/** A plan of more pushes than this is no plan: the tube wants another way. */
const MOST_SETUPS = 40;

/** The tube to be pressed and where blocks may stand. */
export interface Bench {
  readonly tube: RoundTube;
  readonly elasticPsi: number;
  readonly yieldPsi: Figure;
  /** Clear of the welds, from the member's `from` cluster. */
  readonly clearIn: readonly [number, number];
  /** Block spacing the user wants; shortened only where the tube has no room for it. */
  readonly spanIn?: number;
}

/** How much a small angle at x takes off the departure at `at`, for a chord from `start` of length L. */
const influence = (x: number, at: number, start: number, chord: number): number => {
  const [a, b] = [Math.min(x, at) - start, Math.max(x, at) - start];
  return (Math.max(0, a) * Math.max(0, chord - b)) / chord;
};

/**
 * Places for n pushes: a smooth bow gets them at equal shares of its length, a kink side by side one diameter apart;
 * all as near to it as the blocks have room. Nearest to the greatest bend first.
 */
const places = (fit: AxisFit, n: number, spanIn: number, { clearIn, tube }: Bench): readonly number[] => {
  const [low, high] = [clearIn[0] + spanIn / 2, clearIn[1] - spanIn / 2];
  const at = fit.atIn.value;
  const middle = fit.line[Math.floor(fit.line.length / 2)]!.atIn;
  const wanted = Array.from({ length: n }, (_, k) => {
    const share = (k + 0.5) / n - 0.5;
    return fit.shape === 'smooth' ? middle + share * fit.chordIn : at + (k - (n - 1) / 2) * tube.odIn;
  });
  return wanted
    .map((x) => Math.min(Math.max(x, low), high))
    .sort((a, b) => Math.abs(a - at) - Math.abs(b - at) || a - b);
};

const spanOn = (fit: AxisFit, bench: Bench): number => {
  const clear = bench.clearIn[1] - bench.clearIn[0];
  const own = Math.min(bench.spanIn ?? clear * SPAN_SHARE, clear);
  if (fit.shape === 'smooth') return own;
  // Blocks stand even on both sides of a local bend, as far as its nearer end allows.
  const even = 2 * Math.min(fit.atIn.value - bench.clearIn[0], bench.clearIn[1] - fit.atIn.value);
  return Math.max(Math.min(own, even), Math.min(own, clear / 4));
};

const setUpAt = (
  no: number,
  atIn: number,
  turnRad: number,
  spanIn: number,
  fit: AxisFit,
  bench: Bench,
): SetUp | null => {
  const lowYield = bench.yieldPsi.low ?? bench.yieldPsi.value;
  const section = tubeSection(bench.tube);
  const wanted = pressForTurn(section, { elasticPsi: bench.elasticPsi, yieldPsi: lowYield }, spanIn, turnRad);
  if (!wanted) return null;
  const { tube, elasticPsi, yieldPsi } = bench;
  const [start] = [fit.line[0]!.atIn];
  const takesOff = turnRad * influence(atIn, fit.atIn.value, start, fit.chordIn);
  return {
    no,
    atIn,
    blocksIn: [atIn - spanIn / 2, atIn + spanIn / 2],
    ramClock: fit.clock,
    press: pressFor({ tube, elasticPsi, yieldPsi, spanIn, wantedSetIn: wanted.setIn }),
    takesOffIn: figure(takesOff, 'in', { kind: 'computed', ref: 'angle left × place in the chord' }, [
      'kink-at-the-ram',
    ]),
  };
};

const gains = (xs: readonly number[], fit: AxisFit): number =>
  xs.reduce((sum, x) => sum + influence(x, fit.atIn.value, fit.line[0]!.atIn, fit.chordIn), 0);

/**
 * The set-ups that take a bow out, in order: where the ram and the blocks stand, what to press and what it leaves. No
 * set-up is asked for more than the span gives before the tube hinges, nor for more than half the bow: then the blocks
 * move along the bend.
 *
 *   Σ φ · G(x_k, a) = bow − 1/64,  G = a(L − x)/L,  φ ≤ angle left at the hinge
 *
 * Assumes: each push leaves a small angle at the ram; the least yield strength decides how many.
 * Source: influence line of a hinged chord; half at a time and 1/64 short are common practice, no source.
 */
export const setUps = (fit: AxisFit, bench: Bench): readonly SetUp[] => {
  const spanIn = spanOn(fit, bench);
  const wantedIn = fit.bowIn.value - SHORT_IN;
  if (wantedIn <= 0 || spanIn <= 0) return [];
  const steel = { elasticPsi: bench.elasticPsi, yieldPsi: bench.yieldPsi.low ?? bench.yieldPsi.value };
  const mostTurn = hinge(tubeSection(bench.tube), steel, spanIn).setRad;
  for (let n = 2; n <= MOST_SETUPS; n++) {
    const xs = places(fit, n, spanIn, bench);
    const gain = gains(xs, fit);
    const turn = gain > 0 ? wantedIn / gain : Number.POSITIVE_INFINITY;
    if (turn <= mostTurn * (1 - 1e-9))
      return xs.flatMap((x, k) => setUpAt(k + 1, x, turn, spanIn, fit, bench) ?? []);
  }
  return [];
};

/**
 * The next push: at the greatest bend, half of what is left at most, 1/64 short, and never past the hinge.
 *
 * @param leftIn  departure that is still there, as read or as worked out from the pushes
 */
export const nextPush = (fit: AxisFit, leftIn: number, no: number, bench: Bench): SetUp | null => {
  const spanIn = spanOn(fit, bench);
  const wantedIn = Math.min(leftIn * AT_ONCE, leftIn - SHORT_IN);
  if (wantedIn <= 0 || spanIn <= 0) return null;
  const x = places(fit, 1, spanIn, bench)[0]!;
  const gain = gains([x], fit);
  if (gain <= 0) return null;
  const steel = { elasticPsi: bench.elasticPsi, yieldPsi: bench.yieldPsi.low ?? bench.yieldPsi.value };
  const most = hinge(tubeSection(bench.tube), steel, spanIn).setRad * (1 - 1e-9);
  return setUpAt(no, x, Math.min(wantedIn / gain, most), spanIn, fit, bench);
};
