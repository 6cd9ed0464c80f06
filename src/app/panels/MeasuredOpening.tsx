import { useState } from 'react';
import { finalCut, openingTopic } from '../../core/splice/finalCut.ts';
import type { Design, SpliceRow } from '../../core/splice/result.ts';
import { endsOf } from '../../present/tables/splices.ts';
import { methodNames, partWords } from '../../present/words/splice.ts';
import { FigureLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengths } from '../parts/useLengths.ts';
import { setOwn } from '../shopDeeds.ts';
import type { AtOnce } from '../state/answer.ts';
import { openingText } from '../text/splice.ts';

/** The opening as measured after spreading, and the final cut that follows from it; the computed length is for ordering. */
export const MeasuredOpening = ({
  now,
  row,
  design,
}: {
  readonly now: AtOnce;
  readonly row: SpliceRow;
  readonly design: Design;
}) => {
  const lengths = useLengths<'opening'>();
  const [asked, setAsked] = useState(false);
  const computed = design.plan?.fitUp.find(({ step }) => step === 'opening')?.value;
  if (!computed) return null;
  const final = finalCut(row.member, design, now.live.manual);
  return (
    <section className="stack tight" aria-label={openingText.named}>
      <h3>{openingText.title}</h3>
      <p className="small soft">{openingText.lead}</p>
      <div className="figures">
        <FigureLine name={openingText.computed} figure={computed} />
        {final && (
          <>
            <FigureLine name={openingText.measured} figure={final.openingIn} />
            <FigureLine
              name={openingText.longPoint(partWords(final.part, endsOf(row)))}
              figure={final.longIn}
            />
            <FigureLine
              name={openingText.shortPoint(partWords(final.part, endsOf(row)))}
              figure={final.shortIn}
            />
          </>
        )}
      </div>
      <form
        className="row measured-opening"
        aria-label={openingText.form}
        onSubmit={(event) => {
          event.preventDefault();
          setAsked(true);
          const valueIn = lengths.value('opening');
          if (valueIn === undefined || valueIn <= 0) return;
          const sent = setOwn(
            {
              topic: openingTopic(row.member, design.method),
              valueIn,
              source: openingText.source(methodNames[design.method]),
            },
            openingText.changed(row.member),
          );
          if (sent) {
            lengths.clear();
            setAsked(false);
          }
        }}
      >
        <LengthField
          label={openingText.field}
          wanted={asked ? openingText.wanted : undefined}
          {...lengths.field('opening')}
        />
        <button type="submit">{openingText.record}</button>
      </form>
    </section>
  );
};
