import { type Basis, figure } from '../base/figure.ts';
import type { Finding } from '../job/jobSchema.ts';
import type { Member } from '../truss/result.ts';
import type { AxisFit } from './result.ts';

type Bow = Extract<Finding, { damage: 'bow' }>;
const POINTS = 25;

/**
 * The axis as a bow finding describes it, for a first plan before straight-edge readings.
 *
 *   half-sine: turn = 2πe/L      kink at a, b = L − a: turn = e/a + e/b
 *
 * Assumes: no shape given, half-sine where the place is in the middle third of the chord, else a kink there; no place
 * given, mid-chord; a chord shorter than the tube lies centred on the place.
 * Source: `shapes.md`, findings; methods §3.
 */
export const fitOfFinding = (
  member: Pick<Member, 'from' | 'to' | 'lengthIn'>,
  finding: Pick<Bow, 'id' | 'depthIn' | 'chordIn' | 'place' | 'shape' | 'clock' | 'stdIn'>,
): AxisFit | null => {
  const { depthIn, place } = finding;
  if (depthIn === undefined || depthIn <= 0) return null;
  const chordIn = Math.min(finding.chordIn ?? member.lengthIn, member.lengthIn);
  if (chordIn <= 0) return null;
  const placeIn = place && (place.from === member.to ? member.lengthIn - place.atIn : place.atIn);
  const atIn = placeIn ?? member.lengthIn / 2;
  const start = Math.min(Math.max(0, atIn - chordIn / 2), member.lengthIn - chordIn);
  const share = Math.min(0.95, Math.max(0.05, (atIn - start) / chordIn));
  const shape = finding.shape ?? (share >= 1 / 3 && share <= 2 / 3 ? 'smooth' : 'kinked');
  const top = shape === 'smooth' ? 0.5 : share;
  const bow = (t: number): number =>
    depthIn * (shape === 'smooth' ? Math.sin(Math.PI * t) : t < top ? t / top : (1 - t) / (1 - top));
  const basis: Basis = { kind: 'measured', ref: finding.id };
  const assumed = [
    ...(finding.shape === undefined ? ['shape-by-place'] : []),
    ...(placeIn === undefined ? ['place-mid-length'] : []),
  ];
  const turn = shape === 'smooth' ? (2 * Math.PI * depthIn) / chordIn : depthIn / chordIn / (top * (1 - top));
  return {
    bowIn: figure(depthIn, 'in', basis, assumed, { std: finding.stdIn ?? 1 / 64 }),
    chordIn,
    atIn: figure(shape === 'smooth' ? atIn : start + top * chordIn, 'in', basis, assumed),
    clock: finding.clock ?? null,
    shape,
    turnRad: figure(turn, 'rad', basis, assumed),
    leftOverIn: 0,
    allRound: false,
    line: Array.from({ length: POINTS }, (_, i) => {
      const t = i / (POINTS - 1);
      return { atIn: start + t * chordIn, bowIn: bow(t) };
    }),
    records: [finding.id],
  };
};
