import { useState } from 'react';
import type { Issue } from '../../core/base/issue.ts';
import { type Mend, type MendName, mendsOf } from '../../core/truss/mends.ts';
import { materialOf } from '../../core/truss/stock.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { usePrefs } from '../state/prefs.ts';
import { oddText as text } from '../text/modelBench.ts';
import { changeModel, type Section, setDraft, useDraft, useDraftTruss, useShownTruss } from './draft.ts';
import { tubeAsDrawn } from './drawn.ts';

const wordsOf = ({ name, tube, material }: Mend, drawnIn: 'in' | 'mm'): string => {
  const words = {
    ...text.mends,
    takeStockSize: text.take(tubeAsDrawn(tube, drawnIn)),
    takeMaterial: text.take(materialOf(material ?? '')?.name ?? ''),
  } as const satisfies Record<MendName, string>;
  return words[name];
};

/** The part of the bench where something odd is put right by hand. */
const partOf = ({ code, at }: Issue): Section | null => {
  if (code === 'twins-differ' || code === 'no-twin' || code === 'loose-cluster') return 'points';
  if (code === 'tube-not-in-stock' || code === 'no-tube') return 'tubes';
  const lists: readonly (readonly [RegExp, Section])[] = [
    [/^distances/, 'distances'],
    [/^(setups|loadCases)/, 'loads'],
    [/^tubes/, 'tubes'],
    [/^(clusters|members|omitted)/, 'points'],
    [/^bracing/, 'bracing'],
    [/^stations/, 'stations'],
  ];
  return lists.find(([list]) => list.test(at))?.[1] ?? null;
};

/** Clusters and tubes that an issue is about: shown in the picture when it is pressed. */
const about = (facts: Issue['facts']): readonly string[] =>
  [facts.id, facts.ids, facts.left, facts.right, facts.from, facts.to]
    .flat()
    .filter((one): one is string => typeof one === 'string');

/** What is odd in the truss as it stands, each with a way to put it right. */
export const OddList = () => {
  const truss = useDraftTruss();
  const model = useDraft((draft) => draft.model);
  const units = usePrefs((prefs) => prefs.units);
  // On a narrow page the list would take the picture's place.
  const roomy = useState(() => innerWidth > 940)[0];
  const refused = useDraft((draft) => draft.refused);
  const known = new Set([...truss.clusters, ...truss.members].map(({ id }) => id));
  // A tube that only lacks its size is listed once, not as loose clusters too.
  const { odd } = useShownTruss();
  const all = [...truss.issues, ...odd];
  const assumed = truss.clusters.filter((c) => c.assumed).length;

  return (
    <section className="odd-list" aria-label={text.title}>
      {refused.map((one) => (
        <p key={`${one.code} ${one.at}`} className="notice" role="alert">
          {text.notDone(`${issueSentence(one, units)} ${mendSentence(one, units)}`)}
        </p>
      ))}
      <details open={roomy && all.length > 0 && all.length < 4}>
        <summary aria-live="polite">
          {text.odd(all.length)} · {text.counts(truss.members.length, truss.clusters.length)}
          {assumed > 0 ? text.assumed(assumed) : ''}
        </summary>
        {all.length === 0 && <p className="small soft">{text.none}</p>}
        <ul className="entries small">
          {all.map((one, k) => {
            const part = partOf(one);
            const ids = about(one.facts).filter((id) => known.has(id));
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two issues can say the same of the same place
              <li key={`${one.code} ${one.at} ${k}`}>
                <span>
                  {issueSentence(one, units)} {mendSentence(one, units)}
                </span>
                <span className="row">
                  {mendsOf(one, model, truss).map((mend) => (
                    <button
                      key={mend.name}
                      type="button"
                      className="link"
                      onClick={() => changeModel(mend.changes, wordsOf(mend, model.drawnIn).toLowerCase())}
                    >
                      {wordsOf(mend, model.drawnIn)}
                    </button>
                  ))}
                  {part && (
                    <button type="button" className="link" onClick={() => setDraft({ section: part })}>
                      {text.goThere}
                    </button>
                  )}
                  {ids.length > 0 && (
                    <button type="button" className="link" onClick={() => setDraft({ picked: ids })}>
                      {text.show}
                    </button>
                  )}
                </span>
              </li>
            );
          })}
        </ul>
      </details>
    </section>
  );
};
