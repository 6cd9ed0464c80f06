import {
  type HeldTemplate,
  heldTemplates,
  type LoadTemplate,
  loadTemplates,
  startingLoad,
  startingSetup,
} from '../../core/truss/startingLoads.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { LoadCard } from './LoadCard.tsx';
import { SetupCard } from './SetupCard.tsx';

const heldWords = {
  onItsGear: 'On its gear',
  inJig: 'Hung in a jig',
  trestles: 'On trestles',
} as const satisfies Record<HeldTemplate, string>;
const loadWords = {
  ownWeight: 'Own weight',
  tailDown: 'Tail down-load',
  landing: 'Landing',
  twist: 'Twist',
} as const satisfies Record<LoadTemplate, string>;

const freeId = (rows: readonly { readonly id: string }[], base: string): string => {
  let n = 1;
  while (rows.some(({ id }) => id === `${base}-${n}`)) n += 1;
  return `${base}-${n}`;
};

/** Ways to be held and load cases, from plain templates or by hand, each then changed by hand. */
export const HeldAndLoads = () => {
  const model = useDraft((draft) => draft.model);
  const truss = useDraftTruss();
  const empty = truss.clusters.length === 0;
  return (
    <div className="stack">
      <section className="stack tight" aria-label="Ways to be held">
        <h3>Ways to be held</h3>
        <div className="row">
          {heldTemplates.map((one) => {
            const row = startingSetup(truss, one);
            return (
              <button
                key={one}
                type="button"
                disabled={empty || model.setups.some((s) => s.id === row.id)}
                onClick={() =>
                  changeModel([{ kind: 'setSetup', row }], `held: ${heldWords[one].toLowerCase()}`)
                }
              >
                {heldWords[one]}
              </button>
            );
          })}
          <button
            type="button"
            disabled={empty}
            onClick={() => {
              const id = freeId(model.setups, 'own-setup');
              changeModel(
                [{ kind: 'setSetup', row: { id, name: 'A way of my own', held: [] } }],
                'held: a way of my own',
              );
            }}
          >
            One of my own
          </button>
        </div>
        {model.setups.map((setup) => (
          <SetupCard key={setup.id} setup={setup} />
        ))}
        <p className="small soft">
          Clusters are found by what sits at them, else by their place: gear a quarter of the way aft, tail at
          the end. Check them.
        </p>
      </section>
      <section className="stack tight" aria-label="Load cases">
        <h3>Load cases</h3>
        <div className="row">
          {loadTemplates.map((one) => {
            const row = startingLoad(truss, model, one);
            return (
              <button
                key={one}
                type="button"
                disabled={empty || model.loadCases.some((c) => c.id === row.id)}
                onClick={() =>
                  changeModel([{ kind: 'setLoadCase', row }], `load case ${loadWords[one].toLowerCase()}`)
                }
              >
                {loadWords[one]}
              </button>
            );
          })}
          <button
            type="button"
            disabled={empty}
            onClick={() => {
              const id = freeId(model.loadCases, 'own-case');
              changeModel(
                [
                  {
                    kind: 'setLoadCase',
                    row: { id, name: 'A case of my own', gravity: [0, 0, -1], loads: [] },
                  },
                ],
                'load case of my own',
              );
            }}
          >
            One of my own
          </button>
        </div>
        {model.loadCases.map((load) => (
          <LoadCard key={load.id} load={load} />
        ))}
        <p className="small soft">Their numbers are invented starting values: put in your own.</p>
      </section>
    </div>
  );
};
