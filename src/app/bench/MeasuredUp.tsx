import { useMemo, useState } from 'react';
import { modelFromReadings, type SideReading } from '../../core/trammel/fromReadings.ts';
import { observe } from '../../core/trammel/observations.ts';
import { sidePairs } from '../../core/trammel/sidePairs.ts';
import { issueSentence } from '../../present/words/issues.ts';
import { countWords, listWords } from '../../present/words/names.ts';
import { useAnswer } from '../state/answer.ts';
import { measuredUpText as text } from '../text/modelBegin.ts';
import { putModel, setDraft, useDraft, useDraftTruss } from './draft.ts';
import { readDrawn } from './drawn.ts';

/** No drawing: the sound side measured between axis points, the other side its mirror image. */
export const MeasuredUp = () => {
  const model = useDraft((draft) => draft.model);
  const typed = useDraft((draft) => draft.typed);
  const truss = useDraftTruss();
  const live = useAnswer((answer) => answer.atOnce?.live);
  const [side, setSide] = useState<'L' | 'R'>('L');
  const [said, setSaid] = useState('');
  const pairs = useMemo(() => sidePairs(model, side), [model, side]);
  const fromJob = useMemo((): readonly SideReading[] => {
    if (!live) return [];
    return observe(truss, live.readings, live.manual)
      .observations.filter((o) => !o.plane)
      .map((o) => ({ from: o.clusters[0].id, to: o.clusters[1].id, lengthIn: o.axisIn, stdIn: o.stdIn }));
  }, [live, truss]);
  const [withJob, setWithJob] = useState(false);
  const own = pairs.flatMap(([from, to]): SideReading[] => {
    const read = readDrawn(typed[`${from} ${to}`] ?? '', model.drawnIn, false);
    return read.kind === 'length' ? [{ from, to, lengthIn: read.valueIn }] : [];
  });
  const readings = withJob ? [...own, ...fromJob] : own;
  const build = (): void => {
    const made = modelFromReadings(model, readings, side);
    if (!made.ok) {
      setSaid(made.issues.map((one) => issueSentence(one)).join(' '));
      return;
    }
    const { fixed, loose, residualsIn } = made.value;
    const worst = Math.max(0, ...residualsIn.map(Math.abs));
    setSaid(
      text.fixed(countWords(fixed.length, 'cluster')) +
        (loose.length > 0 ? text.loose(listWords(loose)) : '') +
        text.worst(
          (model.drawnIn === 'mm' ? worst * 25.4 : worst).toFixed(model.drawnIn === 'mm' ? 1 : 3),
          model.drawnIn,
        ) +
        made.issues.map((one) => issueSentence(one)).join(' '),
    );
    putModel(made.value.model, text.built);
  };
  if (truss.clusters.length === 0)
    return (
      <section className="stack tight" aria-label={text.region}>
        <h3>{text.title}</h3>
        <p className="soft">{text.roughFirst}</p>
      </section>
    );
  return (
    <section className="stack tight" aria-label={text.region}>
      <h3>{text.title}</h3>
      <p className="soft">{text.lead}</p>
      <div className="row">
        <select aria-label={text.side} value={side} onChange={(e) => setSide(e.target.value as 'L' | 'R')}>
          <option value="L">{text.sides.L}</option>
          <option value="R">{text.sides.R}</option>
        </select>
        {fromJob.length > 0 && (
          <label className="check">
            <input type="checkbox" checked={withJob} onChange={(e) => setWithJob(e.target.checked)} />
            {text.withJob(countWords(fromJob.length, 'reading'))}
          </label>
        )}
      </div>
      <details>
        <summary>{text.toTake(own.length, pairs.length)}</summary>
        <div className="pair-list">
          {pairs.map(([from, to]) => {
            const key = `${from} ${to}`;
            const entered = typed[key] ?? '';
            return (
              <label key={key} className="pair">
                <span>
                  {from}–{to}
                </span>
                <input
                  type="text"
                  autoComplete="off"
                  aria-label={text.distance(from, to)}
                  aria-invalid={readDrawn(entered, model.drawnIn, false).kind === 'wrong'}
                  value={entered}
                  placeholder={model.drawnIn}
                  onChange={(e) => setDraft({ typed: { ...typed, [key]: e.target.value } })}
                />
              </label>
            );
          })}
        </div>
      </details>
      <div className="row">
        <button type="button" disabled={readings.length === 0} onClick={build}>
          {text.build}
        </button>
      </div>
      {said !== '' && <p role="status">{said}</p>}
    </section>
  );
};
