import { useState } from 'react';
import { showTube } from '../../present/show.ts';
import { usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { couponText } from '../text/practice.ts';
import { draw } from '../worker/asked.ts';

/** Sizes of scrap that a shop has, and that a stock sleeve goes into. */
const scraps = [
  { odIn: 0.625, wallIn: 0.035 },
  { odIn: 0.75, wallIn: 0.035 },
  { odIn: 0.875, wallIn: 0.035 },
  { odIn: 1, wallIn: 0.035 },
  { odIn: 1, wallIn: 0.049 },
] as const;

/** The printed card for the bench and its full-size templates. */
export const Coupon = () => {
  const { units, paper } = usePrefs();
  const [size, setSize] = useState(1);
  const [working, setWorking] = useState(false);
  const save = async (): Promise<void> => {
    setWorking(true);
    try {
      for (const { name, bytes } of await draw({
        kind: 'coupon',
        options: { tube: scraps[size]!, paper, units },
      }))
        saveFile(name, new Uint8Array(bytes), 'application/pdf');
    } finally {
      setWorking(false);
    }
  };
  return (
    <div className="row coupon">
      <div className="field">
        <label htmlFor="coupon-tube">{couponText.scrap}</label>
        <select id="coupon-tube" value={size} onChange={(e) => setSize(Number(e.target.value))}>
          {scraps.map((tube, k) => (
            <option key={`${tube.odIn} ${tube.wallIn}`} value={k}>
              {showTube(tube, units)}
            </option>
          ))}
        </select>
      </div>
      <button type="button" disabled={working} onClick={() => void save()}>
        {working ? couponText.drawing : couponText.save}
      </button>
    </div>
  );
};
