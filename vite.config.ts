import { readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

/** Of the PDF library what is never asked of it: metrics of other fonts, named colours, HTML in drawings and forms. */
const unused =
  /pdf-lib\/es\/packages\/standard-fonts\/(?:Courier|Times|Symbol|Zapf|.*Oblique).*\.json$|node_modules\/(?:culori|node-html-better-parser|html-entities)\//;

/** Of the PDF library what only other papers need: ciphers, forms, reading and drawing of SVG and PNG. Its modules stay, hollow. */
const hollow =
  /pdf-lib\/es\/(?:core\/(?:crypto|security\/PDFSecurity)|api\/(?:svg|svgPath|extraction\/.*|form\/(?!index|PDFForm|PDFField|types).*)|packages\/upng\/.*)\.js$/;

/** A module with the same names, none of which can be made or called. */
const hollowed = (code: string): string => {
  const listed = [...code.matchAll(/export\s*\{([^}]*)\}/g)]
    .flatMap(([, list]) => list!.split(','))
    .map(
      (name) =>
        name
          .trim()
          .split(/\s+as\s+/)
          .at(-1)!,
    )
    .filter((name) => name !== '');
  const declared = [
    ...code.matchAll(/export\s+(?:async\s+)?(?:class|const|let|var|function\*?)\s+(\w+)/g),
  ].map(([, name]) => name!);
  const names = [...new Set([...listed, ...declared, ...(/export\s+default/.test(code) ? ['default'] : [])])];
  return `class Never { constructor() { throw new Error('left out of this build'); } }
export { ${names.map((name) => `Never as ${name}`).join(', ')} };`;
};

const never = `
  const never = () => { throw new Error('left out of this build'); };
  export { never as encode, never as parse };
  export const converter = () => never;
  export const NodeType = {};`;

/**
 * Leaves out of a build what libraries bring and nothing here calls, and the indents of jobs and shaders.
 * Tests and development run all of it.
 */
const lean = (): Plugin => ({
  name: 'lean',
  apply: 'build',
  enforce: 'pre',
  load: (id) => {
    const [file = '', how] = id.split('?');
    if (how === 'raw' && file.endsWith('.json'))
      return `export default ${JSON.stringify(JSON.stringify(JSON.parse(readFileSync(file, 'utf8'))))}`;
    if (hollow.test(id)) return hollowed(readFileSync(id, 'utf8'));
    if (!unused.test(id)) return null;
    return id.endsWith('.json') ? '""' : never;
  },
  transform: (code, id) =>
    id.endsWith('three/build/three.module.js') ? code.replaceAll(/(?<=\\n)(?:\\t)+/g, '') : null,
});

/** One config for the app's build and for every test project. The terminal is built by `--mode cli`. */
export default defineConfig(({ mode }) => ({
  plugins: [
    lean(),
    react(),
    // All that is needed stands in the browser's keeping after one visit; a newer version waits until a person takes it.
    ...(mode === 'cli'
      ? []
      : VitePWA({
          registerType: 'prompt',
          injectRegister: false,
          includeManifestIcons: false,
          manifest: {
            name: 'Tubewright',
            short_name: 'Tubewright',
            description: 'Damage map, load path, relief and trammel targets of a welded steel-tube fuselage.',
            start_url: '.',
            scope: '.',
            display: 'standalone',
            background_color: '#fbfaf5',
            theme_color: '#0b6a70',
            icons: [
              { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
              { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
              { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
            ],
          },
          workbox: {
            globPatterns: ['**/*.{html,js,css,woff2,svg,png,webmanifest}'],
            clientsClaim: true,
            cleanupOutdatedCaches: true,
            ignoreURLParametersMatching: [/.*/],
          },
        })),
  ],
  publicDir: 'src/app/public',
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
                  {
                    name: 'react',
                    test: /node_modules[\\/](react|react-dom|scheduler|zustand)[\\/]/,
                    priority: 2,
                  },
                  { name: 'three', test: /node_modules[\\/](three|@react-three\/fiber)[\\/]/, priority: 1 },
                ],
              },
            },
          },
        },
  ssr: mode === 'cli' ? { noExternal: true } : {},
  worker: { format: 'es', plugins: () => [lean()] },
  test: {
    fileParallelism: true,
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/*.test.ts', 'tests/core/**/*.test.ts', 'tests/kit/**/*.test.ts'],
          testTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: { name: 'present', include: ['tests/present/**/*.test.ts'], testTimeout: 120_000 },
      },
      {
        extends: true,
        test: { name: 'app', include: ['tests/app/**/*.test.{ts,tsx}'], testTimeout: 120_000 },
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
