import type { Trammel } from '../../core/trammel/result.ts';
import type { AtOnce } from '../state/answer.ts';
import { ownText } from '../text/trammelOwn.ts';
import { Drawn } from './TrammelDrawn.tsx';
import { OwnValue } from './TrammelOwnValue.tsx';
import { Plane } from './TrammelPlane.tsx';
import { Reference } from './TrammelReference.tsx';

/** The user's own limits, weld shrinkage and instruments, drawing distances, and the clusters taken as undamaged. */
export const TrammelOwn = ({ now, trammel }: { readonly now: AtOnce; readonly trammel: Trammel }) => (
  <details>
    <summary>{ownText.title}</summary>
    <div className="stack">
      <OwnValue now={now} />
      <Drawn trammel={trammel} />
      <Reference now={now} trammel={trammel} />
      <Plane now={now} />
    </div>
  </details>
);
