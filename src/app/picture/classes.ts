import type { Light } from '../scene/sceneProps.ts';

/** A scale in steps: every class has a colour, and a number stands at each border between two. */
export interface Classes {
  readonly colours: readonly string[];
  /** Borders between neighbouring classes, one fewer than colours. */
  readonly borders: readonly number[];
}

/**
 * Compression to tension, strong to strong. Brown against blue is told apart with every common colour deficiency, and
 * neither is a colour of a state; the light classes differ in lightness too.
 */
const diverging = {
  day: ['#6f3000', '#b0601c', '#dba66b', '#cdcac1', '#93b1dc', '#4b76b8', '#163a7d'],
  night: ['#ffc592', '#d98645', '#8b5a34', '#4b545b', '#41629a', '#719fe2', '#bcd7ff'],
  outdoor: ['#552400', '#a1510f', '#d4974f', '#c4c1b8', '#7d9fd2', '#34609f', '#0b2a63'],
} as const satisfies Record<Light, readonly string[]>;

/** Little to much, one hue, lightness alone tells the order. */
const rising = {
  day: ['#ece5ea', '#d6bdd3', '#b98db6', '#945c94', '#6c3070', '#3d0f46'],
  night: ['#312c36', '#54425b', '#7c5c85', '#aa7fb4', '#d7abdf', '#f8e2fb'],
  outdoor: ['#e6dde4', '#cbaec8', '#a678a5', '#7f457f', '#56195a', '#2a0531'],
} as const satisfies Record<Light, readonly string[]>;

/** The next 1, 2 or 5 times a power of ten at or above a size. */
export const roundUp = (size: number): number => {
  if (!(size > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(size) + 1e-12);
  return [1, 2, 5, 10].map((n) => n * power).find((n) => n >= size * (1 - 1e-9))!;
};

/** The last 1, 2 or 5 times a power of ten at or below a size. */
export const roundDown = (size: number): number => {
  const power = 10 ** Math.floor(Math.log10(size) + 1e-12);
  return [5, 2, 1].map((n) => n * power).find((n) => n <= size * (1 + 1e-9))!;
};

/** Signed classes round nothing, out to the largest size there is. */
export const signed = (largest: number, light: Light): Classes => {
  const top = roundUp(largest);
  const steps = [0.05, 0.2, 0.5].map((share) => share * top);
  return {
    colours: diverging[light],
    borders: [...steps.map((s) => -s).reverse(), ...steps],
  };
};

/** Classes from nothing upward with these five borders. */
export const upward = (borders: readonly number[], light: Light): Classes => ({
  colours: rising[light],
  borders,
});

/** Five borders up to a largest size. */
export const bordersTo = (largest: number): readonly number[] =>
  [0.05, 0.1, 0.2, 0.4, 0.7].map((share) => share * roundUp(largest));

export const colourIn = ({ colours, borders }: Classes, value: number): string =>
  colours[borders.filter((border) => value >= border).length]!;
