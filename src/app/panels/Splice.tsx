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
import { FitUpCard } from './FitUpCard.tsx';
import { MeasuredOpening } from './MeasuredOpening.tsx';
import { OwnData, type OwnTopic } from './OwnData.tsx';
import { MethodSheet, Methods } from './SpliceMethods.tsx';
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
    ? `fits here: ${fitting.map((d) => methodNames[d.method].toLowerCase()).join(', ')}`
    : mine.map((d) => `${methodNames[d.method].toLowerCase()}: ${fitsWords[d.fits]}`).join('; ');
};

const Choose = ({ now, all }: { readonly now: AtOnce; readonly all: Assessment }) => {
  const rows = all.splice.members;
  if (rows.length === 0)
    return (
      <p className="empty">
        No tube is decided to be spliced, sleeved, patched or replaced. Select any tube to see what would fit.
      </p>
    );
  return (
    <section className="stack tight" aria-label="Tubes decided">
      <h2>Decided, to be worked</h2>
      <p className="soft small">Or select any tube to see what would fit.</p>
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
    <section className="stack" aria-label={`Splice ${row.member}`}>
      <p className="small">
        {row.choice
          ? `Decided: ${choiceWords[row.choice]}.`
          : 'Not decided to be spliced, sleeved or replaced.'}{' '}
        Nothing is chosen beforehand: open a method to see why it fits, or the number that fails.
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
      <OwnData topics={topicsOf(row, ends)} title="Dimensions, tubes at hand and your sleeve table" />
      <button type="button" className="link back" onClick={() => selectAll([])}>
        ‹ All tubes decided
      </button>
    </section>
  );
};

const topicsOf = ({ member, piece }: SpliceRow, ends: readonly [string, string]): readonly OwnTopic[] => {
  const { odIn, wallIn } = piece.tube;
  const size = `${odIn} x ${wallIn}`;
  return [
    {
      topic: `sleeve:${size}`,
      label: `Your table: sleeve inside ${size}`,
      takes: 'sleeve',
      hint: 'the sleeve, like 7/8 x .035',
    },
    {
      topic: `outer-sleeve:${size}`,
      label: `Your table: sleeve over ${size}`,
      takes: 'sleeve',
      hint: 'the sleeve, like 1-1/8 x .058',
    },
    ...ends.map(
      (cluster): OwnTopic => ({
        topic: `splice-cut:${member}:${cluster}`,
        label: `Place of the cut, from ${cluster}`,
        takes: 'length',
        hint: 'on the side nearest the damage',
      }),
    ),
    {
      topic: `splice-clock:${member}`,
      label: 'Clock position of the longest line',
      takes: 'clock',
      hint: '1 to 12',
    },
    {
      topic: `splice-section:${member}`,
      label: 'Tube at hand for the section',
      takes: 'sleeve',
      hint: 'like 1 x .035, 4130N',
    },
    {
      topic: `splice-sleeve:${member}`,
      label: 'Tube at hand for the sleeve',
      takes: 'sleeve',
      hint: 'like 7/8 x .049, 4130N',
    },
    ...ends.map(
      (cluster): OwnTopic => ({
        topic: `toe:${member}:${cluster}`,
        label: `Where the weld ends at ${cluster}, from its centre`,
        takes: 'length',
      }),
    ),
    { topic: `patch-overlap:${member}`, label: 'Overlap of a patch (figure 4-36)', takes: 'length' },
  ];
};
