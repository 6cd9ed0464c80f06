import type { Mishap } from '../../core/job/jobSchema.ts';
import { clusterWords } from '../../present/words/names.ts';
import { useAnswer } from '../state/answer.ts';
import { change } from '../state/job.ts';
import { mishapText } from '../text/loadPath.ts';

type Direction = [number, number, number];

const sign = (value: number): -1 | 0 | 1 => (value > 0 ? 1 : value < 0 ? -1 : 0);

const wayWords = (direction: readonly number[]): readonly string[] =>
  mishapText.ways.flatMap(({ axis, words }) => {
    const s = sign(direction[axis]!);
    return s === 0 ? [] : [words[s]];
  });

const record = (
  mishap: Pick<Mishap, 'cases'> & Pick<Partial<Mishap>, 'blow' | 'story'>,
  name: string,
): void => {
  const { blow, cases, story } = mishap;
  change(
    { kind: 'setMishap', mishap: { cases, ...(blow ? { blow } : {}), ...(story ? { story } : {}) } },
    name,
  );
};

/** Where the blow came in, which way it pushed, and the load cases that fit: the load is then followed for these. */
export const MishapForm = () => {
  const now = useAnswer((answer) => answer.atOnce);
  if (!now) return null;
  const mishap = now.live.mishap;
  const model = now.live.model ?? now.job.model;
  const cases = mishap?.cases ?? [];
  const blow = mishap?.blow;
  const told = { cases, ...(blow ? { blow } : {}), ...(mishap?.story ? { story: mishap.story } : {}) };
  const direction: Direction = blow ? [...blow.direction] : [0, 0, 1];
  const turned = (axis: number, to: number): void => {
    if (!blow) return;
    const next: Direction = [...direction];
    next[axis] = to;
    if (next.some((part) => part !== 0))
      record({ ...told, blow: { ...blow, direction: next } }, mishapText.changedDirection);
  };
  const blowAt = (cluster: string): void => {
    const { blow: _, ...rest } = told;
    record(cluster === '' ? rest : { ...rest, blow: { cluster, direction } }, mishapText.changedPlace);
  };
  const summary = [
    blow ? mishapText.blow(blow.cluster, wayWords(blow.direction)) : mishapText.noBlow,
    mishapText.caseCount(cases.length),
  ].join(', ');
  return (
    <details>
      <summary>
        {mishapText.title} <span className="small soft">{summary}</span>
      </summary>
      <div className="stack tight">
        <div className="field wide">
          <label htmlFor="blow-at">{mishapText.blowAt}</label>
          <select id="blow-at" value={blow?.cluster ?? ''} onChange={(e) => blowAt(e.target.value)}>
            <option value="">{mishapText.notSaid}</option>
            {now.truss.clusters.map(({ id }) => (
              <option key={id} value={id}>
                {id} · {clusterWords(id)}
              </option>
            ))}
          </select>
        </div>
        {blow && (
          <fieldset className="three-ways">
            <legend className="small">{mishapText.pushed}</legend>
            {mishapText.ways.map(({ axis, name, words }) => (
              <fieldset key={axis} className="segments" aria-label={name}>
                {([-1, 0, 1] as const).map((s) => (
                  <button
                    key={s}
                    type="button"
                    className="small"
                    aria-pressed={sign(direction[axis]) === s}
                    onClick={() => turned(axis, s)}
                  >
                    {words[s]}
                  </button>
                ))}
              </fieldset>
            ))}
          </fieldset>
        )}
        <fieldset className="stack tight">
          <legend className="small">{mishapText.cases}</legend>
          {model.loadCases.map(({ id, name }) => (
            <label key={id} className="check">
              <input
                type="checkbox"
                checked={cases.includes(id)}
                onChange={(e) =>
                  record(
                    { ...told, cases: e.target.checked ? [...cases, id] : cases.filter((c) => c !== id) },
                    mishapText.changedCases,
                  )
                }
              />
              {name}
            </label>
          ))}
        </fieldset>
        <p className="small soft">{mishapText.lead}</p>
      </div>
    </details>
  );
};
