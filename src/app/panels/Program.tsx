import { VERSION } from '../../core/version.ts';
import { useOffline } from '../offline.ts';
import { programText as text } from '../text/start.ts';

/** Which version this is, and whether it starts without network. */
export const Program = () => {
  const state = useOffline((offline) => offline.state);
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      <p>
        {text.version(VERSION)} {text.states[state]} {text.stays}
      </p>
    </section>
  );
};
