import '../style/trammel.css';
import { useEffect, useMemo, useState } from 'react';
import { nearestFraction } from '../../core/base/lengthText.ts';
import { inToMm, mmToIn } from '../../core/base/units.ts';
import type { Draft } from '../../core/job/change.ts';
import type { Reading } from '../../core/job/jobSchema.ts';
import { aimAt } from '../../core/trammel/aim.ts';
import { ASSUMED_STD_IN, instrumentStd } from '../../core/trammel/observations.ts';
import type { Target, Trammel } from '../../core/trammel/result.ts';
import { showLength, type Units } from '../../present/show.ts';
import { distanceLine } from '../../present/tables/pairs.ts';
import { holdWords, markWords } from '../../present/words/record.ts';
import { Issues } from '../parts/Issues.tsx';
import { Keypad } from '../parts/Keypad.tsx';
import { pressed } from '../parts/keypadText.ts';
import { readEntry } from '../parts/lengthEntry.ts';
import type { AtOnce } from '../state/answer.ts';
import { setEntry, useEntry } from '../state/entry.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { entryText } from '../text/trammelReading.ts';
import { recordReading, strike, undoReading } from '../trammelDeeds.ts';
import { axisEnd, End, endOf } from './ReadingForm.tsx';
import { HoldAndInstrument } from './TrammelKept.tsx';
import { Aim, Off, Readout } from './TrammelReadout.tsx';

const keyOf = (a: string, b: string): string => [a, b].sort().join(' ');
const readingKey = ({ ends: [a, b] }: Pick<Reading, 'ends'>): string => keyOf(a.cluster, b.cluster);

/** The setting a trammel is given: the target as the person reads it off a scale. */
const asSet = (valueIn: number, units: Units): number =>
  units === 'mm'
    ? mmToIn(Math.round(inToMm(valueIn) * 10) / 10)
    : units === 'inDecimal'
      ? Math.round(valueIn * 1000) / 1000
      : nearestFraction(valueIn, 64).inches;

/**
 * One reading after another on the hangar floor: the next of the list at a glance, a keypad, the target and the
 * difference at once, and the last one undone with one touch.
 */
export const TrammelEntry = ({ now, trammel }: { readonly now: AtOnce; readonly trammel: Trammel }) => {
  const entry = useEntry();
  const units = usePrefs((prefs) => prefs.units);
  const refused = useJob((state) => state.refused);
  const jobKey = useJob((state) => state.key);
  const [asked, setAsked] = useState(false);
  const [marks, setMarks] = useState<readonly [typeof axisEnd, typeof axisEnd]>([axisEnd, axisEnd]);
  const { readings, manual } = now.live;

  // biome-ignore lint/correctness/useExhaustiveDependencies: instrument and hold start as the last reading of the job had them
  useEffect(() => {
    const last = readings.at(-1);
    if (last && entry.recorded.length === 0) setEntry({ hold: last.hold, instrument: last.instrument });
  }, [jobKey]);

  const byId = useMemo(() => new Map(trammel.targets.map((t) => [t.id, t])), [trammel]);
  const byKey = useMemo(() => new Map(trammel.targets.map((t) => [keyOf(t.from, t.to), t])), [trammel]);
  const asks = trammel.holds?.find(({ hold }) => hold === entry.hold)?.asks ?? [];
  const list = asks.flatMap(({ target }) => byId.get(target) ?? []);
  const read = new Set(readings.filter(({ hold }) => hold === entry.hold).map(readingKey));
  const isRead = (t: Target): boolean => read.has(keyOf(t.from, t.to));
  const left = list.filter((t) => !isRead(t));
  const current = (entry.line === null ? undefined : byId.get(entry.line)) ?? left[0] ?? list[0];

  const lit = current ? `${current.from} ${current.to}` : '';
  useEffect(() => {
    setEntry({ lit: lit === '' ? [] : lit.split(' ') });
    return () => setEntry({ lit: [] });
  }, [lit]);

  if (!current) return <p className="empty">{entryText.none}</p>;

  const place = list.indexOf(current);
  const aim = aimAt(current, entry.hold, manual);
  const setIn = asSet(aim.value, units);
  const typed = readEntry(entry.text, units, false);
  const compared = current.compared.find(({ hold }) => hold === entry.hold);
  const go = (by: number): void => {
    const at = place < 0 ? 0 : (place + by + list.length) % list.length;
    setEntry({ line: list[at]?.id ?? null, text: '' });
    setAsked(false);
  };

  const record = (how: Partial<Draft<Reading>>): void => {
    const saved = recordReading({
      ends: [endOf(current.from, marks[0]), endOf(current.to, marks[1])],
      instrument: entry.instrument,
      hold: entry.hold,
      ...how,
    } as Draft<Reading>);
    setAsked(!saved);
    if (!saved) return;
    const after = list.slice(place + 1).concat(list.slice(0, Math.max(0, place)));
    setEntry({ line: after.find((t) => !isRead(t))?.id ?? null });
  };
  const recordLength = (): void => {
    if (typed.kind === 'length') record({ lengthIn: typed.valueIn, typed: { lengthIn: entry.text } });
    else setAsked(true);
  };
  const recordMiss = (sign: 1 | -1 | 0): void => {
    if (sign === 0) record({ setAndMiss: { setIn, missIn: 0 } });
    else if (typed.kind === 'length')
      record({ setAndMiss: { setIn, missIn: sign * typed.valueIn }, typed: { missIn: entry.text } });
    else setAsked(true);
  };
  const undoable = entry.recorded.findLast((id) => readings.some((r) => r.id === id));
  const last = readings.find(({ id }) => id === undoable);
  const lastLine = last && byKey.get(readingKey(last))?.id;

  return (
    <section className="stack tight" aria-label={entryText.region}>
      <div className="reading">
        <div className="reading-said">
          <div className="reading-next">
            <h2>{current.id}</h2>
            <button type="button" aria-label={entryText.before} onClick={() => go(-1)}>
              ‹
            </button>
            <button type="button" aria-label={entryText.next} onClick={() => go(1)}>
              ›
            </button>
            <span className="small">
              {holdWords[entry.hold]} ·{' '}
              {place < 0 ? entryText.notAsked : entryText.place(place + 1, list.length, left.length)}
              {isRead(current) ? entryText.readAlready : ''}
            </span>
            <span className="small soft">{distanceLine(current)}</span>
          </div>
          <Aim aim={aim} target={current} units={units} />
          <fieldset className="halves" aria-label={entryText.how}>
            {(['length', 'setAndMiss'] as const).map((by) => (
              <button
                key={by}
                type="button"
                aria-pressed={entry.by === by}
                onClick={() => setEntry({ by, text: '' })}
              >
                {entryText[by]}
              </button>
            ))}
          </fieldset>
          {entry.by === 'setAndMiss' && (
            <p>
              {entryText.setTo}
              <strong>{showLength(setIn, units, 64)}</strong>
              {entryText.whereOther}
            </p>
          )}
          <Readout
            typed={entry.text}
            units={units}
            asked={asked}
            onEnter={recordLength}
            miss={entry.by === 'setAndMiss'}
          />
          {entry.by === 'setAndMiss' && <p className="small soft">{entryText.typeMiss}</p>}
          {entry.by === 'length' && typed.kind === 'length' && (
            <Off
              differenceIn={typed.valueIn - aim.value}
              stdIn={instrumentStd(manual, entry.instrument) ?? ASSUMED_STD_IN}
              toleranceIn={current.toleranceIn?.value}
              units={units}
            />
          )}
          {entry.text === '' && compared && (
            <>
              <Off
                differenceIn={compared.differenceIn.value}
                stdIn={compared.differenceIn.std ?? ASSUMED_STD_IN}
                toleranceIn={current.toleranceIn?.value}
                units={units}
              />
              <p className="small">
                {entryText.pooled(
                  compared.readings.length,
                  showLength(compared.foundIn.value, units, 64),
                  compared.scatterIn === undefined ? null : showLength(compared.scatterIn, units, 64),
                )}
              </p>
            </>
          )}
        </div>
        <div className="reading-hand">
          <Keypad
            units={units}
            onKey={(key) => {
              setAsked(false);
              setEntry({ text: pressed(entry.text, key) });
            }}
          />
          {entry.by === 'setAndMiss' && (
            <div className="miss">
              <button type="button" onClick={() => recordMiss(-1)}>
                {entryText.inside}
              </button>
              <button type="button" onClick={() => recordMiss(0)}>
                {entryText.onMark}
              </button>
              <button type="button" onClick={() => recordMiss(1)}>
                {entryText.outside}
              </button>
            </div>
          )}
          <div className="reading-deeds">
            {entry.by === 'length' && (
              <button type="button" className="main" onClick={recordLength}>
                {entryText.record}
              </button>
            )}
            <button
              type="button"
              disabled={!last}
              onClick={() => undoReading((r) => byKey.get(readingKey(r))?.id ?? '')}
            >
              {entryText.undo(lastLine)}
            </button>
          </div>
        </div>
        <div className="reading-more">
          <Issues issues={refused} title={entryText.notRecorded} />
          <HoldAndInstrument />
          <details>
            <summary>{entryText.points(marks.map(({ mark }) => markWords[mark]).join(', '))}</summary>
            <div className="stack">
              <End cluster={current.from} end={marks[0]} onChange={(end) => setMarks([end, marks[1]])} />
              <End cluster={current.to} end={marks[1]} onChange={(end) => setMarks([marks[0], end])} />
            </div>
          </details>
          <button type="button" className="link" onClick={() => strike(current.id)}>
            {entryText.strike}
          </button>
        </div>
      </div>
    </section>
  );
};
