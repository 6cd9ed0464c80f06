import { create } from 'zustand';

/** The step of the plan in hand: the picture shows the truss as it stands then. Kept nowhere and never undone. */
export interface Planning {
  readonly step: string | null;
  /** Why the latest move was refused. */
  readonly refused: string | null;
  readonly dragged: string | null;
}

export const usePlanning = create<Planning>(() => ({ step: null, refused: null, dragged: null }));

export const setPlanning = (change: Partial<Planning>): void => usePlanning.setState(change);
