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
    <section className="stack tight" aria-label="Opening measured">
      <h3>After spreading</h3>
      <p className="small soft">
        Computed lengths are for ordering. Measure the opening on its longest line when the distances stand,
        then cut.
      </p>
      <div className="figures">
        <FigureLine name="Opening as computed, longest line" figure={computed} />
        {final && (
          <>
            <FigureLine name="Opening as measured" figure={final.openingIn} />
            <FigureLine
              name={`${partWords(final.part, endsOf(row))}: cut to, long point`}
              figure={final.longIn}
            />
            <FigureLine
              name={`${partWords(final.part, endsOf(row))}: cut to, short point`}
              figure={final.shortIn}
            />
          </>
        )}
      </div>
      <form
        className="row measured-opening"
        aria-label="Opening measured after spreading"
        onSubmit={(event) => {
          event.preventDefault();
          setAsked(true);
          const valueIn = lengths.value('opening');
          if (valueIn === undefined || valueIn <= 0) return;
          const sent = setOwn(
            {
              topic: openingTopic(row.member, design.method),
              valueIn,
              source: `Measured after spreading, longest line, ${methodNames[design.method].toLowerCase()}`,
            },
            `Opening of ${row.member} measured`,
          );
          if (sent) {
            lengths.clear();
            setAsked(false);
          }
        }}
      >
        <LengthField
          label="Opening measured"
          wanted={asked ? 'Enter the opening.' : undefined}
          {...lengths.field('opening')}
        />
        <button type="submit">Record the opening</button>
      </form>
    </section>
  );
};
