import { create } from 'zustand';
import type { Units } from '../../present/show.ts';
import { freshId } from '../freshId.ts';
import type { Light } from '../scene/sceneProps.ts';

/** What this device's user prefers. Kept on this device, never in a job. */
export interface Prefs {
  readonly units: Units;
  readonly light: Light;
  /** Name put on every record. */
  readonly who: string;
  /** Name of this device on every record, made once. */
  readonly device: string;
  /** Single letters act as commands; can be switched off. */
  readonly letterKeys: boolean;
  readonly paper: 'a4' | 'letter';
  /** The hand that taps: the card lies on that side. */
  readonly hand: 'right' | 'left';
}

const PLACE = 'tubewright-prefs';
/** Where each key is kept; typed over all of them, so that a new key must say. */
const keptIn = {
  units: 'device',
  light: 'device',
  who: 'device',
  device: 'device',
  letterKeys: 'device',
  paper: 'device',
  hand: 'device',
} as const satisfies Record<keyof Prefs, 'device'>;

const startWith = (): Prefs => ({
  units: 'inFraction',
  light:
    typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day',
  who: '',
  device: `device-${freshId().slice(0, 8)}`,
  letterKeys: true,
  paper: 'a4',
  hand: 'right',
});

const allowed: { readonly [K in keyof Prefs]: (value: unknown) => boolean } = {
  units: (v) => v === 'inFraction' || v === 'inDecimal' || v === 'mm',
  light: (v) => v === 'day' || v === 'night' || v === 'outdoor',
  who: (v) => typeof v === 'string' && v.length <= 200,
  device: (v) => typeof v === 'string' && v.length > 0 && v.length <= 200,
  letterKeys: (v) => typeof v === 'boolean',
  paper: (v) => v === 'a4' || v === 'letter',
  hand: (v) => v === 'right' || v === 'left',
};

const load = (): Prefs => {
  const fresh = startWith();
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return fresh;
    const usable = Object.entries(kept).filter(([key, value]) => allowed[key as keyof Prefs]?.(value));
    return { ...fresh, ...Object.fromEntries(usable) };
  } catch {
    // Storage is blocked or garbled: preferences then last as long as the page.
    return fresh;
  }
};

export const usePrefs = create<Prefs>(load);

export const setPrefs = (change: Partial<Prefs>): void => usePrefs.setState(change);

usePrefs.subscribe((prefs) => {
  try {
    const kept = Object.fromEntries(Object.keys(keptIn).map((key) => [key, prefs[key as keyof Prefs]]));
    localStorage.setItem(PLACE, JSON.stringify(kept));
  } catch {
    // Blocked storage loses preferences only; the job has its own keeping and its own message.
  }
});
