import { useState } from 'react';
import type { Issue } from '../../core/base/issue.ts';
import type { ModelChange } from '../../core/truss/modelEdit.ts';
import type { FaceName } from '../../core/truss/result.ts';
import { issueSentence, mendSentence } from '../../present/words/issues.ts';
import { usePrefs } from '../state/prefs.ts';
import { changeModel, type Section, setDraft, useDraft, useDraftTruss, useShownTruss } from './draft.ts';

/** A way out of something odd: a change made at once, or the part of the bench where it is put right. */
type Mend =
  | { readonly words: string; readonly change: ModelChange }
  | { readonly words: string; readonly go: Section };

const placeIn = (at: string, list: string): number | null => {
  const found = new RegExp(`^${list.replace('.', '\\.')}\\[(\\d+)\\]`).exec(at)?.[1];
  return found === undefined ? null : Number(found);
};

const goTo = (at: string): Mend | null => {
  const go: Section | null = at.startsWith('distances')
    ? 'distances'
    : /^(setups|loadCases)/.test(at)
      ? 'loads'
      : at.startsWith('tubes')
        ? 'tubes'
        : /^(clusters|members|omitted)/.test(at)
          ? 'points'
          : at.startsWith('bracing')
            ? 'bracing'
            : at.startsWith('stations')
              ? 'stations'
              : null;
  return go && { words: 'Go there', go };
};

const mendOf = ({ code, at, facts }: Issue): Mend | null => {
  const id = typeof facts.id === 'string' ? facts.id : null;
  const override = placeIn(at, 'tubes.overrides');
  const member = placeIn(at, 'members');
  switch (code) {
    case 'bracing-makes-nothing':
      return {
        words: 'Take the word out',
        change: {
          kind: 'setBracing',
          cells: [{ at: String(facts.at), face: facts.face as FaceName }],
          word: 'none',
        },
      };
    case 'omitted-names-nothing':
      return id === null ? null : { words: 'Take the opening out', change: { kind: 'restore', id } };
    case 'override-names-nothing':
      return override === null
        ? null
        : { words: 'Take the size out', change: { kind: 'removeOverride', at: override } };
    case 'loose-cluster':
      return id === null ? null : { words: 'Take the cluster out', change: { kind: 'removeCluster', id } };
    case 'duplicate-id':
    case 'unknown-cluster':
    case 'zero-length':
      return member === null
        ? goTo(at)
        : { words: 'Take the tube out', change: { kind: 'removeMember', at: member } };
    case 'twins-differ':
    case 'no-twin':
      return { words: 'Left and right', go: 'points' };
    case 'tube-not-in-stock':
    case 'no-tube':
      return { words: 'Go to the sizes', go: 'tubes' };
    case 'drawing-against-stations':
      return { words: 'Go to the distances', go: 'distances' };
    default:
      return goTo(at);
  }
};

/** Clusters and tubes that an issue is about: shown in the picture when it is pressed. */
const about = (facts: Issue['facts']): readonly string[] =>
  [facts.id, facts.ids, facts.left, facts.right, facts.from, facts.to]
    .flat()
    .filter((one): one is string => typeof one === 'string');

/** What is odd in the truss as it stands, each with a way to put it right. */
export const OddList = () => {
  const truss = useDraftTruss();
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
    <section className="odd-list" aria-label="What is odd">
      {refused.map((one) => (
        <p key={`${one.code} ${one.at}`} className="notice" role="alert">
          Not done: {issueSentence(one, units)} {mendSentence(one, units)}
        </p>
      ))}
      <details open={roomy && all.length > 0 && all.length < 4}>
        <summary aria-live="polite">
          {all.length === 0 ? 'Nothing odd' : `${all.length} odd`} · {truss.members.length} tubes ·{' '}
          {truss.clusters.length} clusters{assumed > 0 ? ` · ${assumed} assumed, drawn dotted` : ''}
        </summary>
        {all.length === 0 && <p className="small soft">What does not fit is listed here as you type.</p>}
        <ul className="entries small">
          {all.map((one, k) => {
            const mend = mendOf(one);
            const ids = about(one.facts).filter((id) => known.has(id));
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two issues can say the same of the same place
              <li key={`${one.code} ${one.at} ${k}`}>
                <span>
                  {issueSentence(one, units)} {mendSentence(one, units)}
                </span>
                <span className="row">
                  {mend && (
                    <button
                      type="button"
                      className="link"
                      onClick={() =>
                        'go' in mend
                          ? setDraft({ section: mend.go })
                          : changeModel([mend.change], mend.words.toLowerCase())
                      }
                    >
                      {mend.words}
                    </button>
                  )}
                  {ids.length > 0 && (
                    <button type="button" className="link" onClick={() => setDraft({ picked: ids })}>
                      Show
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
