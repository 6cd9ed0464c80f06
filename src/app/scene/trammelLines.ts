import { at, type Overlay, stroke } from './overlay.ts';
import type { SceneLine } from './sceneProps.ts';

/** Lines between marks, drawn as a dimension is: thin, with a slanted tick at each end. Their numbers are labels. */
export const paintLines = (o: Overlay, lines: readonly SceneLine[]): void => {
  for (const { from, to, strong } of lines) {
    const [a, b] = [at(o, from), at(o, to)];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (long < 1) continue;
    const ink = strong ? o.inks.accent : o.inks.ink;
    const width = (strong ? 2 : 1) * o.inks.line;
    stroke(o, a, b, o.inks.paper, width + 2.5);
    stroke(o, a, b, ink, width);
    const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long];
    const tick = { x: (ux - uy) * 5, y: (uy + ux) * 5 };
    for (const p of [a, b])
      stroke(o, { x: p.x - tick.x, y: p.y - tick.y }, { x: p.x + tick.x, y: p.y + tick.y }, ink, width + 0.5);
  }
};
