import type { Figure } from '../base/figure.ts';
import { figure } from '../base/figure.ts';
import type { Tube } from '../job/modelSchema.ts';
import type { WorkUnit } from '../plan/units.ts';
import type { Design } from '../splice/result.ts';
import type { Truss } from '../truss/result.ts';
import type { StockPiece } from './result.ts';

/** A piece and what it is cut from. */
export interface Cut {
  readonly tube: Tube;
  readonly material: string;
  readonly piece: StockPiece;
}

const computed = (value: number, ref: string, assumed: readonly string[] = []): Figure =>
  figure(value, 'in', { kind: 'computed', ref }, assumed);

const pieceOf = (member: string, part: string, netIn: Figure, longIn: number, kerfIn: Figure): StockPiece => {
  const scarf = Math.max(0, longIn - netIn.value);
  return {
    id: `${member} ${part}`,
    member,
    part,
    netIn,
    scarfIn: computed(scarf, 'longest-less-axis'),
    kerfIn,
    takesIn: computed(netIn.value + scarf + kerfIn.value, 'net-scarf-kerf', netIn.assumed),
  };
};

/**
 * The lengths one repair is cut from: net length on the axis, what its angled ends add to the longest line, and one kerf.
 * A patch is plate and is not here. A whole tube without a design is taken cluster to cluster, and says so; a splice or
 * sleeve without a design gives none, and neither does a tube with an end whose place is a guess.
 */
export const piecesOf = (
  truss: Truss,
  unit: WorkUnit,
  design: Design | null,
  kerfIn: Figure,
): readonly Cut[] => {
  if (design?.plan) {
    const many = new Map<string, number>();
    return design.plan.parts
      .filter((p) => p.kind !== 'patch')
      .map((p) => {
        const n = (many.get(p.kind) ?? 0) + 1;
        many.set(p.kind, n);
        const name = n === 1 ? p.kind : `${p.kind} ${n}`;
        return {
          tube: p.tube,
          material: p.material,
          piece: pieceOf(unit.id, name, p.axisIn, p.longIn.value, kerfIn),
        };
      });
  }
  if (unit.way !== 'open' || unit.kind !== 'member' || unit.choice === 'splice') return [];
  const member = truss.members.find((m) => m.id === unit.id)!;
  if (member.guessed) return [];
  const { odIn, wallIn } = member.section;
  const net = computed(member.lengthIn, 'cluster-to-cluster', ['no-design', 'ends-not-coped']);
  return [
    {
      tube: { odIn, wallIn },
      material: member.material,
      piece: pieceOf(unit.id, 'member', net, member.lengthIn, kerfIn),
    },
  ];
};
