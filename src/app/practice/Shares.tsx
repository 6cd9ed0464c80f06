import type { Share } from '../../core/practice/hiddenDamage.ts';
import { sharesText } from '../text/practice.ts';

/** Marks, one skill a line: a bar and the count. There is no sum of them. */
export const Shares = ({ shares }: { readonly shares: Readonly<Record<string, Share>> }) => (
  <dl className="shares">
    {Object.entries(shares).map(([name, { got, of }]) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd>{of === 0 ? sharesText.notAsked : sharesText.share(got, of)}</dd>
        <div className="share-bar" aria-hidden="true">
          <span style={{ width: `${of === 0 ? 0 : (100 * got) / of}%` }} />
        </div>
      </div>
    ))}
  </dl>
);
