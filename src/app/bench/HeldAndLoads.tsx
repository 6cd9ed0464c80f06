import type { Freedom, LoadCase, Setup } from '../../core/job/modelSchema.ts';
import {
  type HeldTemplate,
  heldTemplates,
  type LoadTemplate,
  loadTemplates,
  startingLoad,
  startingSetup,
} from '../../core/truss/startingLoads.ts';
import { countWords } from '../../present/words/names.ts';
import { changeModel, useDraft, useDraftTruss } from './draft.ts';
import { NumberCell, TextCell } from './fields.tsx';

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

const freedomWords = {
  x: 'fore-aft',
  y: 'sideways',
  z: 'up-down',
  rx: 'roll',
  ry: 'pitch',
  rz: 'yaw',
} as const satisfies Record<Freedom, string>;
const freedoms = Object.keys(freedomWords) as Freedom[];

const SetupCard = ({ setup }: { readonly setup: Setup }) => {
  const put = (row: Setup): boolean =>
    changeModel([{ kind: 'setSetup', row }], `how it is held: ${row.name}`, `setup ${setup.id}`);
  return (
    <details className="bench-card">
      <summary>
        {setup.name} · {countWords(setup.held.length, 'cluster')} held
      </summary>
      <div className="stack tight">
        <TextCell
          shown="Called"
          label={`Name of ${setup.name}`}
          value={setup.name}
          onText={(name) => put({ ...setup, name })}
        />
        {setup.held.map((h, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="held-row">
            <legend className="unseen">{h.cluster} held</legend>
            <TextCell
              label={`${setup.name}: cluster ${k + 1}`}
              value={h.cluster}
              list="bench-clusters"
              onText={(cluster) =>
                put({ ...setup, held: setup.held.map((o, i) => (i === k ? { ...o, cluster } : o)) })
              }
            />
            {freedoms.map((f) => (
              <label key={f} className="check">
                <input
                  type="checkbox"
                  aria-label={`${h.cluster} held ${freedomWords[f]}`}
                  checked={h.fixed.includes(f)}
                  onChange={(e) =>
                    put({
                      ...setup,
                      held: setup.held.map((o, i) =>
                        i === k
                          ? {
                              ...o,
                              fixed: freedoms.filter((one) =>
                                one === f ? e.target.checked : o.fixed.includes(one),
                              ),
                            }
                          : o,
                      ),
                    })
                  }
                />
                {freedomWords[f]}
              </label>
            ))}
            <button
              type="button"
              className="link"
              aria-label={`${setup.name}: take out ${h.cluster}`}
              onClick={() => put({ ...setup, held: setup.held.filter((_, i) => i !== k) })}
            >
              Take out
            </button>
          </fieldset>
        ))}
        <div className="row">
          <TextCell
            label={`${setup.name}: hold one more cluster`}
            value=""
            hint="hold one more: U4R"
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...setup, held: [...setup.held, { cluster, fixed: ['x', 'y', 'z'] }] })
            }
          />
          <button
            type="button"
            className="link"
            onClick={() => changeModel([{ kind: 'removeSetup', id: setup.id }], `${setup.name} taken out`)}
          >
            Take out this set-up
          </button>
        </div>
      </div>
    </details>
  );
};

const axes = ['aft', 'right', 'up'] as const;

const LoadCard = ({ load }: { readonly load: LoadCase }) => {
  const { setups } = useDraft((draft) => draft.model);
  const put = (row: LoadCase): boolean =>
    changeModel([{ kind: 'setLoadCase', row }], `load case ${row.name}`, `load ${load.id}`);
  const force = (k: number, axis: number, value: number): boolean =>
    put({
      ...load,
      loads: load.loads.map((l, i) =>
        i === k
          ? {
              ...l,
              forceLbf: (l.forceLbf ?? [0, 0, 0]).map((v, a) => (a === axis ? value : v)) as [
                number,
                number,
                number,
              ],
            }
          : l,
      ),
    });
  const weights = load.weights ?? [];
  return (
    <details className="bench-card">
      <summary>
        {load.name} ·{' '}
        {load.loads.length + weights.length === 0
          ? 'no load of its own'
          : countWords(load.loads.length + weights.length, 'load')}
      </summary>
      <div className="stack tight">
        <div className="fields">
          <TextCell
            shown="Called"
            label={`Name of load case ${load.name}`}
            value={load.name}
            onText={(name) => put({ ...load, name })}
          />
          <label className="field">
            <span className="caption">Carried by</span>
            <select
              value={load.setup ?? ''}
              onChange={(e) => {
                const { setup: _, ...rest } = load;
                put(e.target.value === '' ? rest : { ...rest, setup: e.target.value });
              }}
            >
              <option value="">as it is held now</option>
              <option value="free">its own inertia, in flight</option>
              {setups.map((s) => (
                <option key={s.id} value={s.id}>
                  {s.name}
                </option>
              ))}
            </select>
          </label>
          <div className="field">
            <span className="caption">Gravity, g down</span>
            <NumberCell
              label={`${load.name}: gravity, g down`}
              value={-load.gravity[2] + 0}
              onNumber={(g) => put({ ...load, gravity: [load.gravity[0], load.gravity[1], -g + 0] })}
            />
          </div>
        </div>
        {load.loads.map((l, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="load-row">
            <legend className="unseen">Force at {l.cluster}</legend>
            <span>{l.cluster}</span>
            {axes.map((axis, a) => (
              <div key={axis} className="row tight">
                <NumberCell
                  label={`${load.name}: lbf ${axis} at ${l.cluster}`}
                  value={l.forceLbf?.[a] ?? 0}
                  onNumber={(v) => force(k, a, v)}
                />
                <span className="small soft">lbf {axis}</span>
              </div>
            ))}
            <button
              type="button"
              className="link"
              aria-label={`${load.name}: take out the load at ${l.cluster}`}
              onClick={() => put({ ...load, loads: load.loads.filter((_, i) => i !== k) })}
            >
              Take out
            </button>
          </fieldset>
        ))}
        {weights.map((w, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="load-row">
            <legend className="unseen">Weight at {w.cluster}</legend>
            <span>{w.cluster}</span>
            <div className="row tight">
              <NumberCell
                label={`${load.name}: weight at ${w.cluster}, lb`}
                value={w.weightLbf}
                onNumber={(v) =>
                  put({ ...load, weights: weights.map((o, i) => (i === k ? { ...o, weightLbf: v } : o)) })
                }
              />
              <span className="small soft">lb carried</span>
            </div>
            <button
              type="button"
              className="link"
              aria-label={`${load.name}: take out the weight at ${w.cluster}`}
              onClick={() => put({ ...load, weights: weights.filter((_, i) => i !== k) })}
            >
              Take out
            </button>
          </fieldset>
        ))}
        <div className="fields">
          <TextCell
            label={`${load.name}: load one more cluster`}
            value=""
            hint="a force at: U4R"
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...load, loads: [...load.loads, { cluster, forceLbf: [0, 0, 0] }] })
            }
          />
          <TextCell
            label={`${load.name}: hang a weight on a cluster`}
            value=""
            hint="a weight at: U1L"
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...load, weights: [...weights, { cluster, weightLbf: 0 }] })
            }
          />
        </div>
        <TextCell
          shown="Where the numbers come from"
          label={`${load.name}: source of the numbers`}
          value={load.source ?? ''}
          onText={(source) => put({ ...load, source })}
        />
        <button
          type="button"
          className="link"
          onClick={() => changeModel([{ kind: 'removeLoadCase', id: load.id }], `${load.name} taken out`)}
        >
          Take out this load case
        </button>
      </div>
    </details>
  );
};

/** Ways to be held and load cases, from plain templates, each then changed by hand. */
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
        </div>
        {model.loadCases.map((load) => (
          <LoadCard key={load.id} load={load} />
        ))}
        <p className="small soft">Their numbers are invented starting values: put in your own.</p>
      </section>
    </div>
  );
};
