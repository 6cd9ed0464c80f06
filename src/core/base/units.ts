/** Inside core: inch, lbf, psi, radian. Millimetres and degrees exist only at the edge, and cross it here. */
export const MM_PER_IN = 25.4;

declare const kind: unique symbol;
/** A distance between two cluster centres (tube axes). */
export type AxisIn = number & { readonly [kind]: 'axis' };
/** A distance between two marks on tube surfaces, as a trammel's points stand. */
export type SurfaceIn = number & { readonly [kind]: 'surface' };

export const mmToIn = (mm: number): number => mm / MM_PER_IN;
export const inToMm = (inches: number): number => inches * MM_PER_IN;
export const degToRad = (deg: number): number => (deg * Math.PI) / 180;
export const radToDeg = (rad: number): number => (rad * 180) / Math.PI;
