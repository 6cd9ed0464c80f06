import { useState } from 'react';
import type { Design, Method, Piece } from '../../core/splice/result.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { draw } from '../worker/asked.ts';
import type { PaperFile } from '../worker/protocol.ts';

type State = 'idle' | 'working' | 'done' | 'failed';

/** Full-size templates on the paper chosen: one PDF of every sheet, or each sheet as SVG. */
const Papers = ({ make }: { readonly make: (paper: 'a4' | 'letter') => Promise<readonly PaperFile[]> }) => {
  const paper = usePrefs((prefs) => prefs.paper);
  const [state, setState] = useState<State>('idle');
  const give = async (ending: 'pdf' | 'svg'): Promise<void> => {
    setState('working');
    try {
      for (const { name, bytes } of await make(paper))
        if (name.endsWith(`.${ending}`))
          saveFile(name, new Uint8Array(bytes), ending === 'pdf' ? 'application/pdf' : 'image/svg+xml');
      setState('done');
    } catch {
      setState('failed');
    }
  };
  return (
    <section className="stack tight" aria-label="Templates">
      <h3>Templates, full size</h3>
      <p className="small soft">
        Print at 100 %, then lay a rule on the 100 mm and the 4 in bar of each sheet. With wraps come saw
        guide, formed blocks and roundness gauge.
      </p>
      <div className="row">
        <label className="check">
          <span>Paper</span>
          <select
            value={paper}
            onChange={(e) => setPrefs({ paper: e.target.value === 'letter' ? 'letter' : 'a4' })}
          >
            <option value="a4">A4</option>
            <option value="letter">Letter</option>
          </select>
        </label>
        <button type="button" disabled={state === 'working'} onClick={() => void give('pdf')}>
          Templates (PDF)
        </button>
        <button type="button" disabled={state === 'working'} onClick={() => void give('svg')}>
          Templates (SVG)
        </button>
      </div>
      <span className="small" role="status">
        {state === 'working'
          ? 'The templates are being drawn …'
          : state === 'done'
            ? 'The templates are saved.'
            : state === 'failed'
              ? 'The templates could not be drawn, by our own fault.'
              : ''}
      </span>
    </section>
  );
};

/** Templates of one member of the open job. */
export const JobTemplates = ({ member, method }: { readonly member: string; readonly method: Method }) => {
  const units = usePrefs((prefs) => prefs.units);
  const make = async (paper: 'a4' | 'letter'): Promise<readonly PaperFile[]> => {
    const { job } = useJob.getState();
    if (!job) return [];
    return draw({ kind: 'templates', job, member, options: { paper, units, methods: [method] } });
  };
  return <Papers make={make} />;
};

/** Templates of one tube on the bench. */
export const BenchTemplates = ({ piece, design }: { readonly piece: Piece; readonly design: Design }) => {
  const units = usePrefs((prefs) => prefs.units);
  const make = (paper: 'a4' | 'letter'): Promise<readonly PaperFile[]> =>
    draw({ kind: 'benchTemplates', piece, design, options: { paper, units } });
  return <Papers make={make} />;
};
