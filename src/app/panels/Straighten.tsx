import type { StraightenRow } from '../../core/straighten/result.ts';
import { showLength } from '../../present/show.ts';
import { memberWords } from '../../present/words/names.ts';
import { saysLine } from '../../present/words/straighten.ts';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { select, useView } from '../state/view.ts';
import { straightenText } from '../text/straighten.ts';
import { StraightenOne } from './StraightenOne.tsx';

/** Straightening of one tube: where its axis lies, where to push and how far, the log, and what must still be checked. */
export const StraightenPanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  if (!all || !now) return <Waiting />;
  const rows = all.straighten.members;
  const row = [...selected]
    .reverse()
    .map((id) => rows.find(({ member }) => member === id))
    .find((one) => one !== undefined);
  const member = row && now.members.get(row.member);
  return (
    <div className="stack">
      {row && member ? (
        <StraightenOne key={row.member} now={now} row={row} member={member} />
      ) : (
        <Choose now={now} rows={rows} />
      )}
      <Issues issues={all.straighten.issues} />
    </div>
  );
};

const isChosen = (now: AtOnce, id: string): boolean => {
  const choice = now.marks.get(id)?.choice;
  return choice === 'straighten' || choice === 'roundOut';
};

const Choose = ({ now, rows }: { readonly now: AtOnce; readonly rows: readonly StraightenRow[] }) => {
  const units = usePrefs((prefs) => prefs.units);
  const of = (chosen: boolean): readonly StraightenRow[] =>
    rows.filter((r) => isChosen(now, r.member) === chosen);
  const selected = useView((view) => view.selected);
  const list = (title: string, these: readonly StraightenRow[]) =>
    these.length > 0 && (
      <section className="stack tight" aria-label={title}>
        <h2>{title}</h2>
        <ul className="entries">
          {these.map((r) => {
            const member = now.members.get(r.member);
            return (
              <li key={r.member}>
                <button type="button" className="entry-button" onClick={() => select(r.member)}>
                  <strong>{r.member}</strong>
                  <span className="small soft">{member ? memberWords(member) : ''}</span>
                  <span className="small entry-line">
                    {r.fit ? straightenText.bow(showLength(r.fit.bowIn.value, units, 64)) : ''}
                    {saysLine(r, units)}
                  </span>
                </button>
              </li>
            );
          })}
        </ul>
      </section>
    );
  return (
    <>
      {selected.length > 0 && rows.length > 0 && <p className="soft">{straightenText.otherSelected}</p>}
      {rows.length === 0 && <p className="empty">{straightenText.nothing}</p>}
      {list(straightenText.chosen, of(true))}
      {list(straightenText.others, of(false))}
    </>
  );
};
