import { create } from 'zustand';
import { save } from './jobs.ts';
import { useSaved } from './state/saved.ts';
import { newerText } from './text/frame.ts';

/** Whether the program itself stands on this device, and whether a newer one waits to be taken. */
export interface Offline {
  readonly state: 'gettingReady' | 'ready' | 'notHere';
  readonly newer: boolean;
  /** Why the newer one was not taken just now. */
  readonly held: string | null;
}

export const useOffline = create<Offline>(() => ({ state: 'gettingReady', newer: false, held: null }));

let registered: ServiceWorkerRegistration | undefined;
/** Only the page whose person asked for the newer version loads again; other tabs keep what they have. */
let asked = false;
/** Whether a version had hold of this page: another one that takes it over came by another tab. */
let held = false;

const follow = (worker: ServiceWorker | null): void => {
  const look = (): void => {
    if (worker?.state === 'activated') useOffline.setState({ state: 'ready' });
    if (worker?.state === 'installed' && registered?.active) useOffline.setState({ newer: true });
  };
  worker?.addEventListener('statechange', look);
  look();
};

/** Keeps the program on this device, and notices a newer version. Where the browser does not allow it, says so. */
export const keepProgram = async (): Promise<void> => {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return useOffline.setState({ state: 'notHere' });
  held = serviceWorker.controller !== null;
  try {
    registered = await serviceWorker.register('sw.js');
    follow(registered.active);
    follow(registered.waiting);
    follow(registered.installing);
    registered.addEventListener('updatefound', () => follow(registered?.installing ?? null));
    serviceWorker.addEventListener('controllerchange', () => {
      if (asked) location.reload();
      else if (held) useOffline.setState({ newer: true, held: newerText.otherTab });
      held = true;
    });
  } catch {
    if (!serviceWorker.controller) useOffline.setState({ state: 'notHere' });
  }
};

/** Something typed into a form of the card and not yet recorded. */
const typing = (): boolean =>
  [...document.querySelectorAll<HTMLInputElement>('form input[type="text"], form textarea')].some(
    ({ value }) => value.trim() !== '',
  );

/** Takes the newer version: after everything is saved, and not while an entry is half typed. */
export const takeNewer = async (): Promise<void> => {
  if (typing()) {
    useOffline.setState({ held: newerText.typing });
    return;
  }
  await save();
  if (useSaved.getState().state === 'failed') {
    useOffline.setState({ held: newerText.notSaved });
    return;
  }
  asked = true;
  if (registered?.waiting) registered.waiting.postMessage({ type: 'SKIP_WAITING' });
  else location.reload();
};
