import { existsSync } from 'node:fs';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    readonly address: string;
  }
}

/** Serves the built app on a free port for the browser tests; builds it when it is not there yet. */
export const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  if (!existsSync('dist/app/index.html')) await build({ logLevel: 'error' });
  const server = await preview({ preview: { host: '127.0.0.1', port: 0 }, logLevel: 'error' });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error('The preview server gave no address.');
  project.provide('address', address);
  return () => server.close();
};
