import { deflected, forces, stress } from './caseOverlays.ts';
import { cut } from './cutOverlay.ts';
import { moves, selfStress } from './freeOverlays.ts';
import type { Given, Laid } from './laid.ts';
import { lockedIn, redundancy } from './strainOverlays.ts';

const lay = { forces, stress, deflected, lockedIn, redundancy, selfStress, moves, cut } as const;

/** What the chosen overlay lays over the picture; null when nothing is chosen. */
export const overlayFor = (given: Given): Laid | null =>
  given.overlay.show === 'nothing' ? null : lay[given.overlay.show](given);
