import { spawnSync } from 'node:child_process';

/** Runs the built terminal program as a process, as a person or a script would. */
export const terminal = (
  ...words: readonly string[]
): { status: number | null; out: string; err: string } => {
  const run = spawnSync(process.execPath, ['dist/cli/main.mjs', ...words], {
    encoding: 'utf8',
    maxBuffer: 256 * 1024 * 1024,
  });
  return { status: run.status, out: run.stdout, err: run.stderr };
};
