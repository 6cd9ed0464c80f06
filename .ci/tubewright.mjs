// `npm run --silent tubewright -- VERB FILE …`: builds the terminal program when its sources are newer, then runs it.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = new URL('..', import.meta.url).pathname;
const built = join(root, 'dist', 'cli', 'main.mjs');
const newest = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((latest, entry) => Math.max(latest, statSync(join(entry.parentPath, entry.name)).mtimeMs), 0);

const sources = ['core', 'present', 'cli'].map((ring) => newest(join(root, 'src', ring)));
if (
  !existsSync(built) ||
  statSync(built).mtimeMs < Math.max(...sources, statSync(join(root, 'package-lock.json')).mtimeMs)
)
  await build({ root, mode: 'cli', logLevel: 'error' });
process.argv.splice(1, 1, built);
await import(pathToFileURL(built).href);
