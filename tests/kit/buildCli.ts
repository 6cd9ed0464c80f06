import { build } from 'vite';

/** Builds the terminal program once for the tests that run it as a process. */
export const setup = async (): Promise<void> => {
  await build({ mode: 'cli', logLevel: 'error' });
};
