import { type Figure, figure } from '../base/figure.ts';

/**
 * Strength of a lap weld in shear, lbf.
 *
 *   P = 0.707 t l F
 *
 * @param throatIn  t, the thinner of the two walls
 * @param shearPsi  F, shear strength of the weld metal
 * Source: AC 43.13-1B, 4-83, figure 4-27.
 */
export const lapWeldLbf = (throatIn: number, lengthIn: number, shearPsi: number): number =>
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the figure as published
  0.707 * throatIn * lengthIn * shearPsi;

/** Weld metal between alloy steels, not heat treated after; from memory. */
export const WELD_SHEAR_PSI = 43_000;

/** Strength of the weld round one end of a sleeve that lies over the tube. */
export const endWeldLbf = (throatIn: number, lengthIn: number): Figure =>
  figure(
    lapWeldLbf(throatIn, lengthIn, WELD_SHEAR_PSI),
    'lbf',
    { kind: 'rule', ref: 'FAA AC 43.13-1B with CHG 1 (1998/2001), 4-83, figure 4-27' },
    ['weld-metal-43-ksi-from-memory', 'full-throat-all-round'],
  );
