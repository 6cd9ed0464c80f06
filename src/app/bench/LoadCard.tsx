import type { LoadCase } from '../../core/job/modelSchema.ts';
import { countWords } from '../../present/words/names.ts';
import { loadText as text } from '../text/modelHeld.ts';
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
    changeModel([{ kind: 'setLoadCase', row }], text.changed(row.name), `load ${load.id}`);
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
          ? text.noLoad
          : countWords(load.loads.length + weights.length, 'load')}
      </summary>
      <div className="stack tight">
        <div className="fields">
          <TextCell
            shown={text.called}
            label={text.nameOf(load.name)}
            value={load.name}
            onText={(name) => put({ ...load, name })}
          />
          <label className="field">
            <span className="caption">{text.carriedBy}</span>
            <select
              value={load.setup ?? ''}
              onChange={(e) => {
                const { setup: _, ...rest } = load;
                put(e.target.value === '' ? rest : { ...rest, setup: e.target.value });
              }}
            >
              <option value="">{text.asHeld}</option>
              <option value="free">{text.free}</option>
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
              shown={text.gravity(words)}
              label={text.gravityOf(load.name, words)}
              value={(axis === 2 ? -load.gravity[axis]! : load.gravity[axis]!) + 0}
              onNumber={(g) => fall(axis, g)}
            />
          ))}
        </div>
        {load.loads.map((l, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="load-row">
            <legend className="unseen">{text.forceAt(l.cluster)}</legend>
            <span>{l.cluster}</span>
            {axes.map((axis, a) => (
              <div key={axis} className="row tight">
                <NumberCell
                  label={text.forceOf(load.name, axis, l.cluster)}
                  value={l.forceLbf?.[a] ?? 0}
                  onNumber={(v) => set(k, 'forceLbf', a, v)}
                />
                <span className="small soft">{text.force(axis)}</span>
              </div>
            ))}
            <details open={l.momentInLbf?.some((v) => v !== 0) ?? false}>
              <summary>{text.moment}</summary>
              <div className="row">
                {turns.map((turn, a) => (
                  <div key={turn} className="row tight">
                    <NumberCell
                      label={text.momentOf(load.name, turn, l.cluster)}
                      value={l.momentInLbf?.[a] ?? 0}
                      onNumber={(v) => set(k, 'momentInLbf', a, v)}
                    />
                    <span className="small soft">{text.momentAbout(turn)}</span>
                  </div>
                ))}
              </div>
            </details>
            <button
              type="button"
              className="link"
              aria-label={text.takeOutLoad(load.name, l.cluster)}
              onClick={() => put({ ...load, loads: load.loads.filter((_, i) => i !== k) })}
            >
              {text.takeOut}
            </button>
          </fieldset>
        ))}
        {weights.map((w, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="load-row">
            <legend className="unseen">{text.weightAt(w.cluster)}</legend>
            <span>{w.cluster}</span>
            <div className="row tight">
              <NumberCell
                label={text.weightOf(load.name, w.cluster)}
                value={w.weightLbf}
                onNumber={(v) =>
                  put({
                    ...load,
                    weights: weights.map((o, i) => (i === k ? { ...o, weightLbf: Math.max(0, v ?? 0) } : o)),
                  })
                }
              />
              <span className="small soft">{text.weight}</span>
            </div>
            <button
              type="button"
              className="link"
              aria-label={text.takeOutWeight(load.name, w.cluster)}
              onClick={() => put({ ...load, weights: weights.filter((_, i) => i !== k) })}
            >
              {text.takeOut}
            </button>
          </fieldset>
        ))}
        <div className="fields">
          <TextCell
            label={text.moreLoad(load.name)}
            value=""
            hint={text.moreLoadHint}
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...load, loads: [...load.loads, { cluster, forceLbf: [0, 0, 0] }] })
            }
          />
          <TextCell
            label={text.moreWeight(load.name)}
            value=""
            hint={text.moreWeightHint}
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...load, weights: [...weights, { cluster, weightLbf: 0 }] })
            }
          />
        </div>
        <TextCell
          shown={text.source}
          label={text.sourceOf(load.name)}
          value={load.source ?? ''}
          onText={(source) => put({ ...load, source })}
        />
        <button
          type="button"
          className="link"
          onClick={() => changeModel([{ kind: 'removeLoadCase', id: load.id }], text.removed(load.name))}
        >
          {text.remove}
        </button>
      </div>
    </details>
  );
};
