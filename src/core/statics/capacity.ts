import { type Figure, figure } from '../base/figure.ts';
import type { Member, Section } from '../truss/result.ts';
import { materialOf } from '../truss/stock.ts';
import { type ColumnLine, columnLines, cripplingLimit, slendernessLimit } from './columnLines.ts';

type Column = Pick<Section, 'areaIn2' | 'inertiaIn4'>;

/**
 * Slenderness of a column.
 *
 *   s = (L/√c)/ρ,  ρ = √(I/A)
 *
 * @param fixity  c: 1 pinned, 2 usual for welded tube trusses
 */
export const slenderness = ({ areaIn2, inertiaIn4 }: Column, lengthIn: number, fixity: number): number =>
  lengthIn / Math.sqrt(fixity) / Math.sqrt(inertiaIn4 / areaIn2);

/**
 * Buckling stress of a straight column, psi.
 *
 *   s < π√(2E/F):  F (1 − F s²/4π²E),  else π²E/s²
 *
 * Source: Johnson's parabola and Euler; any airframe structures text, e.g. Bruhn, part C2.
 */
export const johnsonEuler = (s: number, yieldPsi: number, elasticPsi: number): number => {
  const euler = Math.PI ** 2 * elasticPsi;
  return s < Math.PI * Math.sqrt((2 * elasticPsi) / yieldPsi)
    ? yieldPsi * (1 - (yieldPsi * s * s) / (4 * euler))
    : euler / (s * s);
};

/**
 * Buckling stress from a material's published formula, psi.
 *
 *   s ≤ join:  a − k s^m,  else e/s²
 */
export const columnLineStress = (line: ColumnLine, s: number): number =>
  s <= line.join.value
    ? line.intercept.value - line.slope.value * s ** line.exponent.value
    : line.euler.value / (s * s);

/**
 * Mean stress at which the hollow side of a bowed column first yields, psi.
 *
 *   (F − σ)(σ_E − σ) = η σ_E σ,  η = e c/ρ²,  σ_E = π²E/s²
 *
 * @param bowIn  depth of a half-sine bow, measured at mid-length
 * Source: Ayrton & Perry 1886; Robertson 1925.
 */
export const bowedColumnStress = (
  section: Section,
  lengthIn: number,
  fixity: number,
  bowIn: number,
): number => {
  const s = slenderness(section, lengthIn, fixity);
  const euler = (Math.PI ** 2 * section.elasticPsi) / (s * s);
  const eta = (bowIn * (section.odIn / 2) * section.areaIn2) / section.inertiaIn4;
  const b = (section.yieldPsi + (1 + eta) * euler) / 2;
  // The other root of the quadratic divided into its product: no digits are lost when the two are far apart.
  return (section.yieldPsi * euler) / (b + Math.sqrt(b * b - section.yieldPsi * euler));
};

/**
 * Bending moment that yields the whole section, in-lbf.
 *
 *   M_p = F_y (D³ − d³)/6
 */
export const plasticMoment = ({ odIn, wallIn, yieldPsi }: Section): number =>
  (yieldPsi * (odIn ** 3 - (odIn - 2 * wallIn) ** 3)) / 6;

/**
 * Axial force that a straight, sound member takes before it yields or buckles, with what that rests on. Arithmetic,
 * not a permission. Tension F_y A; compression A times the column stress, never above F_y A.
 * The published formula of the material is used while the member's yield strength is the material's own,
 * Johnson–Euler otherwise.
 */
export const memberCapacity = (member: Member, sense: 'tension' | 'compression'): Figure => {
  const { section } = member;
  const yields = section.yieldPsi * section.areaIn2;
  const basis = { kind: 'computed', ref: 'yield strength times area' } as const;
  if (sense === 'tension')
    return figure(yields, 'lbf', basis, ['sound tube, welds not weaker than the tube']);
  const s = slenderness(section, member.lengthIn, member.fixity);
  const listed = materialOf(member.material)?.yieldPsi === section.yieldPsi;
  const line = listed ? columnLines.find((l) => l.material === member.material) : undefined;
  const stress = line ? columnLineStress(line, s) : johnsonEuler(s, section.yieldPsi, section.elasticPsi);
  const assumed = ['straight, sound tube', `end fixity c = ${member.fixity}`];
  if (s > slendernessLimit.value)
    assumed.push(`slenderness ${Math.round(s)} is above ${slendernessLimit.value}`);
  if (section.odIn / section.wallIn > cripplingLimit.value)
    assumed.push(`wall thinner than 1/${cripplingLimit.value} of the diameter: crippling not looked at`);
  const ref = line ? line.intercept.source : 'Johnson–Euler column';
  return figure(Math.min(yields, stress * section.areaIn2), 'lbf', { kind: 'rule', ref }, assumed);
};

/** The number of `memberCapacity`, lbf, positive in either sense. */
export const capacityLbf = (member: Member, sense: 'tension' | 'compression'): number =>
  memberCapacity(member, sense).value;
