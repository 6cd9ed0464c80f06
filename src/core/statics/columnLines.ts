const C4 =
  'Analysis and Design of Flight Vehicle Structures, part C4, table "Column formulas for round steel tubes"';
const REBUILT = `${C4}; exponent and power of ten rebuilt from memory, branches meet`;

/** A published constant of a column formula. */
export interface ColumnRow {
  readonly id: string;
  readonly value: number;
  readonly unit: 'psi' | '1';
  readonly source: string;
}

/** Column formula of a tube material: a − k s^m up to the slenderness where it joins Euler's e / s². */
export interface ColumnLine {
  readonly material: string;
  readonly intercept: ColumnRow;
  readonly slope: ColumnRow;
  readonly exponent: ColumnRow;
  readonly join: ColumnRow;
  readonly euler: ColumnRow;
}

const line = (
  material: string,
  intercept: number,
  slope: number,
  exponent: number,
  join: number,
): ColumnLine => {
  const row = (name: string, value: number, unit: 'psi' | '1', source: string): ColumnRow => ({
    id: `column-${material}-${name}`,
    value,
    unit,
    source,
  });
  return {
    material,
    intercept: row('intercept', intercept, 'psi', C4),
    slope: row('slope', slope, 'psi', C4),
    exponent: row('exponent', exponent, '1', REBUILT),
    join: row('join', join, '1', REBUILT),
    euler: row('euler', 286e6, 'psi', REBUILT),
  };
};

/** Column formulas of round steel tubes, by the material's id in `truss/stock.ts`. Slenderness s = L/(ρ √c). */
export const columnLines: readonly ColumnLine[] = [
  line('4130N', 79_500, 51.9, 1.5, 91.5),
  line('1025', 36_000, 1.172, 2, 123),
  line('ht125', 113_000, 11.15, 2, 73),
  line('ht150', 145_000, 18.36, 2, 63),
  line('ht180', 179_000, 27.95, 2, 56),
];

/** Slenderness that must not be passed without specific authority. Footnote b of the same table. */
export const slendernessLimit: ColumnRow = {
  id: 'column-slenderness-limit',
  value: 150,
  unit: '1',
  source: `${C4}, footnote b`,
};

/** Up to this diameter over wall, crippling of the wall need not be looked at. Footnote d of the same table. */
export const cripplingLimit: ColumnRow = {
  id: 'column-crippling-limit',
  value: 50,
  unit: '1',
  source: `${C4}, footnote d`,
};
