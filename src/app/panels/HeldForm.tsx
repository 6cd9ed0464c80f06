import { useState } from 'react';
import type { Held } from '../../core/job/jobSchema.ts';
import { showTube } from '../../present/show.ts';
import { useAnswer } from '../state/answer.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';

type HeldCluster = NonNullable<Held['held']>[number];
type Brace = NonNullable<Held['braces']>[number];
const freedoms = ['x', 'y', 'z'] as const;
const freedomWords = { x: 'along', y: 'across', z: 'up' } as const;
/** Offered for a brace: what a shop has at hand. */
const braceTubes = [
  { odIn: 0.75, wallIn: 0.035 },
  { odIn: 1, wallIn: 0.049 },
  { odIn: 1.25, wallIn: 0.065 },
] as const;

const setHeld = (
  told: {
    setup?: string | undefined;
    held?: readonly HeldCluster[] | undefined;
    braces?: readonly Brace[] | undefined;
  },
  name: string,
): void => {
  change(
    {
      kind: 'setHeld',
      held: {
        ...(told.setup === undefined ? {} : { setup: told.setup }),
        ...(told.held === undefined ? {} : { held: [...told.held] }),
        ...(told.braces === undefined || told.braces.length === 0 ? {} : { braces: [...told.braces] }),
      },
    },
    name,
  );
};

/** How the truss is held now: by a set-up or by clusters named one by one, and the braces clamped in. */
export const HeldForm = ({ open }: { readonly open: boolean }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const units = usePrefs((prefs) => prefs.units);
  // once opened it stays so while it is filled in, whatever the sums say meanwhile
  const [shown, setShown] = useState(open);
  const [cluster, setCluster] = useState('');
  const [fixed, setFixed] = useState<readonly (typeof freedoms)[number][]>(['x', 'y', 'z']);
  const [brace, setBrace] = useState({ from: '', to: '', tube: 0 });
  if (!now) return null;
  const model = now.live.model ?? now.job.model;
  const latest = now.live.held.at(-1);
  const held = latest?.held;
  const braces = latest?.braces ?? [];
  const setup = latest?.setup;
  const mode = held ? 'listed' : (setup ?? '');
  const clusters = now.truss.clusters.map(({ id }) => id);
  const options = (
    <>
      <option value="">choose</option>
      {clusters.map((id) => (
        <option key={id} value={id}>
          {id}
        </option>
      ))}
    </>
  );
  const tube = braceTubes[brace.tube]!;
  return (
    <details open={shown} onToggle={(e) => setShown(e.currentTarget.open)}>
      <summary>How the truss is held now</summary>
      <div className="stack tight">
        <div className="field wide">
          <label htmlFor="held-by">Held by</label>
          <select
            id="held-by"
            value={mode}
            onChange={(e) => {
              if (e.target.value === 'listed')
                setHeld({ held: held ?? [], braces }, 'Held at clusters named');
              else setHeld({ setup: e.target.value, braces }, 'How the truss is held');
            }}
          >
            <option value="" disabled>
              not said yet
            </option>
            {model.setups.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
            <option value="listed">Clusters named one by one</option>
          </select>
        </div>
        {held && (
          <>
            <ul className="held-list small">
              {held.map((h) => (
                <li key={h.cluster}>
                  <span>
                    {h.cluster}:{' '}
                    {h.fixed.map((f) => (f in freedomWords ? freedomWords[f as 'x'] : f)).join(', ')}
                  </span>
                  <button
                    type="button"
                    className="link"
                    aria-label={`Let go ${h.cluster}`}
                    onClick={() =>
                      setHeld({ held: held.filter((other) => other !== h), braces }, `${h.cluster} let go`)
                    }
                  >
                    Let go
                  </button>
                </li>
              ))}
            </ul>
            <div className="hold-row">
              <select
                aria-label="Cluster to hold"
                value={cluster}
                onChange={(e) => setCluster(e.target.value)}
              >
                {options}
              </select>
              {freedoms.map((f) => (
                <label key={f} className="check">
                  <input
                    type="checkbox"
                    checked={fixed.includes(f)}
                    onChange={(e) =>
                      setFixed(freedoms.filter((g) => (g === f ? e.target.checked : fixed.includes(g))))
                    }
                  />
                  {freedomWords[f]}
                </label>
              ))}
              <button
                type="button"
                disabled={cluster === '' || fixed.length === 0}
                onClick={() => {
                  const others = held.filter((h) => h.cluster !== cluster);
                  setHeld({ held: [...others, { cluster, fixed: [...fixed] }], braces }, `${cluster} held`);
                  setCluster('');
                }}
              >
                Hold
              </button>
            </div>
          </>
        )}
        <h3>Braces clamped or tacked in</h3>
        {braces.length === 0 ? (
          <p className="small soft">None recorded.</p>
        ) : (
          <ul className="held-list small">
            {braces.map((b) => (
              <li key={`${b.from} ${b.to}`}>
                <span>
                  {b.from} to {b.to}, {showTube(b, units)}
                </span>
                <button
                  type="button"
                  className="link"
                  aria-label={`Take out the brace ${b.from} to ${b.to}`}
                  onClick={() =>
                    setHeld({ setup, held, braces: braces.filter((other) => other !== b) }, 'Brace taken out')
                  }
                >
                  Take out
                </button>
              </li>
            ))}
          </ul>
        )}
        <div className="brace-row">
          <select
            aria-label="Brace from"
            value={brace.from}
            onChange={(e) => setBrace({ ...brace, from: e.target.value })}
          >
            {options}
          </select>
          <span>to</span>
          <select
            aria-label="Brace to"
            value={brace.to}
            onChange={(e) => setBrace({ ...brace, to: e.target.value })}
          >
            {options}
          </select>
          <select
            aria-label="Tube of the brace"
            value={brace.tube}
            onChange={(e) => setBrace({ ...brace, tube: Number(e.target.value) })}
          >
            {braceTubes.map((t, k) => (
              <option key={t.odIn} value={k}>
                {showTube(t, units)}
              </option>
            ))}
          </select>
          <button
            type="button"
            disabled={brace.from === '' || brace.to === '' || brace.from === brace.to || mode === ''}
            onClick={() => {
              setHeld(
                { setup, held, braces: [...braces, { from: brace.from, to: brace.to, ...tube }] },
                `Brace ${brace.from} to ${brace.to}`,
              );
              setBrace({ ...brace, from: '', to: '' });
            }}
          >
            Brace
          </button>
        </div>
      </div>
    </details>
  );
};
