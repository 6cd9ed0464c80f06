import { readdirSync, readFileSync } from 'node:fs';

const core = new URL('../../../src/core/', import.meta.url);

/** Folders that `assess.ts` draws on; a stage that is still being built is not read yet. */
const inTheChain = (): ReadonlySet<string> => {
  const chain = readFileSync(new URL('assess.ts', core), 'utf8');
  return new Set(['base', ...[...chain.matchAll(/from '\.\/(\w+)\//g)].map(([, folder]) => folder!)]);
};

/** Every string literal of core that looks like a code (`two-words-or-more`), with the file it first stands in. */
export const kebabLiterals = (): ReadonlyMap<string, string> => {
  const chain = inTheChain();
  const found = new Map<string, string>();
  for (const entry of readdirSync(core, { recursive: true, encoding: 'utf8' }).sort()) {
    if (!entry.endsWith('.ts') || !chain.has(entry.split('/')[0]!)) continue;
    const source = readFileSync(new URL(entry, core), 'utf8')
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/\/\/.*$/gm, '')
      .replace(/^import .*$/gm, '');
    for (const [, literal] of source.matchAll(/'([a-z][a-z0-9]*(?:-[a-z0-9/.]+)+)'/g))
      if (!found.has(literal!)) found.set(literal!, entry);
  }
  return found;
};

/** Codes that are made outside core: of archives and of the terminal. */
export const rimCodes = (): ReadonlySet<string> => {
  const src = new URL('../../../src/', import.meta.url);
  const files = [
    'present/backup.ts',
    'app/deeds.ts',
    ...readdirSync(new URL('cli/commands/', src)).map((f) => `cli/commands/${f}`),
  ];
  const text = files.map((file) => readFileSync(new URL(file, src), 'utf8')).join('\n');
  return new Set([...text.matchAll(/'([a-z]+(?:-[a-z]+)+)'/g)].map(([, literal]) => literal!));
};
