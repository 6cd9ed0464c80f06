import { VERSION } from '../../core/version.ts';
import { type Offline, useOffline } from '../offline.ts';

const words = {
  ready: 'Ready without network.',
  gettingReady: 'Being kept on this device …',
  notHere: 'This browser or this address does not let the program be kept: it needs the network to start.',
} as const satisfies Record<Offline['state'], string>;

/** Which version this is, and whether it starts without network. */
export const Program = () => {
  const state = useOffline((offline) => offline.state);
  return (
    <section className="stack tight" aria-label="This program">
      <h2>This program</h2>
      <p>
        Tubewright {VERSION}. {words[state]} Nothing you enter leaves this device unless you save a file.
      </p>
    </section>
  );
};
