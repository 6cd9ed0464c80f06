import { type Issue, issue } from '../base/issue.ts';
import type { Held } from '../job/jobSchema.ts';
import type { Freedom, Model } from '../job/modelSchema.ts';
import type { Member, Truss } from '../truss/result.ts';
import { materialOf, roundSection } from '../truss/stock.ts';
import { threeTwoOne } from './threeTwoOne.ts';

/** A cluster and which of its freedoms are held. */
export interface HeldCluster {
  readonly cluster: string;
  readonly fixed: readonly Freedom[];
}

/** A tube clamped or tacked in for the work. Assumes: of steel, and it takes tension and compression only. */
export type Brace = Pick<Member, 'id' | 'from' | 'to' | 'section' | 'ends'>;

/** How the truss is held. */
export interface HeldNow {
  /** Id of the set-up; `listed` for clusters that a `held` record names; `threeTwoOne` for supports of our own choosing. */
  readonly heldAs: string;
  /** False when nobody has said how the truss is held: forces are right, sag and cut candidates are not to be ranked. */
  readonly ranked: boolean;
  readonly joints: Model['joints'];
  readonly held: readonly HeldCluster[];
  readonly braces: readonly Brace[];
  readonly issues: readonly Issue[];
}

const BRACE = 'brace:';
/** Is the frame member of this id a brace, not a tube of the truss? */
export const isBrace = (memberId: string): boolean => memberId.startsWith(BRACE);

/**
 * How the truss is held now: by the latest `held` record, else the model's first set-up, else 3-2-1 supports.
 *
 * @param records  standing `held` records
 * Fails: names that do not exist become issues; what is left of the record is used.
 */
export const heldNow = (truss: Truss, model: Model, records: readonly Held[]): HeldNow => {
  const latest = records.reduce<Held | undefined>(
    (best, r) => (best && (best.at > r.at || (best.at === r.at && best.id > r.id)) ? best : r),
    undefined,
  );
  const base = { joints: model.joints, braces: [], issues: [] };
  if (!latest) {
    const first = model.setups[0];
    return first ? heldBySetup(truss, model, first.id) : byOurselves(truss, base);
  }
  const at = `records[${latest.id}]`;
  const issues: Issue[] = [];
  const braces = knownBraces(truss, latest, at, issues);
  if (latest.held) {
    const held = knownClusters(truss, latest.held, at, issues);
    return { ...base, heldAs: 'listed', ranked: true, held, braces, issues };
  }
  const setup =
    model.setups.find((s) => s.id === latest.setup) ?? (latest.setup ? undefined : model.setups[0]);
  if (setup) {
    const held = knownClusters(truss, setup.held, `model.setups[${setup.id}]`, issues);
    return { ...base, heldAs: setup.id, ranked: true, held, braces, issues };
  }
  if (latest.setup)
    issues.push(issue('unknown-setup', `${at}.setup`, { setup: latest.setup }, 'name-a-setup-of-the-model'));
  return byOurselves(truss, { ...base, braces, issues });
};

/** How a set-up of the model holds the truss, without braces; `free` is 3-2-1 supports. */
export const heldBySetup = (truss: Truss, model: Model, id: string): HeldNow => {
  const base = { joints: model.joints, braces: [], issues: [] };
  const setup = model.setups.find((s) => s.id === id);
  if (!setup) {
    const issues =
      id === 'free'
        ? []
        : [issue('unknown-setup', 'model.setups', { setup: id }, 'name-a-setup-of-the-model')];
    return byOurselves(truss, { ...base, issues });
  }
  const issues: Issue[] = [];
  const held = knownClusters(truss, setup.held, `model.setups[${id}]`, issues);
  return { ...base, heldAs: id, ranked: true, held, issues };
};

const byOurselves = (truss: Truss, base: Pick<HeldNow, 'joints' | 'braces' | 'issues'>): HeldNow => ({
  ...base,
  heldAs: 'threeTwoOne',
  ranked: false,
  held: threeTwoOne(truss),
});

const knownClusters = (
  truss: Truss,
  held: readonly HeldCluster[],
  at: string,
  issues: Issue[],
): HeldCluster[] => {
  const known = new Set(truss.clusters.map((c) => c.id));
  return held.flatMap(({ cluster, fixed }) => {
    if (known.has(cluster)) return [{ cluster, fixed }];
    issues.push(issue('unknown-cluster', `${at}.held`, { cluster }, 'name-a-cluster-of-the-model'));
    return [];
  });
};

const knownBraces = (truss: Truss, record: Held, at: string, issues: Issue[]): Brace[] => {
  const known = new Set(truss.clusters.map((c) => c.id));
  return (record.braces ?? []).flatMap(({ from, to, odIn, wallIn }, k) => {
    const missing = [from, to].filter((id) => !known.has(id));
    const where = `${at}.braces[${k}]`;
    for (const cluster of missing)
      issues.push(issue('unknown-cluster', where, { cluster }, 'name-a-cluster-of-the-model'));
    const size = roundSection({ odIn, wallIn });
    if (from === to) issues.push(issue('brace-to-itself', where, { cluster: from }, 'name-two-clusters'));
    if (!size) issues.push(issue('impossible-tube', where, { odIn, wallIn }, 'correct-the-wall'));
    if (missing.length > 0 || from === to || !size) return [];
    const { elasticPsi, shearPsi, yieldPsi, densityLbIn3 } = materialOf('4130N')!;
    const section = { odIn, wallIn, ...size, elasticPsi, shearPsi, yieldPsi, densityLbIn3 };
    return [{ id: `${BRACE}${from}-${to}`, from, to, section, ends: ['ball', 'ball'] }];
  });
};
