import { takeNewer, useOffline } from '../offline.ts';
import { newerText as text } from '../text/frame.ts';

/** A newer version waits. It is taken when the person says so, never by itself. */
export const Newer = () => {
  const { newer, held } = useOffline();
  if (!newer) return null;
  return (
    <div className="banner row" role="note">
      <span>
        {text.ready} {held ?? text.keeps}
      </span>
      <button type="button" onClick={() => void takeNewer()}>
        {text.take}
      </button>
      <button type="button" onClick={() => useOffline.setState({ newer: false })}>
        {text.later}
      </button>
    </div>
  );
};
