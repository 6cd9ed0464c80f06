import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const app = 'dist/app';
const assets = join(app, 'assets');
const packed = (file: string): number => gzipSync(readFileSync(join(assets, file))).length;
const sum = (files: readonly string[]): number => files.reduce((all, file) => all + packed(file), 0);

/** Every chunk that is fetched before a given one runs: what it imports, and what that imports. */
const withImports = (first: readonly string[]): readonly string[] => {
  const seen = new Set<string>();
  const visit = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const [, name] of readFileSync(join(assets, file), 'utf8').matchAll(
      /(?:from|import)\s*["']\.\/([^"']+\.js)["']/g,
    ))
      visit(name!);
  };
  first.forEach(visit);
  return [...seen];
};

const sizes = (folder: string): number =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((all, entry) => all + readFileSync(join(entry.parentPath, entry.name)).length, 0);

// `npm test` builds first; the budgets are those of stack.md, section 10, in kB of a thousand bytes.
describe('the built app', () => {
  if (!existsSync(join(app, 'index.html'))) throw new Error('The app is not built: `npm run build` first.');
  const entry = /assets\/(index-[^"]+\.js)/.exec(readFileSync(join(app, 'index.html'), 'utf8'))?.[1] ?? '';
  const scene = readdirSync(assets).filter((name) => name.startsWith('Scene-'));
  const start = withImports([entry]);

  it('fetches at most 330 kB of packed script before the first picture', () => {
    expect(scene).toHaveLength(1);
    expect(sum(withImports([entry, ...scene]))).toBeLessThanOrEqual(330_000);
  });

  it('starts with at most 80 kB of its own, React apart, and without three', () => {
    expect(start.filter((name) => name.startsWith('three'))).toEqual([]);
    expect(sum(start.filter((name) => !name.startsWith('react')))).toBeLessThanOrEqual(80_000);
  });

  it('keeps at most 3 MB for use without network', () => {
    expect(sizes(app)).toBeLessThanOrEqual(3_000_000);
  });

  it('has a policy that lets no code, frame or request from elsewhere in', () => {
    const policy = /Content-Security-Policy"\s+content="([^"]+)"/.exec(
      readFileSync(join(app, 'index.html'), 'utf8'),
    )?.[1];
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });
});
