import { useMemo } from 'react';
import type { Assessment } from '../../core/assessment.ts';
import type { Design, SpliceRow } from '../../core/splice/result.ts';
import { spliceFor } from '../../core/splice/splice.ts';
import { decidedDesigns, endsOf } from '../../present/tables/splices.ts';
import { choiceWords } from '../../present/tags.ts';
import { memberWords } from '../../present/words/names.ts';
import { fitsWords, methodNames } from '../../present/words/splice.ts';
import { Cautions } from '../parts/Caution.tsx';
import { Issues } from '../parts/Issues.tsx';
import { Waiting } from '../parts/Waiting.tsx';
import { type AtOnce, useAnswer } from '../state/answer.ts';
import { openMethod, useShop } from '../state/shop.ts';
import { select, selectAll, useView } from '../state/view.ts';
import { spliceText } from '../text/splice.ts';
import { FitUpCard } from './FitUpCard.tsx';
import { MeasuredOpening } from './MeasuredOpening.tsx';
import { OwnData } from './OwnData.tsx';
import { MethodSheet, Methods } from './SpliceMethods.tsx';
import { spliceTopics } from './spliceTopics.ts';
import { JobTemplates } from './Templates.tsx';

/** Splices, sleeves, patches and whole members: what fits here, drawn with every dimension and its basis. */
export const SplicePanel = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const all = useAnswer((answer) => answer.assessment);
  const selected = useView((view) => view.selected);
  const id = [...selected].reverse().find((one) => now?.members.has(one));
  const row = useMemo(() => rowOf(now, all, id), [now, all, id]);
  if (!all || !now) return <Waiting />;
  return (
    <div className="stack">
      {row ? <One key={row.member} now={now} row={row} /> : <Choose now={now} all={all} />}
      <Issues issues={all.splice.issues} />
    </div>
  );
};

/** The stage's own row, or one worked out for a member that is only asked for. */
const rowOf = (now: AtOnce | null, all: Assessment | null, id: string | undefined): SpliceRow | null => {
  if (!now || !all || id === undefined) return null;
  return (
    all.splice.members.find(({ member }) => member === id) ??
    spliceFor(now.truss, now.coverage, all.disposition, now.live.manual, id)
  );
};

const summary = (row: SpliceRow): string => {
  const mine = decidedDesigns(row);
  const fitting = mine.filter((d) => d.fits === 'fits');
  return fitting.length > 0
    ? spliceText.fitsHere(fitting.map((d) => methodNames[d.method].toLowerCase()))
    : mine.map((d) => spliceText.answer(methodNames[d.method].toLowerCase(), fitsWords[d.fits])).join('; ');
};

const Choose = ({ now, all }: { readonly now: AtOnce; readonly all: Assessment }) => {
  const rows = all.splice.members;
  if (rows.length === 0) return <p className="empty">{spliceText.nothing}</p>;
  return (
    <section className="stack tight" aria-label={spliceText.decidedNamed}>
      <h2>{spliceText.decidedTitle}</h2>
      <p className="soft small">{spliceText.anyTube}</p>
      <ul className="entries">
        {rows.map((row) => {
          const member = now.members.get(row.member);
          return (
            <li key={row.member}>
              <button type="button" className="entry-button" onClick={() => select(row.member)}>
                <strong>{row.member}</strong>
                <span className="small soft">{member ? memberWords(member) : ''}</span>
                <span className="small entry-line">
                  {row.choice ? `${choiceWords[row.choice]}; ` : ''}
                  {summary(row)}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
};

const One = ({ now, row }: { readonly now: AtOnce; readonly row: SpliceRow }) => {
  const shop = useShop();
  const asked = shop.member === row.member ? shop.method : null;
  const design: Design | undefined = asked ? row.designs.find((d) => d.method === asked) : undefined;
  const ends = endsOf(row);
  return (
    <section className="stack" aria-label={spliceText.named(row.member)}>
      <p className="small">
        {row.choice ? spliceText.decided(choiceWords[row.choice]) : spliceText.notDecided} {spliceText.lead}
      </p>
      <Methods
        piece={row.piece}
        designs={row.designs}
        open={design?.method ?? null}
        onOpen={(method) => openMethod(row.member, method)}
      />
      {design && (
        <>
          <MethodSheet piece={row.piece} design={design} />
          {design.plan && (
            <>
              <MeasuredOpening now={now} row={row} design={design} />
              <JobTemplates member={row.member} method={design.method} />
              <Cautions step="welding" />
              <FitUpCard now={now} row={row} design={design} />
            </>
          )}
        </>
      )}
      <OwnData topics={spliceTopics(row, ends)} title={spliceText.ownData} />
      <button type="button" className="link back" onClick={() => selectAll([])}>
        {spliceText.back}
      </button>
    </section>
  );
};
