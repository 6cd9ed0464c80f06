import type { LoadCase } from '../../core/job/modelSchema.ts';
import { countWords } from '../../present/words/names.ts';
import { changeModel, useDraft } from './draft.ts';
import { NumberCell, TextCell } from './fields.tsx';

const axes = ['aft', 'right', 'up'] as const;
/** Right-handed about the axis that points there: about aft, the left side goes up. */
const turns = axes;
const gravityWords = ['aft', 'right', 'down'] as const;

/** One load case: forces, weights, gravity, who carries it, and where its numbers come from. */
export const LoadCard = ({ load }: { readonly load: LoadCase }) => {
  const { setups } = useDraft((draft) => draft.model);
  const put = (row: LoadCase): boolean =>
    changeModel([{ kind: 'setLoadCase', row }], `load case ${row.name}`, `load ${load.id}`);
  const set = (
    k: number,
    what: 'forceLbf' | 'momentInLbf',
    axis: number,
    value: number | undefined,
  ): boolean => {
    const loads = load.loads.map((l, i) => {
      if (i !== k) return l;
      const old = l[what] ?? [0, 0, 0];
      return { ...l, [what]: old.map((v, a) => (a === axis ? (value ?? 0) : v)) as [number, number, number] };
    });
    return put({ ...load, loads });
  };
  const fall = (axis: number, g: number | undefined): boolean => {
    const gravity: [number, number, number] = [...load.gravity];
    gravity[axis] = (axis === 2 ? -(g ?? 0) : (g ?? 0)) + 0;
    return put({ ...load, gravity });
  };
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
          {gravityWords.map((words, axis) => (
            <NumberCell
              key={words}
              shown={`Gravity, g ${words}`}
              label={`${load.name}: gravity, g ${words}`}
              value={(axis === 2 ? -load.gravity[axis]! : load.gravity[axis]!) + 0}
              onNumber={(g) => fall(axis, g)}
            />
          ))}
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
                  onNumber={(v) => set(k, 'forceLbf', a, v)}
                />
                <span className="small soft">lbf {axis}</span>
              </div>
            ))}
            <details open={l.momentInLbf?.some((v) => v !== 0) ?? false}>
              <summary>Moment</summary>
              <div className="row">
                {turns.map((turn, a) => (
                  <div key={turn} className="row tight">
                    <NumberCell
                      label={`${load.name}: in-lbf about the ${turn} axis at ${l.cluster}`}
                      value={l.momentInLbf?.[a] ?? 0}
                      onNumber={(v) => set(k, 'momentInLbf', a, v)}
                    />
                    <span className="small soft">in-lbf about {turn}</span>
                  </div>
                ))}
              </div>
            </details>
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
                  put({
                    ...load,
                    weights: weights.map((o, i) => (i === k ? { ...o, weightLbf: Math.max(0, v ?? 0) } : o)),
                  })
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
