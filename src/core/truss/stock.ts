import type { Tube } from '../job/modelSchema.ts';

/** Where the list of sizes comes from. Availability differs by seller: the list is the user's to change. */
export const stockSource =
  'Sizes airframe-tube sellers normally list, from memory. Governing dimension standard: AND 10102, named in ' +
  'MIL-T-6736B para 2.1; its table was not seen. Yours to change.';

/** One outside diameter and the walls it is listed with, inches. */
export interface StockRow {
  readonly odIn: number;
  readonly wallsIn: readonly number[];
}

/** Round 4130 tube as listed; source: `stockSource`. */
export const stock: readonly StockRow[] = [
  { odIn: 0.25, wallsIn: [0.028, 0.035] },
  { odIn: 0.3125, wallsIn: [0.028, 0.035] },
  { odIn: 0.375, wallsIn: [0.028, 0.035, 0.049] },
  { odIn: 0.4375, wallsIn: [0.035, 0.049] },
  { odIn: 0.5, wallsIn: [0.028, 0.035, 0.049, 0.058, 0.065] },
  { odIn: 0.5625, wallsIn: [0.035, 0.049] },
  { odIn: 0.625, wallsIn: [0.028, 0.035, 0.049, 0.058, 0.065] },
  { odIn: 0.6875, wallsIn: [0.035, 0.049] },
  { odIn: 0.75, wallsIn: [0.028, 0.035, 0.049, 0.058, 0.065, 0.083] },
  { odIn: 0.8125, wallsIn: [0.035, 0.049] },
  { odIn: 0.875, wallsIn: [0.028, 0.035, 0.049, 0.058, 0.065] },
  { odIn: 0.9375, wallsIn: [0.035, 0.049] },
  { odIn: 1, wallsIn: [0.028, 0.035, 0.049, 0.058, 0.065, 0.083, 0.095] },
  { odIn: 1.125, wallsIn: [0.035, 0.049, 0.058, 0.065, 0.083] },
  { odIn: 1.25, wallsIn: [0.035, 0.049, 0.058, 0.065, 0.083, 0.095, 0.12] },
  { odIn: 1.375, wallsIn: [0.035, 0.049, 0.058, 0.065] },
  { odIn: 1.5, wallsIn: [0.035, 0.049, 0.058, 0.065, 0.083, 0.095, 0.12] },
  { odIn: 1.625, wallsIn: [0.049, 0.058, 0.065] },
  { odIn: 1.75, wallsIn: [0.049, 0.058, 0.065, 0.083, 0.095, 0.12] },
  { odIn: 2, wallsIn: [0.049, 0.058, 0.065, 0.083, 0.095, 0.12] },
];

/** Half a thousandth: sizes typed in millimetres to 0.01 still find their inch row. */
const SAME_SIZE_IN = 0.0005;

/** Is the tube in the list? */
export const inStock = (tube: Tube, list: readonly StockRow[] = stock): boolean =>
  list.some(
    (row) =>
      Math.abs(row.odIn - tube.odIn) <= SAME_SIZE_IN &&
      row.wallsIn.some((wall) => Math.abs(wall - tube.wallIn) <= SAME_SIZE_IN),
  );

/** The size of the stock list nearest to another: first by outside diameter, then by wall. */
export const nearestStock = ({ odIn, wallIn }: Tube, list: readonly StockRow[] = stock): Tube | null => {
  const away = (tube: Tube): readonly [number, number] => [
    Math.abs(tube.odIn - odIn),
    Math.abs(tube.wallIn - wallIn),
  ];
  return (
    list
      .flatMap((row) => row.wallsIn.map((wall): Tube => ({ odIn: row.odIn, wallIn: wall })))
      .toSorted((a, b) => {
        const [p, q] = [away(a), away(b)];
        return p[0] - q[0] || p[1] - q[1];
      })[0] ?? null
  );
};

/** Area and second moments of a round section, in² and in⁴. */
export interface RoundSection {
  readonly areaIn2: number;
  readonly inertiaIn4: number;
  readonly torsionIn4: number;
}

/**
 * Section properties of a round tube.
 *
 *   d = D − 2t,  A = π/4 (D² − d²),  I = π/64 (D⁴ − d⁴),  J = 2 I
 *
 * @param tube  D outside diameter, t wall, inches; t = D/2 is a solid rod
 * @returns null when the wall is more than half the diameter
 * Source: geometry of a circular ring (any strength of materials text).
 */
export const roundSection = ({ odIn, wallIn }: Tube): RoundSection | null => {
  // The last bit of a diameter typed in millimetres must not turn a solid rod into an impossible tube.
  if (!(odIn > 0 && wallIn > 0) || wallIn > (odIn / 2) * (1 + 1e-9)) return null;
  const bore = Math.max(0, odIn - 2 * wallIn);
  const sum = odIn * odIn + bore * bore;
  const areaIn2 = (Math.PI / 4) * (odIn + bore) * (odIn - bore);
  const inertiaIn4 = (areaIn2 * sum) / 16;
  return { areaIn2, inertiaIn4, torsionIn4: 2 * inertiaIn4 };
};

/**
 * The round tube that has a given area and second moment, for a member given by numbers.
 *
 *   D² = 8 I/A + 2 A/π,  d² = 8 I/A − 2 A/π
 *
 * Assumes: a solid rod of the same area where no round tube is that compact.
 * Source: the two formulas of `roundSection` solved for D and d.
 */
export const tubeOfSection = (areaIn2: number, inertiaIn4: number): Tube => {
  const mean = (8 * inertiaIn4) / areaIn2;
  const half = (2 * areaIn2) / Math.PI;
  if (mean <= half) {
    const odIn = Math.sqrt(2 * half);
    return { odIn, wallIn: odIn / 2 };
  }
  const odIn = Math.sqrt(mean + half);
  return { odIn, wallIn: (odIn - Math.sqrt(mean - half)) / 2 };
};

const C4 =
  'Analysis and Design of Flight Vehicle Structures, part C4, table "Column formulas for round steel tubes"';

/** A tube material; each number says where it is from. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly elasticPsi: number;
  readonly shearPsi: number;
  readonly yieldPsi: number;
  readonly densityLbIn3: number;
  readonly sources: {
    readonly elasticPsi: string;
    readonly shearPsi: string;
    readonly yieldPsi: string;
    readonly densityLbIn3: string;
  };
}

const steel = (
  id: string,
  name: string,
  yieldPsi: number,
  source: string,
  densityLbIn3 = 0.283,
): Material => ({
  id,
  name,
  elasticPsi: 29e6,
  shearPsi: 11e6,
  yieldPsi,
  densityLbIn3,
  sources: {
    elasticPsi: 'from memory',
    shearPsi: 'from memory',
    yieldPsi: source,
    densityLbIn3: 'from memory',
  },
});

/** Materials a model may name. Walls over .188 in are weaker than these (from memory: 70 ksi for 4130 N). */
export const materials: readonly Material[] = [
  steel('4130N', '4130, condition N, wall to .188', 75_000, C4),
  steel('4130N-after-weld', '4130, normalized after welding', 60_000, `${C4}, footnote e`),
  steel('1025', '1025', 36_000, C4, 0.284),
  steel('ht125', '4130, heat treated to 125 ksi', 103_000, C4),
  steel('ht150', '4130, heat treated to 150 ksi', 132_000, C4),
  steel('ht180', '4130, heat treated to 180 ksi', 163_000, C4),
];

/** The material with this id; null when there is none. */
export const materialOf = (id: string): Material | null => materials.find((m) => m.id === id) ?? null;
