import { create } from 'zustand';

/** What came of the latest move of a step, in words. */
export interface MoveSaid {
  readonly moved: boolean;
  readonly words: string;
}

/** The step of the plan in hand: the picture shows the truss as it stands then. Kept nowhere and never undone. */
export interface Planning {
  readonly step: string | null;
  readonly said: MoveSaid | null;
  readonly dragged: string | null;
}

export const usePlanning = create<Planning>(() => ({ step: null, said: null, dragged: null }));

export const setPlanning = (change: Partial<Planning>): void => usePlanning.setState(change);
