import { useMemo, useState } from 'react';
import { benchStraighten } from '../../core/straighten/benchStraighten.ts';
import { showFigure, showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { shapeWords } from '../../present/words/straighten.ts';
import { Cautions } from '../parts/Caution.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { useLengths } from '../parts/useLengths.ts';
import { usePrefs } from '../state/prefs.ts';
import { benchPressText } from '../text/bench.ts';
import type { BenchLength } from './benchLengths.ts';
import { SetUpCard } from './SetUpCard.tsx';

/** How a bow of the one tube is pressed out, by the same sums as a member of a truss. */
export const BenchPress = ({
  od,
  wall,
  between,
  material,
  clock,
  lengths,
}: {
  readonly od: number;
  readonly wall: number;
  readonly between: number;
  readonly material: string;
  readonly clock: number | undefined;
  readonly lengths: ReturnType<typeof useLengths<BenchLength>>;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const [shape, setShape] = useState<'' | 'smooth' | 'kinked'>('');
  const bow = lengths.value('bow');
  const at = lengths.value('bowAt') ?? between / 2;
  const span = lengths.value('span');
  const pressed = useMemo(
    () =>
      bow === undefined || bow <= 0 || at > between
        ? null
        : benchStraighten({
            tube: { odIn: od, wallIn: wall },
            material,
            betweenClustersIn: between,
            bowIn: bow,
            atIn: at,
            ...(shape === '' ? {} : { shape }),
            ...(clock === undefined ? {} : { clock }),
            ...(span === undefined || span <= 0 ? {} : { spanIn: span }),
          }),
    [od, wall, between, material, clock, bow, at, span, shape],
  );
  return (
    <section className="stack tight" aria-label={benchPressText.title}>
      <h3>{benchPressText.title}</h3>
      <div className="fields">
        <LengthField label={benchPressText.bow} hint={benchPressText.bowHint} {...lengths.field('bow')} />
        <LengthField label={benchPressText.at} hint={benchPressText.atHint} {...lengths.field('bowAt')} />
        <LengthField label={benchPressText.span} hint={benchPressText.spanHint} {...lengths.field('span')} />
        <label className="field">
          <span className="caption">{benchPressText.shape}</span>
          <select value={shape} onChange={(e) => setShape(e.target.value as typeof shape)}>
            <option value="">{benchPressText.byPlace}</option>
            <option value="smooth">{shapeWords.smooth}</option>
            <option value="kinked">{shapeWords.kinked}</option>
          </select>
        </label>
      </div>
      {bow !== undefined && bow > 0 && !pressed && (
        <p className="notice">{at > between ? benchPressText.pastEnd : benchPressText.noStrength}</p>
      )}
      {pressed && (
        <>
          <Cautions step="straightening" />
          <Cautions step="heating" />
          <div className="figures">
            <FigureLine name={benchPressText.yieldTaken} figure={pressed.yieldPsi} />
            <PlainLine name={benchPressText.shape}>{shapeWords[pressed.fit.shape]}</PlainLine>
            <PlainLine name={benchPressText.ramSide}>{clockText(pressed.fit.clock)}</PlainLine>
          </div>
          {pressed.setups.length === 0 && (
            <p className="notice">
              {pressed.fit.bowIn.value <= 1 / 64 ? benchPressText.nothingLeft : benchPressText.noSetUp}
            </p>
          )}
          {pressed.setups.map((setup) => (
            <details key={setup.no} open={setup.no === 1}>
              <summary>
                <strong>{setup.no}.</strong>{' '}
                {benchPressText.setUp(showLength(setup.atIn, units), showFigure(setup.press.pressIn, units))}
              </summary>
              <SetUpCard
                fit={pressed.fit}
                setup={setup}
                lengthIn={between}
                ends={['A', 'B']}
                name={benchPressText.setUpNamed(setup.no)}
              />
            </details>
          ))}
        </>
      )}
    </section>
  );
};
