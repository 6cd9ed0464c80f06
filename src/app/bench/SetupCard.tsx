import type { Freedom, Setup } from '../../core/job/modelSchema.ts';
import { countWords } from '../../present/words/names.ts';
import { changeModel } from './draft.ts';
import { TextCell } from './fields.tsx';

const freedomWords = {
  x: 'fore-aft',
  y: 'sideways',
  z: 'up-down',
  rx: 'roll',
  ry: 'pitch',
  rz: 'yaw',
} as const satisfies Record<Freedom, string>;
const freedoms = Object.keys(freedomWords) as Freedom[];

/** One way to be held, each cluster with its freedoms. */
export const SetupCard = ({ setup }: { readonly setup: Setup }) => {
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
