import { useState } from 'react';
import type { Held } from '../../core/job/jobSchema.ts';
import { showTube } from '../../present/show.ts';
import { useAnswer } from '../state/answer.ts';
import { change } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { bracesText, heldText } from '../text/held.ts';

type HeldCluster = NonNullable<Held['held']>[number];
type Brace = NonNullable<Held['braces']>[number];
const freedoms = ['x', 'y', 'z'] as const;
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
      <option value="">{heldText.choose}</option>
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
      <summary>{heldText.title}</summary>
      <div className="stack tight">
        <div className="field wide">
          <label htmlFor="held-by">{heldText.by}</label>
          <select
            id="held-by"
            value={mode}
            onChange={(e) => {
              if (e.target.value === 'listed') setHeld({ held: held ?? [], braces }, heldText.heldAtListed);
              else setHeld({ setup: e.target.value, braces }, heldText.heldBySetup);
            }}
          >
            <option value="" disabled>
              {heldText.notSaid}
            </option>
            {model.setups.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
            <option value="listed">{heldText.listed}</option>
          </select>
        </div>
        {held && (
          <>
            <ul className="held-list small">
              {held.map((h) => (
                <li key={h.cluster}>
                  <span>
                    {h.cluster}:{' '}
                    {h.fixed
                      .map((f) => (f in heldText.freedoms ? heldText.freedoms[f as 'x'] : f))
                      .join(', ')}
                  </span>
                  <button
                    type="button"
                    className="link"
                    aria-label={heldText.letGoNamed(h.cluster)}
                    onClick={() =>
                      setHeld(
                        { held: held.filter((other) => other !== h), braces },
                        heldText.wasLetGo(h.cluster),
                      )
                    }
                  >
                    {heldText.letGo}
                  </button>
                </li>
              ))}
            </ul>
            <div className="hold-row">
              <select
                aria-label={heldText.cluster}
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
                  {heldText.freedoms[f]}
                </label>
              ))}
              <button
                type="button"
                disabled={cluster === '' || fixed.length === 0}
                onClick={() => {
                  const others = held.filter((h) => h.cluster !== cluster);
                  setHeld(
                    { held: [...others, { cluster, fixed: [...fixed] }], braces },
                    heldText.wasHeld(cluster),
                  );
                  setCluster('');
                }}
              >
                {heldText.hold}
              </button>
            </div>
          </>
        )}
        <h3>{bracesText.title}</h3>
        {braces.length === 0 ? (
          <p className="small soft">{bracesText.none}</p>
        ) : (
          <ul className="held-list small">
            {braces.map((b) => (
              <li key={`${b.from} ${b.to}`}>
                <span>{bracesText.row(b.from, b.to, showTube(b, units))}</span>
                <button
                  type="button"
                  className="link"
                  aria-label={bracesText.takeOutNamed(b.from, b.to)}
                  onClick={() =>
                    setHeld(
                      { setup, held, braces: braces.filter((other) => other !== b) },
                      bracesText.takenOut,
                    )
                  }
                >
                  {bracesText.takeOut}
                </button>
              </li>
            ))}
          </ul>
        )}
        <div className="brace-row">
          <select
            aria-label={bracesText.from}
            value={brace.from}
            onChange={(e) => setBrace({ ...brace, from: e.target.value })}
          >
            {options}
          </select>
          <span>{bracesText.between}</span>
          <select
            aria-label={bracesText.to}
            value={brace.to}
            onChange={(e) => setBrace({ ...brace, to: e.target.value })}
          >
            {options}
          </select>
          <select
            aria-label={bracesText.tube}
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
                bracesText.added(brace.from, brace.to),
              );
              setBrace({ ...brace, from: '', to: '' });
            }}
          >
            {bracesText.add}
          </button>
        </div>
      </div>
    </details>
  );
};
