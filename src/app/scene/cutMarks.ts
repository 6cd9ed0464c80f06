import { distance, type Vec3 } from '../../core/base/vec3.ts';
import { type Drawn, pointOn } from './drawn.ts';
import { at, type Overlay } from './overlay.ts';
import type { SceneCut } from './sceneProps.ts';

/** Where a kerf lies in the picture, and the tube it goes through. */
export const kerfOf = (
  d: Drawn,
  { member, fromIn, toIn }: SceneCut,
): { readonly at: Vec3; readonly along: readonly [Vec3, Vec3]; readonly radiusIn: number } | null => {
  const i = d.memberIndex.get(member);
  if (i === undefined) return null;
  const along = [pointOn(d, i, 0), pointOn(d, i, 1)] as const;
  const share = Math.min(0.95, Math.max(0.05, (fromIn + toIn) / 2 / distance(...along)));
  return { at: pointOn(d, i, share), along, radiusIn: d.radii[i]! };
};

/** A kerf as a shop draws a break: paper through the tube, a saw's zigzag on either side. No draw call of its own. */
export const paintCuts = (o: Overlay, d: Drawn, cuts: readonly SceneCut[]): void => {
  for (const cut of cuts) {
    const kerf = kerfOf(d, cut);
    if (!kerf) continue;
    const [a, b, p] = [at(o, kerf.along[0]), at(o, kerf.along[1]), at(o, kerf.at)];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (long < 8) continue;
    const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long];
    const half = Math.max(kerf.radiusIn * o.turntable.scale, o.inks.leastTube / 2) + 7;
    const zigzag = (off: number): void => {
      const steps = 6;
      for (let k = 0; k <= steps; k++) {
        const across = -half + (2 * half * k) / steps;
        const along = off + (k % 2 === 0 ? -2.5 : 2.5);
        const [x, y] = [p.x + ux * along - uy * across, p.y + uy * along + ux * across];
        if (k === 0) o.pen.moveTo(x, y);
        else o.pen.lineTo(x, y);
      }
    };
    const draw = (offs: readonly number[], ink: string, width: number): void => {
      o.pen.beginPath();
      for (const off of offs) zigzag(off);
      o.pen.strokeStyle = ink;
      o.pen.lineWidth = width;
      o.pen.lineJoin = 'round';
      o.pen.stroke();
    };
    draw([0], o.inks.paper, 7);
    draw([-4, 4], o.inks.accent, 2 * o.inks.line);
  }
};
