import { describe, expect, it } from 'vitest';
import { box, circle, text } from '../../../src/present/draw/pen.ts';
import { svgText } from '../../../src/present/draw/svg.ts';

describe('a drawing as SVG', () => {
  it('is true to size in millimetres and escapes what a person typed', () => {
    const svg = svgText(
      {
        widthMm: 100,
        heightMm: 50,
        ops: [
          box(0, 0, 100, 50, { fill: '#FFFFFF' }),
          circle([50, 25], 10, { fill: '#14181C' }),
          text([1, 4], '<Job> & "co"', 3),
        ],
      },
      'Left side, "Ditch" & more',
    );
    expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
    expect(svg).toContain('&lt;Job&gt; &amp; &quot;co&quot;');
    expect(svg).toContain('aria-label="Left side, &quot;Ditch&quot; &amp; more"');
    expect(svg.match(/<path/g)).toHaveLength(2);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});
