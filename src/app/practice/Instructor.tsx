import { useState } from 'react';
import { writeJob } from '../../core/job/write.ts';
import { type Task, tasks } from '../../core/practice/exercise.ts';
import { exerciseJob } from '../../core/practice/exerciseFile.ts';
import { exerciseWords } from '../../present/words/practice.ts';
import { say } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { fileName, saveFile } from '../storage/files.ts';
import { trained } from '../worker/asked.ts';
import { type Asked, AskFields } from './AskFields.tsx';
import { roundName } from './hiddenRun.ts';
import { freshSeed } from './session.ts';
import { workedOut } from './working.ts';

/** An exercise to hand out: from a seed, or from what was found in the open job, as one file. */
export const Instructor = () => {
  const now = useAnswer((answer) => answer.atOnce);
  const [from, setFrom] = useState<'seed' | 'job'>('seed');
  const [task, setTask] = useState<Task>('hidden');
  const [asked, setAsked] = useState<Asked>(() => ({ level: 2, seed: freshSeed(), locked: true }));
  if (!now) return null;
  const model = now.live.model ?? now.job.model;
  const make = async (): Promise<void> => {
    const { level, seed, locked } = asked;
    const ask = { seed, level, hintsLocked: locked, task };
    const blow = now.live.mishap?.blow;
    const made = await workedOut(
      trained(
        from === 'seed'
          ? { kind: 'crash', model, ask }
          : { kind: 'findings', model, ask, findings: now.live.findings, ...(blow ? { blow } : {}) },
      ),
    );
    if (!made || made.kind === 'planned') return;
    if (made.kind !== 'made') {
      say(
        made.kind === 'nothingFound'
          ? 'No exercise was made: the open job has no finding with a size to hide.'
          : 'No exercise was made: loads cannot be followed through this truss.',
      );
      return;
    }
    const name = roundName(model, seed);
    saveFile(
      fileName(name, '.tubewright.json'),
      writeJob(exerciseJob(model, made.exercise, name)),
      'application/json',
    );
  };
  return (
    <details>
      <summary>For the instructor</summary>
      <div className="stack tight">
        <p className="small soft">
          A file to hand out. Trainees open it like a job; what is wrong with the truss cannot be read in it
          at a glance. The same seed and level break the same truss the same way.
        </p>
        <div className="fields">
          <div className="field wide">
            <label htmlFor="made-from">Made from</label>
            <select id="made-from" value={from} onChange={(e) => setFrom(e.target.value as typeof from)}>
              <option value="seed">a crash by seed</option>
              <option value="job">the findings of the open job, without names, notes and photos</option>
            </select>
          </div>
          <div className="field wide">
            <label htmlFor="made-task">To practise</label>
            <select id="made-task" value={task} onChange={(e) => setTask(e.target.value as Task)}>
              {tasks.map((one) => (
                <option key={one} value={one}>
                  {exerciseWords[one]}
                </option>
              ))}
            </select>
          </div>
          <AskFields ask={asked} lockedWords="Lock hints" onAsk={setAsked} />
        </div>
        <p>
          <button type="button" onClick={() => void make()}>
            Save the exercise file
          </button>
        </p>
      </div>
    </details>
  );
};
