import { figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Tube } from '../job/modelSchema.ts';
import { type StockRow, stock } from '../truss/stock.ts';
import { areaOf } from './parts.ts';
import type { SleeveChoice, SleeveOffer } from './result.ts';
import { basisOf, spliceNumber } from './rules.ts';
import { type Side, sameSize, tableRow } from './sleeveTable.ts';

/** Below this a difference is arithmetic, not size: decimals of a size table. */
const SAME = 1e-9;

/**
 * What is left between a sleeve and the tube it goes in or over, on diameter.
 *
 *   inside  (D − 2t) − Dₛ          outside  (Dₛ − 2tₛ) − D
 *
 * @returns negative where it does not go
 */
export const slackIn = (tube: Tube, sleeve: Tube, side: Side): number =>
  side === 'inside' ? tube.odIn - 2 * tube.wallIn - sleeve.odIn : sleeve.odIn - 2 * sleeve.wallIn - tube.odIn;

/** What the general rule has against a sleeve; empty: it goes. */
const against = (tube: Tube, sleeve: Tube, side: Side): readonly string[] => {
  const slack = slackIn(tube, sleeve, side);
  return [
    ...(slack < -SAME ? ['does-not-enter'] : []),
    ...(slack > spliceNumber('sleeve-slack') + SAME ? ['over-slack-limit'] : []),
    ...(sleeve.wallIn < tube.wallIn - SAME ? ['wall-below-original'] : []),
  ];
};

const notes = (tube: Tube, sleeve: Tube, side: Side): readonly string[] => {
  const slack = slackIn(tube, sleeve, side);
  return [
    ...(slack >= -SAME && slack < spliceNumber('mill-tolerance') ? ['inside-mill-tolerance'] : []),
    ...(areaOf(sleeve) < areaOf(tube) ? ['less-area'] : []),
  ];
};

const slackFigure = (tube: Tube, sleeve: Tube, side: Side) =>
  figure(slackIn(tube, sleeve, side), 'in', { kind: 'computed', ref: 'nominal sizes' }, ['nominal-sizes']);

const offer = (tube: Tube, sleeve: Tube, side: Side): SleeveOffer => ({
  tube: sleeve,
  slackIn: slackFigure(tube, sleeve, side),
  by: 'rule',
  says: [...against(tube, sleeve, side), ...notes(tube, sleeve, side)],
});

const isSame = (a: Tube, b: Tube): boolean => sameSize(a.odIn, b.odIn) && sameSize(a.wallIn, b.wallIn);

/** Smallest slack first; at one slack, the thinnest wall. */
const order = (a: SleeveOffer, b: SleeveOffer): number => {
  const slack = a.slackIn.value - b.slackIn.value;
  return Math.abs(slack) > SAME ? slack : a.tube.wallIn - b.tube.wallIn;
};

/** Refused sizes that are worth showing: within a few steps of the stock list. */
const NEAR_IN = 1 / 4;
const MOST_REFUSED = 6;

/** Of each diameter the one that comes nearest: those that go in, or on, before those that do not. */
const nearest = (offers: readonly SleeveOffer[], wallIn: number): readonly SleeveOffer[] => {
  const thin = (o: SleeveOffer): number => Number(o.tube.wallIn < wallIn - SAME);
  const near = (a: SleeveOffer, b: SleeveOffer): number =>
    Number(a.slackIn.value < 0) - Number(b.slackIn.value < 0) ||
    Math.abs(a.slackIn.value) - Math.abs(b.slackIn.value);
  const ranked = offers
    .filter((o) => Math.abs(o.slackIn.value) <= NEAR_IN)
    .sort((a, b) => thin(a) - thin(b) || near(a, b) || a.tube.wallIn - b.tube.wallIn);
  return ranked
    .filter((o, k) => ranked.findIndex((other) => other.tube.odIn === o.tube.odIn) === k)
    .slice(0, MOST_REFUSED);
};

/**
 * Sleeve tube for a splice: the user's own table first, else the general rule over the stock list.
 *
 *   0 ≤ slack ≤ 1/16 in on diameter, wall ≥ that of the tube
 *
 * Both are shown where they differ. Nothing in the list may go: then the nearest sizes stand with what is against them.
 *
 * @param wish  a sleeve that the user has at hand: it is held against the rule like any other
 * @param ruleLengthIn  length that the rule asks of a sleeve of this tube
 * Source: AC 43.13-1B, 4-92, 4-95 to 4-97; sizes of the stock list are the user's to change.
 */
export const sleeveFor = (
  tube: Tube,
  side: Side,
  manual: readonly RecordOf<'manual'>[],
  ruleLengthIn: (sleeve: Tube) => number,
  wish?: Tube,
  list: readonly StockRow[] = stock,
): SleeveChoice => {
  const sizes = list.flatMap(({ odIn, wallsIn }) => wallsIn.map((wallIn): Tube => ({ odIn, wallIn })));
  const offers = sizes.map((s) => offer(tube, s, side));
  const goes = offers.filter((o) => against(tube, o.tube, side).length === 0).sort(order);
  const refused = nearest(
    offers.filter((o) => against(tube, o.tube, side).length > 0),
    tube.wallIn,
  );
  const first = goes[0] ?? null;
  const row = tableRow(tube, side, manual);
  if (wish) return { chosen: offer(tube, wish, side), byRule: first, others: goes, refused };
  if (!row) return { chosen: first, byRule: first, others: goes, refused };
  const needed = ruleLengthIn(row.tube);
  const mine: SleeveOffer = {
    ...offer(tube, row.tube, side),
    by: 'manual',
    record: row.record,
    ...(row.lengthIn === undefined
      ? {}
      : { lengthIn: figure(row.lengthIn, 'in', { kind: 'manual', ref: row.record }) }),
    says: [
      ...offer(tube, row.tube, side).says,
      ...(row.lengthIn !== undefined && row.lengthIn < needed - SAME ? ['shorter-than-rule'] : []),
    ],
  };
  return {
    chosen: mine,
    byRule: first && isSame(first.tube, row.tube) ? null : first,
    others: goes,
    refused,
  };
};

/** Does the general rule allow this sleeve? The rule's own ground, when not. */
export const sleeveFaults = against;

/** Slack limit of the rule, as a figure. */
export const slackLimit = () => figure(spliceNumber('sleeve-slack'), 'in', basisOf('sleeve-slack'));
