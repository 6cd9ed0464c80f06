import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { banded, inks, stateColour } from '../../../src/app/scene/inks.ts';
import { patternNumber } from '../../../src/app/scene/materials.ts';
import { says } from '../../../src/app/scene/says.ts';
import { states } from '../../../src/core/walkRound/result.ts';
import { tags } from '../../../src/present/tags.ts';
import { boxTruss } from './boxTruss.ts';

const css = readFileSync('src/app/style/tokens.css', 'utf8');
const token = (light: string, name: string) =>
  new RegExp(`\\[data-light="${light}"\\][^}]*--${name}:\\s*([^;]+);`).exec(css)?.[1];

/** Relative luminance and contrast of sRGB colours; source: WCAG 2.2, definitions "relative luminance", "contrast ratio". */
const luminance = (hex: string) => {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
};
const contrast = (a: string, b: string) => {
  const [hi, lo] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (hi! + 0.05) / (lo! + 0.05);
};

describe('inks', () => {
  it('are the same as the panels use', () => {
    for (const light of ['day', 'night', 'outdoor'] as const) {
      expect(inks[light].paper).toBe(token(light, 'paper'));
      expect(inks[light].ink).toBe(token(light, 'ink'));
      expect(inks[light].soft).toBe(token(light, 'ink-soft'));
      expect(inks[light].accent).toBe(token(light, 'accent'));
    }
  });

  it('have the contrast of text for writing, 7 outdoors, and of graphics for what is selected', () => {
    for (const light of ['day', 'night', 'outdoor'] as const) {
      const { paper, ink, soft, accent } = inks[light];
      const text = light === 'outdoor' ? 7 : 4.5;
      for (const colour of [ink, soft]) expect(contrast(paper, colour)).toBeGreaterThanOrEqual(text);
      expect(contrast(paper, accent)).toBeGreaterThanOrEqual(text);
    }
  });

  it('give every banded state a pattern of its own, and no state only a colour', () => {
    const patterns = states.filter((s) => banded[s]).map((s) => patternNumber[tags[s].pattern]);
    expect(new Set(patterns).size).toBe(patterns.length);
    expect(patterns.every((n) => n > 0)).toBe(true);
    expect(new Set(states.map((s) => stateColour(s, 'day'))).size).toBe(states.length);
  });
});

describe('says', () => {
  it('tells how much there is, in what state, and what is selected', () => {
    const words = says({
      truss: boxTruss(2),
      marks: new Map([
        [
          'U1L-U2L',
          { id: 'U1L-U2L', kind: 'member', state: 'splice', findings: [], damage: [], finishRemoved: false },
        ],
      ]),
      selected: new Set(['U1L-U2L']),
      ghosted: new Set(),
      labels: 'none',
      light: 'day',
      view: { view: 'keep', fit: 'none', turn: 0 },
      reducedMotion: true,
      onPick: () => {},
    });
    expect(words).toBe(
      'Truss of 14 tubes and 8 clusters. Splice 1, Not looked at 13. Selected: U1L–U2L. Everything in the picture is in the table',
    );
  });
});
