import { issue, ok, type Result, refused } from '../base/issue.ts';
import type { Model, Station } from '../job/modelSchema.ts';
import { blankModel } from './modelEdit.ts';

/** What a tape gives on the first day, inches. */
export interface RoughSizes {
  readonly name: string;
  readonly drawnIn: Model['drawnIn'];
  /** How many rings of four clusters (the last one two, with a tail post). */
  readonly stations: number;
  readonly lengthIn: number;
  /** Outside the longerons' axes, forward and aft. */
  readonly forwardHeightIn: number;
  readonly aftHeightIn: number;
  readonly forwardWidthIn: number;
  readonly aftWidthIn: number;
  readonly tailPost: boolean;
}

/** Tube sizes to begin with. Common practice, no source; shown as starting values, the user's to change. */
const startTubes: Model['tubes']['roles'] = {
  upperLongeron: { odIn: 0.75, wallIn: 0.035 },
  lowerLongeron: { odIn: 0.75, wallIn: 0.035 },
  vertical: { odIn: 0.625, wallIn: 0.035 },
  crossMember: { odIn: 0.625, wallIn: 0.035 },
  sideDiagonal: { odIn: 0.625, wallIn: 0.035 },
  topDiagonal: { odIn: 0.5, wallIn: 0.035 },
  bottomDiagonal: { odIn: 0.5, wallIn: 0.035 },
  ringDiagonal: { odIn: 0.5, wallIn: 0.035 },
};

const MOST_STATIONS = 60;

/**
 * A truss from the count of stations and a few lengths: bays of equal length, straight taper, single diagonals. Every
 * place is marked assumed, so that the walk-round, counts and a price range work and no dimension is given as a target.
 * Water line 0 is the lower longeron at the forward station.
 */
export const roughModel = (sizes: RoughSizes): Result<Model> => {
  const { stations, lengthIn, tailPost } = sizes;
  const lengths = {
    lengthIn,
    forwardHeightIn: sizes.forwardHeightIn,
    aftHeightIn: sizes.aftHeightIn,
    forwardWidthIn: sizes.forwardWidthIn,
    ...(tailPost ? {} : { aftWidthIn: sizes.aftWidthIn }),
  };
  const wrong = Object.entries(lengths).filter(([, value]) => !(value > 0 && value <= 1200));
  const count = Number.isInteger(stations) && stations >= 2 && stations <= MOST_STATIONS;
  const issues = [
    ...(count
      ? []
      : [
          issue(
            'out-of-range',
            'stations',
            { got: stations, least: 2, most: MOST_STATIONS },
            'check-value-and-unit',
          ),
        ]),
    ...wrong.map(([field, got]) =>
      issue('out-of-range', field, { got, least: 0, most: 1200 }, 'check-value-and-unit'),
    ),
  ];
  if (issues.length > 0) return refused(issues);
  const between = (forward: number, aft: number, share: number): number => forward + (aft - forward) * share;
  const rows = Array.from({ length: stations }, (_, k): Station => {
    const share = k / (stations - 1);
    const last = tailPost && k === stations - 1;
    const halfWidthIn = last ? 0 : between(sizes.forwardWidthIn, tailPost ? 0 : sizes.aftWidthIn, share) / 2;
    const drop = (sizes.forwardHeightIn - between(sizes.forwardHeightIn, sizes.aftHeightIn, share)) / 2;
    return {
      label: `${k + 1}`,
      stationIn: lengthIn * share,
      upper: { waterLineIn: sizes.forwardHeightIn - drop, halfWidthIn },
      lower: { waterLineIn: drop, halfWidthIn },
      origin: 'assumed',
    };
  });
  const bracing = rows.slice(0, -1).map((row, k): Model['bracing'][number] => {
    const side = k % 2 === 0 ? 'rising' : 'falling';
    const flat = k % 2 === 0 ? 'toRight' : 'toLeft';
    // Where the pair merges to a tail post, top and bottom are triangles and need no diagonal.
    const merges = tailPost && k === stations - 2;
    return { at: row.label, left: side, right: side, ...(merges ? {} : { top: flat, bottom: flat }) };
  });
  return ok({
    ...blankModel(sizes.drawnIn),
    name: sizes.name,
    source: 'Rough truss from a few lengths: every place and every tube size is assumed until measured.',
    datum:
      'Station 0 at the forward ring; butt line 0 on the centre plane; water line 0 at its lower longerons.',
    stations: rows,
    bracing,
    tubes: { material: '4130N', roles: startTubes, overrides: [] },
  });
};
