import type { Spread } from '../../core/trammel/result.ts';
import { showLength, showWork, whole } from '../../present/show.ts';
import { listWords } from '../../present/words/names.ts';
import { verdictWords } from '../../present/words/record.ts';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { usePrefs } from '../state/prefs.ts';
import { selectAll } from '../state/view.ts';
import { spreadLineText as text } from '../text/trammelSpread.ts';
import { Pushed } from './TrammelPushed.tsx';

/** One distance to spread or draw in: how far, how hard, what comes back, and what else it moves. */
export const SpreadEntry = ({ one, job }: { readonly one: Spread; readonly job: 'hold' | 'set' }) => {
  const units = usePrefs((prefs) => prefs.units);
  const force = one.forceLbf && Math.abs(one.forceLbf.value);
  const yields = one.set?.yields;
  const tooMuch = force !== undefined && yields !== undefined && force > yields.forceLbf.value;
  const amount = showWork(Math.abs(one.amountIn.value), units);
  return (
    <li>
      <div className="entry-head">
        <button type="button" className="link" onClick={() => selectAll([one.from, one.to])}>
          {one.order === undefined ? '' : `${one.order}. `}
          {one.target}
        </button>
        <strong>
          <span aria-hidden="true">{one.action === 'spread' ? '← → ' : '→ ← '}</span>
          {text.action[one.action]} {amount}
        </strong>
      </div>
      <span className="small soft">{text.stands(amount, one.stands, verdictWords[one.verdict])}</span>
      {one.settledBy && <span className="small">{text.settledBy(one.settledBy)}</span>}
      <div className="figures">
        <FigureLine name={text.found} figure={one.foundIn} />
        {job === 'hold' ? (
          <>
            <PlainLine name={text.setTo}>
              {showLength(one.foundIn.value + one.amountIn.value, units, 64)}
            </PlainLine>
            {one.forceLbf && (
              <FigureLine
                name={text.force}
                figure={one.forceLbf}
                text={text.about(whole(Math.abs(one.forceLbf.value)))}
              />
            )}
            {one.hold && (
              <FigureLine
                name={text.comesBack}
                figure={one.hold.comesBackIn}
                text={
                  one.hold.tacks.length === 0
                    ? text.allComesBack
                    : showLength(one.hold.comesBackIn.value, units, 64)
                }
              />
            )}
            {one.hold?.tacks.map(({ member, axialLbf }) => (
              <FigureLine
                key={member}
                name={text.onTacks(member)}
                figure={axialLbf}
                text={text.axial(whole(Math.abs(axialLbf.value)), axialLbf.value < 0)}
              />
            ))}
          </>
        ) : (
          <>
            {one.set ? (
              <>
                <FigureLine
                  name={text.moveTo[one.action]}
                  figure={one.set.pushToIn}
                  text={showLength(one.set.pushToIn.value, units, 64)}
                />
                <FigureLine
                  name={text.springsBack}
                  figure={one.set.springIn}
                  text={showLength(one.set.springIn.value, units, 64)}
                />
              </>
            ) : (
              <PlainLine name={text.moveTo.spread}>{text.notKnown}</PlainLine>
            )}
            {yields && (
              <FigureLine
                name={text.firstToYield(yields.member)}
                figure={yields.forceLbf}
                text={text.about(whole(yields.forceLbf.value))}
              />
            )}
          </>
        )}
      </div>
      {tooMuch && (
        <p className="notice small">{text.tooMuch(yields!.member, whole(yields!.forceLbf.value))}</p>
      )}
      {one.changes && one.changes.length > 0 && (
        <span className="small">
          {text.alsoChanges(
            listWords(
              one.changes
                .slice(0, 4)
                .map(({ target, changeIn }) =>
                  text.change(target, showWork(Math.abs(changeIn), units), changeIn < 0),
                ),
            ),
          )}
        </span>
      )}
      {job === 'set' && <Pushed one={one} />}
    </li>
  );
};
