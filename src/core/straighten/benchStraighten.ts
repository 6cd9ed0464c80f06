import type { Figure } from '../base/figure.ts';
import type { Tube } from '../job/modelSchema.ts';
import { materialOf } from '../truss/stock.ts';
import { fitOfFinding } from './fitOfFinding.ts';
import type { AxisFit, SetUp } from './result.ts';
import { setUps } from './setups.ts';
import { yieldOf } from './yieldOf.ts';

/** One bent tube on the bench, as it is typed in. */
export interface BenchBend {
  readonly tube: Tube;
  readonly material: string;
  readonly betweenClustersIn: number;
  readonly bowIn: number;
  readonly atIn: number;
  readonly shape?: 'smooth' | 'kinked';
  readonly clock?: number;
  /** Block spacing wanted. */
  readonly spanIn?: number;
}

/**
 * Set-ups that straighten one tube without a truss around it: the same sums as the stage `straighten`.
 *
 * @returns null where the material's strength is not known
 * Assumes: blocks may stand anywhere between the two ends.
 */
export const benchStraighten = (
  bend: BenchBend,
): { readonly fit: AxisFit; readonly setups: readonly SetUp[]; readonly yieldPsi: Figure } | null => {
  const steel = materialOf(bend.material);
  const lengthIn = bend.betweenClustersIn;
  const fit = fitOfFinding(
    { from: 'from', to: 'to', lengthIn },
    {
      id: 'bench',
      depthIn: bend.bowIn,
      place: { from: 'from', atIn: bend.atIn },
      ...(bend.shape && { shape: bend.shape }),
      ...(bend.clock !== undefined && { clock: bend.clock }),
    },
  );
  if (!steel || !fit) return null;
  const yieldPsi = yieldOf(
    { id: 'bench', material: bend.material, section: { yieldPsi: steel.yieldPsi } },
    [],
  );
  const setups = setUps(fit, {
    tube: bend.tube,
    elasticPsi: steel.elasticPsi,
    yieldPsi,
    clearIn: [0, lengthIn],
    ...(bend.spanIn !== undefined && { spanIn: bend.spanIn }),
  });
  return { fit, setups, yieldPsi };
};
