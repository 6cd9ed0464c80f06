import { useEffect, useState } from 'react';

/** A function that is fetched when it is first wanted, so that the first picture does not wait for it. */
export const useLater = <F extends (...args: never[]) => unknown>(
  wanted: boolean,
  fetch: () => Promise<F>,
): F | null => {
  const [got, setGot] = useState<F | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: fetched once, whatever the caller's closure is called
  useEffect(() => {
    if (wanted && !got) void fetch().then((f) => setGot(() => f));
  }, [wanted, got]);
  return got;
};
