import { useSyncExternalStore } from 'react';

const still = matchMedia('(prefers-reduced-motion: reduce)');

/** Does the person ask for no motion? */
export const useStill = (): boolean =>
  useSyncExternalStore(
    (changed) => {
      still.addEventListener('change', changed);
      return () => still.removeEventListener('change', changed);
    },
    () => still.matches,
  );
