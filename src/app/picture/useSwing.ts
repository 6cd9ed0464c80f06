import { useEffect, useState } from 'react';

/** Seconds of one swing to and fro. */
const PERIOD = 2.6;

/** Goes from 1 to −1 and back while `on`; 1 when not. */
export const useSwing = (on: boolean): number => {
  const [swing, setSwing] = useState(1);
  useEffect(() => {
    setSwing(1);
    if (!on) return;
    const began = performance.now();
    let asked = 0;
    const step = (now: number): void => {
      setSwing(Math.cos(((now - began) / 1000 / PERIOD) * 2 * Math.PI));
      asked = requestAnimationFrame(step);
    };
    asked = requestAnimationFrame(step);
    return () => cancelAnimationFrame(asked);
  }, [on]);
  return swing;
};
