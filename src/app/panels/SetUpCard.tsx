import type { AxisFit, SetUp } from '../../core/straighten/result.ts';
import { axisDrawing } from '../../present/draw/axis.ts';
import { showLength } from '../../present/show.ts';
import { clockText } from '../../present/tables/straighten.ts';
import { straightenCautions } from '../../present/words/straighten.ts';
import { Drawing } from '../parts/Drawing.tsx';
import { FigureLine, PlainLine } from '../parts/FigureLine.tsx';
import { usePrefs } from '../state/prefs.ts';

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
          title={`${name}: ram at ${showLength(setup.atIn, units)}, blocks at ${showLength(setup.blocksIn[0], units)} and ${showLength(setup.blocksIn[1], units)} from ${ends[0]}`}
        />
      </div>
      {press.warnings.map((code) => (
        <p key={code} className="notice caution small" role="note">
          <strong>CAUTION</strong> {straightenCautions[code] ?? code}
        </p>
      ))}
      <div className="figures">
        <PlainLine name="Ram’s side: on the crown">{clockText(setup.ramClock)}</PlainLine>
        <PlainLine name="Blocks apart">{showLength(press.spanIn, units)}</PlainLine>
        <FigureLine name="Press, low end first" figure={press.pressIn} />
        <FigureLine name="Clamp force to expect" figure={press.clampLbf} />
        <FigureLine name="Springs back" figure={press.springBackIn} />
        <FigureLine name="Stays" figure={press.setIn} />
        <FigureLine name="Takes off the bow" figure={setup.takesOffIn} />
        <FigureLine name="Leaves nothing up to" figure={press.firstYieldIn} />
        <FigureLine name="Most set before a hinge" figure={press.mostSetIn} />
        <FigureLine name="Shortest flat pad" figure={press.flatPadIn} />
        <FigureLine name="Bearing on grooved pads" figure={press.bearingPsi} />
      </div>
    </div>
  );
};
