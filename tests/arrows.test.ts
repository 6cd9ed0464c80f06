import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { dirname, resolve } from 'node:path/posix';
import { describe, expect, it } from 'vitest';
import { importsOf } from './kit/importsOf.ts';

/** What each ring may import besides itself. Named lists: a name that is missing is refused. */
const rings: Readonly<Record<string, readonly string[]>> = {
  core: [],
  present: ['core'],
  app: ['core', 'present', 'models', 'demo-data'],
  cli: ['core', 'present'],
};

/** Packages each ring may import. */
const packages: Readonly<Record<string, readonly string[]>> = {
  core: ['zod/mini', 'ml-matrix'],
  present: ['@cantoo/pdf-lib', 'papaparse', '@noble/hashes', 'fflate', 'uqr'],
  app: [
    'react',
    'react-dom/client',
    'react-dom',
    'three',
    '@react-three/fiber',
    '@react-three/drei',
    'zustand',
    'zundo',
    'comlink',
    'idb',
    '@fontsource/source-sans-3',
  ],
  cli: ['node:fs', 'node:path', 'node:util', 'node:process', 'node:crypto'],
};

/** Which folders of core each folder of core may lean on: only what stands before it in the order of the work. */
const order = [
  'base',
  'job',
  'truss',
  'walkRound',
  'statics',
  'trammel',
  'lockedIn',
  'loadPath',
  'relief',
  'disposition',
  'straighten',
  'splice',
  'plan',
  'estimate',
  'practice',
] as const;
const before: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  order.map((folder, place) => [folder, order.slice(0, place)]),
);

/** Clock, chance and locale pass the compiler; they do not pass here. */
const hostWords =
  /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bIntl\b|\.toLocale\w*|\bprocess\.|\bdocument\.|\bwindow\.|\bglobalThis\b|\bperformance\.now\b/;

const packageName = (from: string): string =>
  from.startsWith('@') ? from.split('/').slice(0, 2).join('/') : (from.split('/')[0] ?? from);

/** Every wrong arrow of one source file, in words. `path` is from the root, e.g. `src/core/base/vec3.ts`. */
const wrongArrows = (path: string, source: string): readonly string[] => {
  const ring = path.split('/')[1] ?? '';
  const folder = path.split('/').length > 3 ? path.split('/')[2] : undefined;
  const wrong: string[] = [];
  for (const { from } of importsOf(path, source)) {
    if (from === null) wrong.push(`${path}: a dynamic import that cannot be read`);
    else if (from.startsWith('.')) {
      const target = resolve('/', dirname(path), from.split('?')[0] ?? from).slice(1);
      const [top, toRing = '', toFolder = ''] = target.split('/');
      const name = top === 'src' ? toRing : (top ?? '');
      if (name !== ring && !(rings[ring] ?? []).includes(name))
        wrong.push(`${path}: ${ring} imports ${target}`);
      if (ring === 'core' && name === 'core' && folder !== undefined) {
        const deeper = target.split('/').length > 3;
        if (!deeper) wrong.push(`${path}: a stage imports ${target}, which stands above it`);
        else if (toFolder !== folder && !(before[folder] ?? []).includes(toFolder))
          wrong.push(`${path}: ${folder} imports ${toFolder}`);
      }
    } else {
      const allowed = packages[ring] ?? [];
      if (!allowed.includes(from) && !allowed.includes(packageName(from)))
        wrong.push(`${path}: ${ring} imports ${from}`);
    }
  }
  if (ring === 'core' || ring === 'present') {
    const code = source.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
    const hit = hostWords.exec(code);
    if (hit) wrong.push(`${path}: host word ${hit[0]}`);
  }
  return wrong;
};

const root = new URL('..', import.meta.url).pathname;
const sources = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts'))
  .map((entry) => relative(root, join(entry.parentPath, entry.name)));

describe('arrows', () => {
  it('finds the sources of every ring', () => {
    for (const ring of Object.keys(rings))
      expect(
        sources.some((path) => path.startsWith(`src/${ring}/`)),
        ring,
      ).toBe(true);
    expect(sources.length).toBeGreaterThan(30);
  });

  it('point one way: app and cli to present to core, and inside core only to earlier stages', () => {
    expect(sources.flatMap((path) => wrongArrows(path, readFileSync(join(root, path), 'utf8')))).toEqual([]);
  });

  it.each([
    ['src/core/truss/a.ts', "import { x } from '../relief/relief.ts';"],
    ['src/core/truss/a.ts', "import type { x } from '../relief/relief.ts';"],
    ['src/core/truss/a.ts', "export { x } from '../assess.ts';"],
    ['src/core/newcomer/a.ts', "import { x } from '../truss/truss.ts';"],
    ['src/core/base/a.ts', "import { x } from 'react';"],
    ['src/core/base/a.ts', "import { x } from '../../present/words.ts';"],
    ['src/present/a.ts', "import { x } from '../app/App.tsx';"],
    ['src/present/a.ts', "const x = await import('../cli/main.ts');"],
    ['src/present/a.ts', "const name = 'y'; const x = await import(name);"],
    ['src/cli/a.ts', "export * from '../app/App.tsx';"],
    ['src/app/a.ts', "import { x } from 'node:fs';"],
    ['src/core/base/a.ts', 'export const t = (): number => Date.now();'],
    ['src/core/base/a.ts', 'export const t = (n: number): string => n.toLocaleString();'],
  ])('sees the planted fault in %s: %s', (path, source) => {
    expect(wrongArrows(path, source)).not.toEqual([]);
  });
});
