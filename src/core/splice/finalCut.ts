import { type Figure, figure } from '../base/figure.ts';
import type { RecordOf } from '../job/jobSchema.ts';
import type { Design, Part } from './result.ts';

/** The piece as it is sawn, from the opening measured after spreading. */
export interface FinalCut {
  readonly part: string;
  /** As measured, on the longest line. */
  readonly openingIn: Figure;
  readonly longIn: Figure;
  readonly shortIn: Figure;
}

/** Topic of the measured opening: `opening:MEMBER:METHOD`, `valueIn` on the longest line, after spreading. */
export const openingTopic = (member: string, method: Design['method']): string =>
  `opening:${member}:${method}`;

const isCut = ({ kind }: Part): boolean => kind === 'section' || kind === 'largerTube' || kind === 'member';

/**
 * Final length of the new piece from the opening as measured after spreading.
 *
 *   long point = long point as computed + (opening measured − opening computed)          short point alike
 *
 * @returns null where the method cuts no opening, or none was measured
 * Assumes: both cuts stand as drawn; the gaps stay as the rule gives them.
 * Source: AC 43.13-1B, 4-95; that the section is cut to the opening measured is common practice.
 */
export const finalCut = (
  member: string,
  { method, plan }: Pick<Design, 'method' | 'plan'>,
  manual: readonly RecordOf<'manual'>[],
): FinalCut | null => {
  const topic = openingTopic(member, method);
  const measured = manual.findLast((m) => m.topic === topic && (m.valueIn ?? 0) > 0);
  const computed = plan?.fitUp.find((row) => row.step === 'opening')?.value;
  const part = plan?.parts.find(isCut);
  if (!measured || !computed || !part) return null;
  const more = measured.valueIn! - computed.value;
  const basis = { kind: 'measured', ref: measured.id } as const;
  const cut = (value: number): Figure => figure(value + more, 'in', basis, ['from-the-opening-measured']);
  return {
    part: part.id,
    openingIn: figure(measured.valueIn!, 'in', basis),
    longIn: cut(part.longIn.value),
    shortIn: cut(part.shortIn.value),
  };
};
