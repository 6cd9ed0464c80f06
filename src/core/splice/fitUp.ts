import type { Figure } from '../base/figure.ts';
import type { FitUp, Method, Part, SleeveChoice } from './result.ts';

/**
 * What is looked at before the first tack, one by one: it cannot be seen after. Proof of material for each new tube;
 * every part that must be on before the last joint closes; a second person last, not the one who did the work.
 * Source: needs.md N25, N26; common practice, no source.
 */
export const fitUpFor = (
  method: Method,
  parts: readonly Part[],
  sleeve: SleeveChoice | null,
  sizes: { readonly opening?: Figure; readonly gap?: Figure } = {},
): readonly FitUp[] => {
  const section = parts.find((p) => p.kind === 'section' || p.kind === 'largerTube' || p.kind === 'member');
  const inside = method === 'innerSleeve';
  return [
    ...parts.map((p): FitUp => ({ step: 'proof', part: p.id })),
    ...(inside ? [{ step: 'bore' } as const] : []),
    ...(sleeve?.chosen ? [{ step: 'clearance', value: sleeve.chosen.slackIn } as const] : []),
    ...(method === 'splitSleeve' ? [{ step: 'stopDrill' } as const, { step: 'halves' } as const] : []),
    ...parts.filter((p) => p.slideOn).map((p): FitUp => ({ step: 'slideOn', part: p.id, value: p.axisIn })),
    ...(sizes.opening ? [{ step: 'opening', value: sizes.opening } as const] : []),
    ...(section ? [{ step: 'cutLength', part: section.id, value: section.longIn } as const] : []),
    ...(sizes.gap ? [{ step: 'gap', value: sizes.gap } as const] : []),
    ...parts
      .filter((p) => p.centreMarkIn)
      .map((p): FitUp => ({ step: 'marks', part: p.id, ...(p.centreMarkIn && { value: p.centreMarkIn }) })),
    { step: 'secondPerson' },
  ];
};
