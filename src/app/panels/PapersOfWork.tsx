import { useState } from 'react';
import { type PaperName, paperNames, paperTitles } from '../../present/papers/titles.ts';
import { photosOf } from '../photos.ts';
import { useJob } from '../state/job.ts';
import { usePrefs } from '../state/prefs.ts';
import { saveFile } from '../storage/files.ts';
import { draw } from '../worker/asked.ts';

const says = {
  'start-card': 'released, data in hand, how held, what is unknown',
  'work-cards': 'a card a bay, boxes to tick, fields to measure into',
  'hold-sheets': 'target, limit, found and left at each hold',
  materials: 'tube to buy, how it is cut, rosettes, weld, rod',
  estimate: 'range, lines, rates, weight and moment',
  supplement: 'what changed since the plan was frozen; other states below',
  'hand-over': 'what the next shift must know',
  'weld-list': 'process, filler, far side, method, qualified person',
  'as-left': 'distances, tags and pictures before and after',
  'entry-draft': 'what is entered and what is missing; unsigned',
  'owner-page': 'plain words, no verdict',
  tags: 'chalk key, and tags to tie on, with a code to scan',
} as const satisfies Record<PaperName, string>;

/** The papers of the work, each as a PDF of its own; the same bytes as from the terminal. */
export const PapersOfWork = () => {
  const job = useJob((state) => state.job);
  const { paper, units } = usePrefs();
  const [said, setSaid] = useState('');
  const [working, setWorking] = useState(false);
  const save = async (name: PaperName | 'truss'): Promise<void> => {
    if (!job) return;
    const title = name === 'truss' ? 'Tagged truss' : paperTitles[name];
    setWorking(true);
    setSaid(`${title}: being worked out and drawn …`);
    try {
      const type = name === 'truss' ? 'model/gltf+json' : 'application/pdf';
      const photos = name === 'truss' ? new Map<string, Uint8Array>() : await photosOf(job);
      for (const file of await draw({ kind: 'paper', job, choice: { paper, units }, name, photos })) {
        saveFile(file.name, new Uint8Array(file.bytes), type);
        setSaid(`${title}: saved as ${file.name}.`);
      }
    } catch (why) {
      setSaid(
        `${title} could not be made, by our own fault: ${why instanceof Error ? why.message : String(why)}`,
      );
    }
    setWorking(false);
  };
  return (
    <section className="stack tight" aria-label="Papers of the work">
      <h2>Papers of the work</h2>
      <ul className="paper-list">
        {paperNames.map((name) => (
          <li key={name}>
            <span>
              <strong>{paperTitles[name]}</strong>
              <span className="small soft">{says[name]}</span>
            </span>
            <button
              type="button"
              aria-label={`${paperTitles[name]} (PDF)`}
              disabled={working}
              onClick={() => void save(name)}
            >
              PDF
            </button>
          </li>
        ))}
        <li>
          <span>
            <strong>Tagged truss</strong>
            <span className="small soft">3D for other programs, every tube with its tag and size</span>
          </span>
          <button
            type="button"
            aria-label="Tagged truss (glTF)"
            disabled={working}
            onClick={() => void save('truss')}
          >
            glTF
          </button>
        </li>
      </ul>
      <span role="status" aria-label="Paper" className="small">
        {said}
      </span>
    </section>
  );
};
