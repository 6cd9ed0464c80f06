import { cross, type Vec3 } from '../../core/base/vec3.ts';
import { clockFace } from '../../core/truss/place.ts';
import type { AtOnce } from '../state/answer.ts';
import { dialText } from '../text/clock.ts';
import type { DialWords } from './ClockDial.tsx';

const ways: readonly (readonly [axis: 0 | 1 | 2, positive: string, negative: string])[] = [
  [0, 'aft', 'forward'],
  [1, 'right', 'left'],
  [2, 'up', 'down'],
];

/** The aircraft direction a vector points in most. */
const wayWords = (v: Vec3): string => {
  const [axis, positive, negative] = [...ways].sort((a, b) => Math.abs(v[b[0]]) - Math.abs(v[a[0]]))[0]!;
  return v[axis] > 0 ? positive : negative;
};

/** How the clock lies on a tube: which way one looks along it, and what is at 12 and at 3. A cluster: looking forward. */
export const dialWords = (now: AtOnce, id: string): DialWords => {
  const member = now.members.get(id);
  const [from, to] = [now.clusters.get(member?.from ?? ''), now.clusters.get(member?.to ?? '')];
  if (!member || !from || !to) return { look: dialText.forward, at12: 'up', at3: 'right' };
  const { twelve, three } = clockFace([from.at, to.at], member);
  const look = wayWords(cross(twelve, three));
  return {
    look: dialText.along(look),
    at12: wayWords(twelve),
    at3: wayWords(three),
  };
};
