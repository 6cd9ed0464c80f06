import type { AxisFit, SetUp } from '../../core/straighten/result.ts';
import { axisDrawing } from '../../present/draw/axis.ts';
import { showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { straightenCautions } from '../../present/words/straighten.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { usePrefs } from '../state/prefs.ts';
import { setUpText } from '../text/setUp.ts';

/** One place of ram and blocks: drawing, force, how far to press, and what it leaves. */
export const SetUpCard = ({
  fit,
  setup,
  lengthIn,
  ends,
  name,
}: {
  readonly fit: AxisFit;
  readonly setup: SetUp;
  readonly lengthIn: number;
  readonly ends: readonly [string, string];
  readonly name: string;
}) => {
  const units = usePrefs((prefs) => prefs.units);
  const { press } = setup;
  return (
    <div className="stack tight">
      <div className="axis-drawing">
        <Drawing
          drawing={axisDrawing(fit, lengthIn, ends, units, setup)}
          title={setUpText.drawing(
            name,
            showLength(setup.atIn, units),
            [showLength(setup.blocksIn[0], units), showLength(setup.blocksIn[1], units)],
            ends[0],
          )}
        />
      </div>
      {press.warnings.map((code) => (
        <p key={code} className="notice caution small" role="note">
          <strong>{setUpText.caution}</strong> {straightenCautions[code] ?? code}
        </p>
      ))}
      <div className="figures">
        <PlainLine name={setUpText.ramSide}>{clockText(setup.ramClock)}</PlainLine>
        <PlainLine name={setUpText.blocksApart}>{showLength(press.spanIn, units)}</PlainLine>
        <FigureLine name={setUpText.press} figure={press.pressIn} />
        <FigureLine name={setUpText.clamp} figure={press.clampLbf} />
        <FigureLine name={setUpText.springsBack} figure={press.springBackIn} />
        <FigureLine name={setUpText.stays} figure={press.setIn} />
        <FigureLine name={setUpText.takesOff} figure={setup.takesOffIn} />
        <FigureLine name={setUpText.leavesNothing} figure={press.firstYieldIn} />
        <FigureLine name={setUpText.mostSet} figure={press.mostSetIn} />
        <FigureLine name={setUpText.flatPad} figure={press.flatPadIn} />
        <FigureLine name={setUpText.bearing} figure={press.bearingPsi} />
      </div>
    </div>
  );
};
