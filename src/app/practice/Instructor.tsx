import { useState } from 'react';
import { writeJob } from '../../core/job/write.ts';
import { type Task, tasks } from '../../core/practice/exercise.ts';
import { exerciseJob } from '../../core/practice/exerciseFile.ts';
import { exerciseWords } from '../../present/words/practice.ts';
import { say } from '../jobs.ts';
import { useAnswer } from '../state/answer.ts';
import { fileName, saveFile } from '../storage/files.ts';
import { instructorText as text } from '../text/practice.ts';
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
      say(made.kind === 'nothingFound' ? text.nothingFound : text.movesFreely);
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
      <summary>{text.title}</summary>
      <div className="stack tight">
        <p className="small soft">{text.lead}</p>
        <div className="fields">
          <div className="field wide">
            <label htmlFor="made-from">{text.from}</label>
            <select id="made-from" value={from} onChange={(e) => setFrom(e.target.value as typeof from)}>
              <option value="seed">{text.sources.seed}</option>
              <option value="job">{text.sources.job}</option>
            </select>
          </div>
          <div className="field wide">
            <label htmlFor="made-task">{text.task}</label>
            <select id="made-task" value={task} onChange={(e) => setTask(e.target.value as Task)}>
              {tasks.map((one) => (
                <option key={one} value={one}>
                  {exerciseWords[one]}
                </option>
              ))}
            </select>
          </div>
          <AskFields ask={asked} lockedWords={text.lock} onAsk={setAsked} />
        </div>
        <p>
          <button type="button" onClick={() => void make()}>
            {text.save}
          </button>
        </p>
      </div>
    </details>
  );
};
