import { useState } from 'react';
import { showTime } from '../../present/show.ts';
import { choiceWords, damageTags } from '../../present/tags.ts';
import { findingPlace, findingSize } from '../../present/words/findings.ts';
import { originWords } from '../../present/words/record.ts';
import { removeRecord } from '../deeds.ts';
import { GlyphMark } from '../parts/TagMark.tsx';
import type { AtOnce } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { findingText, foundText } from '../text/findings.ts';
import { FindingForm } from './FindingForm.tsx';

/** What was found on one tube or cluster, and what was decided; each entry can be corrected or removed. */
export const FindingList = ({ now, id }: { readonly now: AtOnce; readonly id: string }) => {
  const units = usePrefs((prefs) => prefs.units);
  const [editing, setEditing] = useState('');
  const findings = now.coverage.findings.filter((finding) => finding.of === id);
  const decisions = now.coverage.decisions.filter((decision) => decision.of === id);
  if (findings.length + decisions.length === 0) return null;
  return (
    <section className="stack tight" aria-label={foundText.section(id)}>
      <h3>{foundText.title}</h3>
      <ul className="entries">
        {findings.map((finding) => {
          const { word, glyph } = damageTags[finding.damage];
          const place = findingPlace(finding, units);
          return (
            <li key={finding.id} aria-label={findingText.on(word, id)}>
              <div className="entry-head">
                <span className="row">
                  <GlyphMark glyph={glyph} />
                  <strong>{word}</strong>
                </span>
                <span className="row">
                  <button
                    type="button"
                    className="link"
                    aria-label={foundText.correctNamed(word, id)}
                    aria-expanded={editing === finding.id}
                    onClick={() => setEditing(editing === finding.id ? '' : finding.id)}
                  >
                    {foundText.correct}
                  </button>
                  <button
                    type="button"
                    className="link"
                    aria-label={foundText.removeNamed(word, id)}
                    onClick={() => removeRecord(finding.id, foundText.removed(word, id))}
                  >
                    {foundText.remove}
                  </button>
                </span>
              </div>
              <span>
                {findingSize(finding, units)}
                {place === '' ? '' : `; ${place}`}
              </span>
              <span className="small soft">
                {originWords[finding.origin]}; {finding.by}, {showTime(finding.at)}
                {finding.note ? `; ${finding.note}` : ''}
              </span>
              {editing === finding.id && (
                <FindingForm now={now} id={id} old={finding} onDone={() => setEditing('')} />
              )}
            </li>
          );
        })}
        {decisions.map((decision) => (
          <li key={decision.id}>
            <div className="entry-head">
              <strong>{foundText.decided(choiceWords[decision.choice])}</strong>
              <button
                type="button"
                className="link"
                onClick={() => removeRecord(decision.id, foundText.decisionRemoved(id))}
              >
                {foundText.remove}
              </button>
            </div>
            <span className="small soft">
              {decision.reason ?? foundText.noReason}; {decision.by}, {showTime(decision.at)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};
