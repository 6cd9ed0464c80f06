import { memo } from 'react';
import type { Issue } from '../../core/base/issue.ts';
import { issueSentence, mendSentence, placeWords } from '../../present/words/issues.ts';
import { usePrefs } from '../state/prefs.ts';
import { fieldText } from '../text/fields.ts';

interface IssuesProps {
  readonly issues: readonly Issue[];
  readonly title?: string;
}

/** What is wrong or must be known, each with where and what to do. A long list is written again only when it changes. */
export const Issues = memo(({ issues, title = fieldText.issues }: IssuesProps) => {
  const units = usePrefs((prefs) => prefs.units);
  if (issues.length === 0) return null;
  return (
    <section className="stack tight" aria-label={title}>
      <h3>
        {title} ({issues.length})
      </h3>
      <ul className="entries small">
        {issues.map((issue, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two issues can say the same of the same place
          <li key={`${issue.code} ${issue.at} ${i}`}>
            <span>
              {issueSentence(issue, units)} {mendSentence(issue, units)}
            </span>
            <span className="soft">
              {issue.file ? `${issue.file}: ` : ''}
              {placeWords(issue.at)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
});
