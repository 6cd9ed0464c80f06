import { useState } from 'react';
import { type PaperName, paperNames, paperTitles } from '../../present/papers/titles.ts';
import { photosOf } from '../photos.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { papersText as text } from '../text/record.ts';
import { draw } from '../worker/asked.ts';

/** The papers of the work, each as a PDF of its own; the same bytes as from the terminal. */
export const PapersOfWork = () => {
  const job = useJob((state) => state.job);
  const { paper, units } = usePrefs();
  const [said, setSaid] = useState('');
  const [working, setWorking] = useState(false);
  const save = async (name: PaperName | 'truss'): Promise<void> => {
    if (!job) return;
    const title = name === 'truss' ? text.truss : paperTitles[name];
    setWorking(true);
    setSaid(text.working(title));
    try {
      const type = name === 'truss' ? 'model/gltf+json' : 'application/pdf';
      const photos = name === 'truss' ? new Map<string, Uint8Array>() : await photosOf(job);
      for (const file of await draw({ kind: 'paper', job, choice: { paper, units }, name, photos })) {
        saveFile(file.name, new Uint8Array(file.bytes), type);
        setSaid(text.saved(title, file.name));
      }
    } catch (why) {
      setSaid(text.failed(title, why instanceof Error ? why.message : String(why)));
    }
    setWorking(false);
  };
  return (
    <section className="stack tight" aria-label={text.title}>
      <h2>{text.title}</h2>
      <ul className="paper-list">
        {paperNames.map((name) => (
          <li key={name}>
            <span>
              <strong>{paperTitles[name]}</strong>
              <span className="small soft">{text.says[name]}</span>
            </span>
            <button
              type="button"
              aria-label={text.pdfOf(paperTitles[name])}
              disabled={working}
              onClick={() => void save(name)}
            >
              {text.pdf}
            </button>
          </li>
        ))}
        <li>
          <span>
            <strong>{text.truss}</strong>
            <span className="small soft">{text.trussSays}</span>
          </span>
          <button
            type="button"
            aria-label={text.gltfOf(text.truss)}
            disabled={working}
            onClick={() => void save('truss')}
          >
            {text.gltf}
          </button>
        </li>
      </ul>
      <span role="status" aria-label={text.paper} className="small">
        {said}
      </span>
    </section>
  );
};
