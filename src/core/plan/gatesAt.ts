import { type Draft, holdId, idOf } from './draft.ts';
import type { GateName } from './result.ts';

/** `H4:U3R-U4R`; `H1` for the whole job. */
export const gateId = (name: GateName, of?: string): string => (of === undefined ? name : `${name}:${of}`);

/** Names of the gates before and after a step. */
export const gatesAt = (
  step: Draft,
  steps: readonly Draft[],
): { readonly before: readonly string[]; readonly after: readonly string[] } => {
  const of = step.of ?? '';
  const agreed = [gateId('H1'), gateId('H2'), gateId('H3')];
  const welded = steps.some((s) => s.id === idOf('inspectWelds', of));
  switch (step.kind) {
    case 'release':
    case 'straighten':
      return { before: agreed, after: [] };
    case 'roundOut':
      return { before: step.id === idOf('straighten', of) ? agreed : [], after: [] };
    case 'cut':
      return { before: [...agreed, gateId('H4', of)], after: [] };
    case 'inspect':
      return { before: [], after: [gateId('H2')] };
    case 'fitUp':
      return { before: [], after: [gateId('H5', of)] };
    case 'tack':
      return { before: [gateId('H5', of)], after: [gateId('H6', of)] };
    case 'weldFirst':
    case 'weld':
      return { before: [gateId('H6', of)], after: [] };
    case 'inspectWelds':
      return { before: [], after: [gateId('H7', of)] };
    case 'trammel':
      return {
        before: [],
        after:
          step.id === holdId('beforeCutting')
            ? [gateId('H1')]
            : step.id === holdId('afterWelding')
              ? [gateId('H8')]
              : [],
      };
    case 'protect':
      return {
        before: [...(welded ? [gateId('H7', of)] : []), gateId('H8')],
        after: welded ? [] : [gateId('H9', of)],
      };
    case 'vents':
      return { before: [], after: [gateId('H9', of)] };
    case 'weigh':
      return {
        before: steps.filter((s) => s.kind === 'protect').map((s) => gateId('H9', s.of)),
        after: [gateId('H10')],
      };
    default:
      return { before: [], after: [] };
  }
};
