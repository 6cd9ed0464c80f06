import { takeNewer, useOffline } from '../offline.ts';

/** A newer version waits. It is taken when the person says so, never by itself. */
export const Newer = () => {
  const { newer, held } = useOffline();
  if (!newer) return null;
  return (
    <div className="banner row" role="note">
      <span>A newer version of this program is ready. {held ?? 'What you entered stays as it is.'}</span>
      <button type="button" onClick={() => void takeNewer()}>
        Use it now
      </button>
      <button type="button" onClick={() => useOffline.setState({ newer: false })}>
        Later
      </button>
    </div>
  );
};
