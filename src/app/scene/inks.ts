import type { State } from '../../core/walkRound/result.ts';
import { tags } from '../../present/tags.ts';
import type { Light } from './sceneProps.ts';

/** The inks of one light; `style/tokens.css` holds the same ones for the panels, and a test compares them. */
export interface Inks {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  /** Lines of the layout table. */
  readonly floor: string;
  readonly accent: string;
  /** The drawing's truss under a moved one. */
  readonly hairline: string;
  /** Width of outlines, and the least width of a tube, CSS pixels. */
  readonly line: number;
  readonly leastTube: number;
  /** Size of small writing, CSS pixels. */
  readonly small: number;
  readonly tag: 'light' | 'dark';
}

export const inks = {
  day: {
    paper: '#fbfaf5',
    ink: '#1a1f24',
    soft: '#555b60',
    floor: '#cfcbbe',
    accent: '#0b6a70',
    hairline: '#8f938f',
    line: 1,
    leastTube: 4,
    small: 13,
    tag: 'light',
  },
  night: {
    paper: '#14181c',
    ink: '#e9ece8',
    soft: '#a7b0b4',
    floor: '#333c43',
    accent: '#55c4c0',
    hairline: '#6d7880',
    line: 1,
    leastTube: 4,
    small: 13,
    tag: 'dark',
  },
  outdoor: {
    paper: '#ffffff',
    ink: '#050505',
    soft: '#2b2b2b',
    floor: '#bdbdbd',
    accent: '#00474c',
    hairline: '#6a6a6a',
    line: 2,
    leastTube: 7,
    small: 15,
    tag: 'light',
  },
} as const satisfies Record<Light, Inks>;

/** The colour of a state in a light. */
export const stateColour = (state: State, light: Light): string => tags[state][inks[light].tag];

/** How strongly a tube is filled with its state's colour; what nobody has looked at is hollow. */
export const fillShare = {
  straighten: 0.75,
  splitSleeve: 0.75,
  splice: 0.75,
  replace: 0.75,
  undecided: 0.75,
  lookAgain: 0.6,
  lookedAt: 0.32,
  notLookedAt: 0,
} as const satisfies Record<State, number>;

/** States drawn as a band around the tube: those that call for something. */
export const banded = {
  straighten: true,
  splitSleeve: true,
  splice: true,
  replace: true,
  undecided: true,
  lookAgain: true,
  lookedAt: false,
  notLookedAt: false,
} as const satisfies Record<State, boolean>;
