import { useState } from 'react';
import type { Design, Method, Piece } from '../../core/splice/result.ts';
import { useJob } from '../state/job.ts';
import { setPrefs, usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { templatesText } from '../text/templates.ts';
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
    <section className="stack tight" aria-label={templatesText.named}>
      <h3>{templatesText.title}</h3>
      <p className="small soft">{templatesText.lead}</p>
      <div className="row">
        <label className="check">
          <span>{templatesText.paper}</span>
          <select
            value={paper}
            onChange={(e) => setPrefs({ paper: e.target.value === 'letter' ? 'letter' : 'a4' })}
          >
            <option value="a4">{templatesText.papers.a4}</option>
            <option value="letter">{templatesText.papers.letter}</option>
          </select>
        </label>
        <button type="button" disabled={state === 'working'} onClick={() => void give('pdf')}>
          {templatesText.pdf}
        </button>
        <button type="button" disabled={state === 'working'} onClick={() => void give('svg')}>
          {templatesText.svg}
        </button>
      </div>
      <span className="small" role="status">
        {templatesText.states[state]}
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
