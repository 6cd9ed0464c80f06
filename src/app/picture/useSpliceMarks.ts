import { useMemo } from 'react';
import type { SceneCut } from '../scene/sceneProps.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { useShop } from '../state/shop.ts';
import { useView } from '../state/view.ts';
import { useLater } from './useLater.ts';

/** Cuts and sleeve ends in the picture, as `spliceMarksFor` gives them; worked only where they are shown. */
export const useSpliceMarks = (shown: boolean): readonly SceneCut[] | null => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  const units = usePrefs((prefs) => prefs.units);
  const shop = useShop();
  const marksFor = useLater(shown, async () => (await import('./spliceMarksFor.ts')).spliceMarksFor);
  return useMemo(
    () => (shown && now && all && marksFor ? marksFor({ now, all, selected, units, shop }) : null),
    [shown, now, all, selected, units, shop, marksFor],
  );
};
