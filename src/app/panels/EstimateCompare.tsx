import { type ChangeEvent, useState } from 'react';
import type { Assessment } from '../../core/assessment.ts';
import type { SideBySide } from '../../core/estimate/compare.ts';
import type { Supplement } from '../../core/estimate/supplement.ts';
import { readJob } from '../../core/job/read.ts';
import { fixed, showLength, type Units, whole } from '../../present/show.ts';
import { groupWords } from '../../present/words/estimate.ts';
import { supplementLines } from '../../present/words/supplement.ts';
import { useAnswer } from '../state/answer.ts';
import { usePrefs } from '../state/prefs.ts';
import { compareText as text } from '../text/estimate.ts';
import { compareBay, compareJobs } from '../worker/asked.ts';
import { Folded } from './Estimate.tsx';
import { Exchange } from './EstimateExchange.tsx';

/** One plan beside another, and this state of the job beside an older one. Nothing is recommended. */
export const EstimateCompare = ({ all }: { readonly all: Assessment }) => (
  <div>
    <Folded title={text.bays}>
      <Bays all={all} />
    </Folded>
    <Folded title={text.exchange}>
      <Exchange all={all} />
    </Folded>
    <Folded title={text.since}>
      <Since />
    </Folded>
  </div>
);

type Asked<T> =
  | { readonly kind: 'idle' | 'working' }
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'failed'; readonly why: string };

const failed = (why: unknown): { readonly kind: 'failed'; readonly why: string } => ({
  kind: 'failed',
  why: why instanceof Error ? why.message : String(why),
});

const Bays = ({ all }: { readonly all: Assessment }) => {
  const now = useAnswer((answer) => answer.atOnce);
  const hurt = new Set(all.coverage.marks.filter((m) => m.findings.length > 0 || m.choice).map((m) => m.id));
  const bays = all.truss.bays.filter(({ members }) => members.some((id) => hurt.has(id)));
  const [bay, setBay] = useState(bays[0]?.id ?? '');
  const [asked, setAsked] = useState<Asked<SideBySide>>({ kind: 'idle' });
  if (bays.length === 0) return <p className="empty">{text.noBay}</p>;
  const work = async (): Promise<void> => {
    if (!now) return;
    setAsked({ kind: 'working' });
    try {
      setAsked({ kind: 'done', value: await compareBay(now.job, bay) });
    } catch (why) {
      setAsked(failed(why));
    }
  };
  return (
    <>
      <div className="plan-freeze">
        <label className="field">
          <span className="caption">{text.bay}</span>
          <select value={bay} onChange={(e) => setBay(e.target.value)}>
            {bays.map(({ id }) => (
              <option key={id} value={id}>
                {text.bayNamed(id)}
              </option>
            ))}
          </select>
        </label>
        <button type="button" disabled={asked.kind === 'working'} onClick={() => void work()}>
          {asked.kind === 'working' ? text.working : text.work}
        </button>
      </div>
      {asked.kind === 'failed' && <p role="alert">{text.failed(asked.why)}</p>}
      {asked.kind === 'done' && <Sides sides={asked.value} />}
    </>
  );
};

const valueText = (what: keyof typeof text.rows, value: number, units: Units): string =>
  what.endsWith('In') && what !== 'momentLbIn'
    ? showLength(value, units === 'mm' ? 'mm' : 'inDecimal')
    : what === 'bars'
      ? whole(value)
      : fixed(value, what === 'rodLb' ? 3 : what.endsWith('Lb') ? 2 : 1);

const Sides = ({ sides }: { readonly sides: SideBySide }) => {
  const units = usePrefs((prefs) => prefs.units);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by key
    <section className="side-by-side small" tabIndex={0} aria-label={text.table}>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{text.what}</span>
            </th>
            {sides.names.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sides.rows.map(({ what, values }) => (
            <tr key={what}>
              <th scope="row">{text.rows[what]}</th>
              {sides.names.map((name, k) => (
                <td key={name}>{valueText(what, values[k]!, units)}</td>
              ))}
            </tr>
          ))}
          {sides.groups.map(({ group, meanH }) => (
            <tr key={group}>
              <th scope="row" className="soft">
                {text.groupMean(groupWords[group])}
              </th>
              {sides.names.map((name, k) => (
                <td key={name}>{fixed(meanH[k]!, 1)}</td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">{text.leavesOut}</th>
            {sides.leavesOut.map(({ noDesign, notPriced }, k) => (
              <td key={sides.names[k]}>{text.leftOut(noDesign.length, notPriced)}</td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
};

const Since = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const [asked, setAsked] = useState<Asked<Supplement>>({ kind: 'idle' });
  const open = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (!file || !now) return;
    setAsked({ kind: 'working' });
    try {
      const { isArchive, unpackBackup } = await import('../../present/backup.ts');
      const bytes = new Uint8Array(await file.arrayBuffer());
      const backup = isArchive(bytes) ? unpackBackup(bytes) : null;
      const read =
        backup && !backup.ok ? backup : readJob(backup ? backup.value.text : new TextDecoder().decode(bytes));
      setAsked(
        read.ok
          ? { kind: 'done', value: await compareJobs(read.value, now.job) }
          : { kind: 'failed', why: text.unreadable },
      );
    } catch (why) {
      setAsked(failed(why));
    }
  };
  return (
    <>
      <label className="field">
        <span className="caption">{text.olderCopy}</span>
        <input type="file" accept=".json,.zip" onChange={(e) => void open(e)} />
      </label>
      {asked.kind === 'working' && <p className="small">{text.working}</p>}
      {asked.kind === 'failed' && (
        <p role="alert" className="small">
          {text.notCompared(asked.why)}
        </p>
      )}
      {asked.kind === 'done' && (
        <ul className="entries small">
          {supplementLines(asked.value).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
};
