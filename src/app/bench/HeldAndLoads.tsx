import { heldTemplates, loadTemplates, startingLoad, startingSetup } from '../../core/truss/startingLoads.ts';
import { loadsText, waysText } from '../text/modelHeld.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { LoadCard } from './LoadCard.tsx';
import { SetupCard } from './SetupCard.tsx';

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
      <section className="stack tight" aria-label={waysText.title}>
        <h3>{waysText.title}</h3>
        <div className="row">
          {heldTemplates.map((one) => {
            const row = startingSetup(truss, one);
            return (
              <button
                key={one}
                type="button"
                disabled={empty || model.setups.some((s) => s.id === row.id)}
                onClick={() =>
                  changeModel([{ kind: 'setSetup', row }], waysText.held(waysText.templates[one]))
                }
              >
                {waysText.templates[one]}
              </button>
            );
          })}
          <button
            type="button"
            disabled={empty}
            onClick={() => {
              const id = freeId(model.setups, 'own-setup');
              changeModel(
                [{ kind: 'setSetup', row: { id, name: waysText.ownName, held: [] } }],
                waysText.held(waysText.ownName),
              );
            }}
          >
            {waysText.own}
          </button>
        </div>
        {model.setups.map((setup) => (
          <SetupCard key={setup.id} setup={setup} />
        ))}
        <p className="small soft">{waysText.found}</p>
      </section>
      <section className="stack tight" aria-label={loadsText.title}>
        <h3>{loadsText.title}</h3>
        <div className="row">
          {loadTemplates.map((one) => {
            const row = startingLoad(truss, model, one);
            return (
              <button
                key={one}
                type="button"
                disabled={empty || model.loadCases.some((c) => c.id === row.id)}
                onClick={() =>
                  changeModel([{ kind: 'setLoadCase', row }], loadsText.added(loadsText.templates[one]))
                }
              >
                {loadsText.templates[one]}
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
                    row: { id, name: loadsText.ownName, gravity: [0, 0, -1], loads: [] },
                  },
                ],
                loadsText.ownAdded,
              );
            }}
          >
            {loadsText.own}
          </button>
        </div>
        {model.loadCases.map((load) => (
          <LoadCard key={load.id} load={load} />
        ))}
        <p className="small soft">{loadsText.invented}</p>
      </section>
    </div>
  );
};
