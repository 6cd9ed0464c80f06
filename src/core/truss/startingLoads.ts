import type { LoadCase, Model, Setup } from '../job/modelSchema.ts';
import type { Cluster, Truss } from './result.ts';

/** Plain ways to be held and to be loaded, with numbers to begin with. */
export const heldTemplates = ['onItsGear', 'inJig', 'trestles'] as const;
export type HeldTemplate = (typeof heldTemplates)[number];
export const loadTemplates = ['ownWeight', 'tailDown', 'landing', 'twist'] as const;
export type LoadTemplate = (typeof loadTemplates)[number];

/** Said with every number below. */
const invented = 'Starting value, invented: change it to your own.';

const lower = (truss: Truss): Cluster[] => truss.clusters.filter((c) => c.height === 'L');

/** The lower clusters of the station nearest a share of the length; left or centre first. */
const ringAt = (truss: Truss, share: number, height: 'U' | 'L' = 'L'): Cluster[] => {
  const all = truss.clusters.filter((c) => c.height === height);
  const xs = all.map((c) => c.at[0]);
  const at = Math.min(...xs) + share * (Math.max(...xs) - Math.min(...xs));
  const near = all.reduce<Cluster | undefined>(
    (best, c) => (best && Math.abs(best.at[0] - at) <= Math.abs(c.at[0] - at) ? best : c),
    undefined,
  );
  return near ? all.filter((c) => c.station === near.station) : [];
};

/** Clusters whose fitting says what is sought; else those a rough share of the length gives. */
const fitted = (truss: Truss, word: RegExp, otherwise: readonly Cluster[]): readonly Cluster[] => {
  const said = lower(truss).filter((c) => c.fitting !== undefined && word.test(c.fitting));
  return said.length > 0 ? said : otherwise;
};

const gear = (truss: Truss): readonly Cluster[] => fitted(truss, /gear/i, ringAt(truss, 0.25));
const tail = (truss: Truss): readonly Cluster[] => fitted(truss, /tail/i, ringAt(truss, 1)).slice(0, 1);

const hold = (c: Cluster, fixed: Setup['held'][number]['fixed']): Setup['held'][number] => ({
  cluster: c.id,
  fixed,
});

/**
 * A way to be held, of clusters found by their fittings or by their place along the truss: gear a quarter of the way aft,
 * tail at the end. Common practice, no source; the user's to change.
 */
export const startingSetup = (truss: Truss, template: HeldTemplate): Setup => {
  switch (template) {
    case 'onItsGear': {
      const [first, second, ...rest] = gear(truss);
      return {
        id: 'gear-and-tail',
        name: 'On its gear and tail',
        held: [
          ...(first ? [hold(first, ['x', 'y', 'z'])] : []),
          ...(second ? [hold(second, ['x', 'z'])] : []),
          ...rest.map((c) => hold(c, ['z'])),
          ...tail(truss).map((c) => hold(c, ['z'])),
        ],
      };
    }
    case 'inJig': {
      const ring = truss.clusters.filter(
        (c) => c.station !== undefined && c.station === truss.clusters[0]?.station,
      );
      return {
        id: 'jig',
        name: 'In a jig: forward ring and tail',
        held: [...ring.map((c) => hold(c, ['x', 'y', 'z'])), ...tail(truss).map((c) => hold(c, ['y', 'z']))],
      };
    }
    case 'trestles': {
      const [a, b] = ringAt(truss, 0);
      const [c, d] = ringAt(truss, 0.7);
      return {
        id: 'trestles',
        name: 'On trestles, forward and aft',
        held: [
          ...(a ? [hold(a, ['x', 'y', 'z'])] : []),
          ...(b ? [hold(b, ['x', 'z'])] : []),
          ...(c ? [hold(c, ['y', 'z'])] : []),
          ...(d ? [hold(d, ['z'])] : []),
        ],
      };
    }
  }
};

/** A load case on the model's set-ups, with invented numbers that say so. */
export const startingLoad = (truss: Truss, model: Model, template: LoadTemplate): LoadCase => {
  const setup = (wanted: string): { setup?: string } => {
    const found = model.setups.find((s) => s.id === wanted) ?? model.setups[0];
    return found ? { setup: found.id } : {};
  };
  const [up] = ringAt(truss, 1, 'U');
  const [down] = tail(truss);
  switch (template) {
    case 'ownWeight':
      return {
        ...{ id: 'own-weight', name: 'Own weight, 1 g down', ...setup('gear-and-tail') },
        ...{ gravity: [0, 0, -1], loads: [], source: 'Weight of the tubes alone. Add what hangs on it.' },
      };
    case 'tailDown':
      return {
        ...{ id: 'tail-down', name: 'Tail down-load', ...setup('jig'), gravity: [0, 0, 0] },
        loads: up ? [{ cluster: up.id, forceLbf: [0, 0, -300] }] : [],
        source: invented,
      };
    case 'landing':
      return {
        ...{ id: 'landing', name: 'Landing on the gear', ...setup('jig'), gravity: [0, 0, -2] },
        loads: gear(truss).map((c) => ({ cluster: c.id, forceLbf: [100, 0, 800] })),
        source: invented,
      };
    case 'twist':
      return {
        ...{ id: 'twist', name: 'Fin side-load: bends and twists', ...setup('jig'), gravity: [0, 0, 0] },
        loads: [
          ...(up ? [{ cluster: up.id, forceLbf: [0, 250, 0] as [number, number, number] }] : []),
          ...(down ? [{ cluster: down.id, forceLbf: [0, -100, 0] as [number, number, number] }] : []),
        ],
        source: invented,
      };
  }
};
