import process, { stderr, stdout } from 'node:process';
import { parseArgs } from 'node:util';
import { type Issue, issue } from '../core/base/issue.ts';

import type { Answer, Options } from './commands/command.ts';
import { verbs } from './commands/verbs.ts';
import { issueLine } from './print.ts';

const usage = `Usage: tubewright VERB FILE [options]
  check FILE                       what is wrong or odd in a job or model
  expand FILE                      clusters and members made from the station table
  assess FILE [--only STAGE] [--target ID]
                                   every result, or one stage; relief worked for ID too
  report FILE --out FOLDER [--paper a4|letter] [--papers LIST] [--since FILE|TIME]
                                   the damage report and every paper as PDF, a CSV per table, drawings, 3D;
                                   LIST: what the one PDF holds, as damage,work-cards (a wrong name lists all);
                                   since: what the supplement is held against; else the plan as frozen
  merge FILE FILE --out FILE       two tablets' jobs as one; a name ending in .zip takes the photos along
  schema job|model|assessment      the JSON Schema of a document
  --json                           exactly one JSON document on standard output`;

/** Issues and JSON go out on one path; nothing else is printed. Never `exit`: it would cut off what a pipe has not taken yet. */
const finish = (answer: Answer, json: boolean): void => {
  for (const i of answer.issues) stderr.write(`${issueLine(i)}\n`);
  if (json) stdout.write(`${JSON.stringify(answer.ok ? answer.json : { issues: answer.issues })}\n`);
  else if (answer.ok) stdout.write(`${answer.text}\n`);
  process.exitCode = answer.ok ? 0 : 2;
};

const wordsWrong = (facts: Issue['facts']): Answer => ({
  ok: false,
  issues: [issue('terminal-words-wrong', '', facts, 'see-usage')],
});

const run = async (): Promise<void> => {
  const json = process.argv.includes('--json');
  let parsed: { values: Options; positionals: string[] };
  try {
    parsed = parseArgs({
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        only: { type: 'string' },
        target: { type: 'string', multiple: true },
        out: { type: 'string' },
        paper: { type: 'string' },
        papers: { type: 'string' },
        since: { type: 'string' },
      },
    });
  } catch (fault) {
    stderr.write(`${usage}\n`);
    return finish(wordsWrong({ got: fault instanceof Error ? fault.message : String(fault) }), json);
  }
  const [verb, file, other, ...rest] = parsed.positionals;
  const command = verbs.find((v) => v.name === verb);
  const filesWrong = (other === undefined) !== (command?.files === undefined) || rest.length > 0;
  if (!command || !file || filesWrong) {
    stderr.write(`${usage}\n`);
    return finish(
      wordsWrong({ got: parsed.positionals.join(' ') || 'nothing', expected: verbs.map((v) => v.name) }),
      json,
    );
  }
  const stray = Object.keys(parsed.values).filter(
    (o) => o !== 'json' && !command.takes.includes(o as keyof Options),
  );
  if (stray.length > 0)
    return finish(wordsWrong({ got: stray.map((o) => `--${o}`), expected: command.takes }), json);
  finish(await command.run(file, parsed.values, other), json);
};

run().catch((fault: unknown) => {
  stderr.write(
    `This is our own fault, not the file's: ${fault instanceof Error ? fault.message : String(fault)}\n`,
  );
  process.exitCode = 1;
});
