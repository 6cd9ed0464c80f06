import { create } from 'zustand';

/** What may be laid over the picture; nothing is at first. */
export const overlays = [
  'nothing',
  'forces',
  'stress',
  'deflected',
  'lockedIn',
  'redundancy',
  'selfStress',
  'moves',
  'cut',
] as const;
export type OverlayName = (typeof overlays)[number];

/** How the sums are shown in the picture. Kept nowhere and never undone. */
export interface Overlay {
  readonly show: OverlayName;
  /** Load case; the first one when it is null or gone. */
  readonly caseId: string | null;
  readonly numbers: boolean;
  readonly arrows: boolean;
  /** Which free movement or state of self-stress, from 0. */
  readonly which: number;
  readonly playing: boolean;
  readonly cut: { readonly target: string; readonly cuts: readonly string[] } | null;
}

export const useOverlay = create<Overlay>(() => ({
  show: 'nothing',
  caseId: null,
  numbers: false,
  arrows: false,
  which: 0,
  playing: true,
  cut: null,
}));

export const setOverlay = (change: Partial<Overlay>): void => useOverlay.setState(change);
