import { useAnswer } from '../state/answer.ts';
import { type OverlayName, setOverlay, useOverlay } from '../state/overlay.ts';
import { useView } from '../state/view.ts';
import { showText } from '../text/picture.ts';
import { chosenCase } from './caseOverlays.ts';
import { movements } from './freeOverlays.ts';
import { useStill } from './useStill.ts';

const byCase: readonly OverlayName[] = ['forces', 'stress', 'deflected'];
const counted: readonly OverlayName[] = ['moves', 'selfStress'];

/** The one control for what the sums lay over the picture. Off at first. */
export const ShowInPicture = () => {
  const overlay = useOverlay();
  const all = useAnswer((answer) => answer.assessment);
  const now = useAnswer((answer) => answer.atOnce);
  const route = useView((view) => view.route);
  const still = useStill();
  if (!all || !now) return null;
  const model = now.live.model ?? now.job.model;
  const { show } = overlay;
  const listed =
    show === 'moves'
      ? movements(all).length
      : all.statics.kind === 'stands'
        ? all.statics.selfStressStates.length
        : 0;
  const choices = (Object.keys(showText.overlays) as OverlayName[]).filter(
    (name) => name !== 'cut' || route === 'relieve',
  );
  return (
    <section className="show-in-picture stack tight" aria-label={showText.title}>
      <div className="field wide">
        <label htmlFor="show-in-picture">{showText.title}</label>
        <select
          id="show-in-picture"
          value={choices.includes(show) ? show : 'nothing'}
          onChange={(e) => setOverlay({ show: e.target.value as OverlayName, which: 0 })}
        >
          {choices.map((name) => (
            <option key={name} value={name}>
              {showText.overlays[name]}
            </option>
          ))}
        </select>
      </div>
      {byCase.includes(show) && all.statics.kind === 'stands' && (
        <div className="field wide">
          <label htmlFor="show-case">{showText.loadCase}</label>
          <select
            id="show-case"
            value={chosenCase(all, overlay)?.id ?? ''}
            onChange={(e) => setOverlay({ caseId: e.target.value })}
          >
            {all.statics.cases.map(({ id }) => (
              <option key={id} value={id}>
                {model.loadCases.find((c) => c.id === id)?.name ?? id}
              </option>
            ))}
          </select>
        </div>
      )}
      {show !== 'nothing' && (
        <div className="row">
          {show !== 'moves' && (
            <label className="check">
              <input
                type="checkbox"
                checked={overlay.numbers}
                onChange={(e) => setOverlay({ numbers: e.target.checked })}
              />
              {showText.numbers}
            </label>
          )}
          {byCase.includes(show) && (
            <label className="check">
              <input
                type="checkbox"
                checked={overlay.arrows}
                onChange={(e) => setOverlay({ arrows: e.target.checked })}
              />
              {showText.arrows}
            </label>
          )}
          {counted.includes(show) && listed > 1 && (
            <button type="button" onClick={() => setOverlay({ which: (overlay.which + 1) % listed })}>
              {showText.next(listed)}
            </button>
          )}
          {show === 'moves' && listed > 0 && !still && (
            <button type="button" onClick={() => setOverlay({ playing: !overlay.playing })}>
              {overlay.playing ? showText.stop : showText.play}
            </button>
          )}
          {show === 'moves' && still && <span className="small soft">{showText.still}</span>}
        </div>
      )}
    </section>
  );
};
