import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/** One config for the app's build and for every test project. The terminal is built by `--mode cli`. */
export default defineConfig(({ mode }) => ({
  plugins: [react()],
  build:
    mode === 'cli'
      ? {
          ssr: 'src/cli/main.ts',
          outDir: 'dist/cli',
          target: 'node20',
          copyPublicDir: false,
          rolldownOptions: { output: { entryFileNames: 'main.mjs' } },
        }
      : {
          outDir: 'dist/app',
          chunkSizeWarningLimit: 1200,
          rolldownOptions: {
            output: {
              codeSplitting: {
                groups: [
                  { name: 'three', test: /node_modules[\\/](three|@react-three|camera-controls)/ },
                  { name: 'react', test: /node_modules[\\/](react|react-dom|scheduler)[\\/]/ },
                ],
              },
            },
          },
        },
  ssr: mode === 'cli' ? { noExternal: true } : {},
  worker: { format: 'es' },
  test: {
    fileParallelism: true,
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/*.test.ts', 'tests/core/**/*.test.ts', 'tests/kit/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: { name: 'present', include: ['tests/present/**/*.test.ts'], testTimeout: 60_000 },
      },
      {
        extends: true,
        test: { name: 'app', include: ['tests/app/**/*.test.{ts,tsx}'], testTimeout: 60_000 },
      },
      {
        extends: true,
        test: { name: 'reference', include: ['tests/reference/**/*.test.ts'], testTimeout: 120_000 },
      },
      {
        extends: true,
        test: {
          name: 'cli',
          include: ['tests/cli/**/*.test.ts'],
          globalSetup: ['tests/kit/buildCli.ts'],
          testTimeout: 120_000,
          hookTimeout: 240_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/kit/serveApp.ts'],
          fileParallelism: false,
          testTimeout: 240_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
}));
