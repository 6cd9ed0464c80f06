import type { Target, Trammel } from '../../core/trammel/result.ts';
import { fixed, showBareLength } from '../../present/show.ts';
import { inPairs, pairKey, twinKey } from '../../present/tables/pairs.ts';
import { rawLength } from '../../present/tables/showing.ts';
import { setEntry } from '../state/entry.ts';
import { usePrefs } from '../state/prefs.ts';
import { targetsText } from '../text/trammel.ts';

/** Targets round what is selected, or those measured: left and right of a pair stand together, with their difference. */
export const PairsTable = ({
  targets,
  trammel,
}: {
  readonly targets: readonly Target[];
  readonly trammel: Trammel;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const byPair = new Map(trammel.targets.map((t) => [pairKey(t.from, t.to), t]));
  const difference = (t: Target): string => {
    const twin = byPair.get(twinKey(t));
    const [mine, other] = [t.compared.at(-1), twin === t ? undefined : twin?.compared.at(-1)];
    if (!mine || !other || mine.hold !== other.hold) return '';
    const d = mine.foundIn.value - other.foundIn.value;
    return fixed(rawLength(d, units)!, units === 'mm' ? 1 : 3);
  };
  return (
    <div className="table-wide">
      <table className="pairs">
        <thead>
          <tr>
            <th scope="col">Distance</th>
            <th scope="col">Target, {units === 'mm' ? 'mm' : 'in'}</th>
            <th scope="col">Found</th>
            <th scope="col">{targetsText.twin}</th>
          </tr>
        </thead>
        <tbody>
          {inPairs(targets).map((t) => {
            const latest = t.compared.at(-1);
            return (
              <tr key={t.id}>
                <td>
                  <button type="button" className="link" onClick={() => setEntry({ line: t.id, text: '' })}>
                    {t.id}
                  </button>
                </td>
                <td>{showBareLength(t.targetIn.value, units, 64)}</td>
                <td>
                  {latest ? showBareLength(latest.foundIn.value, units === 'mm' ? 'mm' : 'inDecimal') : ''}
                </td>
                <td>{difference(t)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
};
