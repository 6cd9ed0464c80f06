import { type Figure, figure } from '../base/figure.ts';
import { tubeSection } from './bending.ts';
import { pressFor, type RoundTube } from './pressFor.ts';
import type { AxisFit, Press, SetUp } from './result.ts';
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

/**
 * What a small angle at x takes off the greatest departure, inches per radian.
 *
 *   G = min(x, a) (L − max(x, a))/L,  x and a from the start of the chord
 *
 * Source: a chord with one hinge, small angles.
 */
export const gain = (x: number, { atIn, line, chordIn }: AxisFit): number => {
  const start = line[0]!.atIn;
  const [near, far] = [Math.min(x, atIn.value) - start, Math.max(x, atIn.value) - start];
  return (Math.max(0, near) * Math.max(0, chordIn - far)) / chordIn;
};

/**
 * Places for n pushes: a smooth bow gets them at equal shares of its length, a kink side by side one diameter apart;
 * all as near to it as the blocks have room. Nearest to the greatest bend first.
 */
const places = (fit: AxisFit, n: number, spanIn: number, { clearIn, tube }: Bench): readonly number[] => {
  const [low, high] = [clearIn[0] + spanIn / 2, clearIn[1] - spanIn / 2];
  const at = fit.atIn.value;
  const wanted = Array.from({ length: n }, (_, k) => {
    const share = (k + 0.5) / n - 0.5;
    return fit.shape === 'smooth' ? at + share * fit.chordIn : at + (k - (n - 1) / 2) * tube.odIn;
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

/** Angle a span gives before the tube hinges, the tube taken at its softest. */
const mostTurn = (spanIn: number, { tube, elasticPsi, yieldPsi }: Bench): number =>
  hinge(tubeSection(tube), { elasticPsi, yieldPsi: yieldPsi.low ?? yieldPsi.value }, spanIn).setRad *
  (1 - 1e-9);

/** One press that leaves a wanted angle, the tube taken at its softest; null past the hinge. */
const pressOf = (turnRad: number, spanIn: number, { tube, elasticPsi, yieldPsi }: Bench): Press | null => {
  const soft = { elasticPsi, yieldPsi: yieldPsi.low ?? yieldPsi.value };
  const wanted = pressForTurn(tubeSection(tube), soft, spanIn, turnRad);
  return wanted && pressFor({ tube, elasticPsi, yieldPsi, spanIn, wantedSetIn: wanted.setIn });
};

const setUpAt = (no: number, atIn: number, turnRad: number, press: Press, fit: AxisFit): SetUp => ({
  no,
  atIn,
  blocksIn: [atIn - press.spanIn / 2, atIn + press.spanIn / 2],
  ramClock: fit.clock,
  press,
  takesOffIn: figure(
    turnRad * gain(atIn, fit),
    'in',
    { kind: 'computed', ref: 'angle left × place in the chord' },
    ['angle-at-the-ram'],
  ),
});

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
  const most = mostTurn(spanIn, bench);
  // An odd count: the first stands at the greatest bend, the others on both sides of it.
  for (let n = 3; n <= MOST_SETUPS; n += 2) {
    const xs = places(fit, n, spanIn, bench);
    const gains = xs.map((x) => gain(x, fit));
    const turn = wantedIn / gains.reduce((a, b) => a + b, 0);
    if (!(turn <= most) || turn * Math.max(...gains) > fit.bowIn.value * AT_ONCE) continue;
    const press = pressOf(turn, spanIn, bench);
    return press ? xs.map((x, k) => setUpAt(k + 1, x, turn, press, fit)) : [];
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
  const each = gain(x, fit);
  if (each <= 0) return null;
  const turn = Math.min(wantedIn / each, mostTurn(spanIn, bench));
  const press = pressOf(turn, spanIn, bench);
  return press && setUpAt(no, x, turn, press, fit);
};
