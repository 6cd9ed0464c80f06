import type { CSSProperties, ReactNode } from 'react';
import type { Damage } from '../../core/job/jobSchema.ts';
import type { State } from '../../core/walkRound/result.ts';
import { damageTags, tags } from '../../present/tags.ts';
import { usePrefs } from '../state/prefs.ts';

type Glyph = (typeof tags)[State]['glyph'] | (typeof damageTags)[Damage]['glyph'];

/** Line drawings on a 16 × 16 field. */
const drawings: { readonly [G in Glyph]: ReactNode } = {
  ring: <circle cx="8" cy="8" r="5" />,
  dot: <circle cx="8" cy="8" r="2.5" fill="currentColor" />,
  triangle: <path d="M8 2.5 14 13H2Z" />,
  arc: <path d="M2 11Q8 3 14 11" />,
  twoRings: <path d="M4 8a3 3 0 1 0 6 0a3 3 0 1 0-6 0M8 8a3 3 0 1 0 6 0a3 3 0 1 0-6 0" />,
  slash: <path d="M3 13 13 3" />,
  cross: <path d="M3 3 13 13M13 3 3 13" />,
  damage: <path d="M2 8q1.5-4 3 0t3 0 3 0 3 0" />,
  bowArc: <path d="M1.5 12Q8 1 14.5 12M1.5 12h13" />,
  kinkChevron: <path d="M2 12 8 4 14 12" />,
  dentMoon: <path d="M2 4h3a3 4 0 0 0 6 0h3" />,
  crackZigzag: <path d="M8 1 5.5 5 9.5 8 6 11 8.5 15" />,
  ovalRing: <ellipse cx="8" cy="8" rx="6.5" ry="3.8" />,
  thinStipple: <path d="M3 4h.1M7 3h.1M12 5h.1M5 8h.1M10 9h.1M3 12h.1M8 13h.1M13 12h.1" strokeWidth="2.2" />,
  holeRing: (
    <>
      <circle cx="8" cy="8" r="5" />
      <circle cx="8" cy="8" r="1" fill="currentColor" />
    </>
  ),
  breakGap: <path d="M1 8h4.5M10.5 8H15M6.5 5l-2 6M11.5 5l-2 6" />,
  otherQuery: <path d="M5 6a3 3 0 1 1 4.2 2.7C8.4 9.1 8 9.6 8 11M8 13.5v.1" />,
};

export const GlyphMark = ({ glyph }: { readonly glyph: Glyph }) => (
  <svg
    className="glyph"
    viewBox="0 0 16 16"
    aria-hidden="true"
    fill="none"
    stroke="currentColor"
    strokeWidth="1.8"
    strokeLinecap="round"
    strokeLinejoin="round"
  >
    {drawings[glyph]}
  </svg>
);

const useInk = (state: State): CSSProperties & { '--tag': string } => {
  const light = usePrefs((prefs) => prefs.light);
  return { '--tag': light === 'night' ? tags[state].dark : tags[state].light };
};

/** Pattern and glyph without the word, for a line that is opened to read the words. */
export const TagSign = ({ state }: { readonly state: State }) => (
  <span className="tag" style={useInk(state)}>
    <span className={`swatch short ${tags[state].pattern}`} aria-hidden="true" />
    <GlyphMark glyph={tags[state].glyph} />
  </span>
);

/** Colour, pattern, glyph and word of a state; together always. `damage` gives "undecided" its kind. */
export const TagMark = ({
  state,
  damage,
  word = tags[state].word,
}: {
  readonly state: State;
  readonly damage?: Damage | undefined;
  readonly word?: string | undefined;
}) => {
  const tag = tags[state];
  const ink = useInk(state);
  const glyph = state === 'undecided' && damage ? damageTags[damage].glyph : tag.glyph;
  return (
    <span className="tag" style={ink}>
      <span className={`swatch ${tag.pattern}`} aria-hidden="true" />
      <GlyphMark glyph={glyph} />
      <span className="tag-word">{word}</span>
    </span>
  );
};
