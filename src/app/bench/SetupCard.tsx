import type { Freedom, Setup } from '../../core/job/modelSchema.ts';
import { countWords } from '../../present/words/names.ts';
import { setupText as text } from '../text/modelHeld.ts';
import { changeModel } from './draft.ts';
import { TextCell } from './fields.tsx';

const freedoms = Object.keys(text.freedoms) as Freedom[];

/** One way to be held, each cluster with its freedoms. */
export const SetupCard = ({ setup }: { readonly setup: Setup }) => {
  const put = (row: Setup): boolean =>
    changeModel([{ kind: 'setSetup', row }], text.changed(row.name), `setup ${setup.id}`);
  return (
    <details className="bench-card">
      <summary>{text.line(setup.name, countWords(setup.held.length, 'cluster'))}</summary>
      <div className="stack tight">
        <TextCell
          shown={text.called}
          label={text.nameOf(setup.name)}
          value={setup.name}
          onText={(name) => put({ ...setup, name })}
        />
        {setup.held.map((h, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place
          <fieldset key={k} className="held-row">
            <legend className="unseen">{text.heldAt(h.cluster)}</legend>
            <TextCell
              label={text.cluster(setup.name, k + 1)}
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
                  aria-label={text.heldIn(h.cluster, text.freedoms[f])}
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
                {text.freedoms[f]}
              </label>
            ))}
            <button
              type="button"
              className="link"
              aria-label={text.takeOutNamed(setup.name, h.cluster)}
              onClick={() => put({ ...setup, held: setup.held.filter((_, i) => i !== k) })}
            >
              {text.takeOut}
            </button>
          </fieldset>
        ))}
        <div className="row">
          <TextCell
            label={text.more(setup.name)}
            value=""
            hint={text.moreHint}
            list="bench-clusters"
            onText={(cluster) =>
              cluster && put({ ...setup, held: [...setup.held, { cluster, fixed: ['x', 'y', 'z'] }] })
            }
          />
          <button
            type="button"
            className="link"
            onClick={() => changeModel([{ kind: 'removeSetup', id: setup.id }], text.removed(setup.name))}
          >
            {text.remove}
          </button>
        </div>
      </div>
    </details>
  );
};
