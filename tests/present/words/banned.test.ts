import { readdirSync, readFileSync } from 'node:fs';
import { parseSync } from 'oxc-parser';
import { describe, expect, it } from 'vitest';
import { cautions } from '../../../src/present/words/cautions.ts';
import { bannedIn } from './banned.ts';

/** Every string and template text of our sources under present, read by a parser so that names of variables do not count. */
const texts = (): readonly (readonly [file: string, text: string])[] => {
  const root = new URL('../../../src/present/', import.meta.url);
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => {
      const { program } = parseSync(file, readFileSync(new URL(file, root), 'utf8'));
      const found: string[] = [];
      const walk = (node: unknown): void => {
        if (Array.isArray(node)) for (const one of node) walk(one);
        else if (node !== null && typeof node === 'object') {
          const { type, value } = node as { type?: string; value?: unknown };
          if (type === 'Literal' && typeof value === 'string') found.push(value);
          if (type === 'TemplateElement') found.push((value as { cooked: string }).cooked);
          for (const child of Object.values(node)) walk(child);
        }
      };
      walk(program.body);
      return found.map((text) => [file, text] as const);
    });
};

describe('words that are never said', () => {
  it('stand in no text of present outside the written disclaimers', () => {
    const all = texts();
    expect(all.length).toBeGreaterThan(800);
    expect(all.flatMap(([file, text]) => bannedIn(text).map((around) => `${file}: ${around}`))).toEqual([]);
  });

  it('are found when they are there', () => {
    for (const said of [
      'The aircraft is airworthy.',
      'all OK',
      'Passed.',
      'safe to cut',
      'Certified by',
      'an approved repair',
    ])
      expect(bannedIn(said), said).toHaveLength(1);
    expect(bannedIn('a brook, passage and token')).toEqual([]);
    expect(bannedIn('Working aid, not an approval. This is approved.')).toHaveLength(1);
  });

  it('every caution has its own id, a step, and ends as a sentence', () => {
    expect(new Set(cautions.map((c) => c.id)).size).toBe(cautions.length);
    for (const caution of cautions) expect(caution.text).toMatch(/[.]$/);
  });

  // needs.md section 7, the rows "every page foot", "cutting" and "welding"
  it('cautions name the hazard, how to keep clear of it, and where, before the step', () => {
    const text = (id: string): string => cautions.find((c) => c.id === id)!.text;
    expect(text('page-foot')).toContain(
      "Use the maker's current data and the rules of the country of registry.",
    );
    expect(text('stored-strain')).toMatch(
      /^Stored strain can move tubes suddenly when cut\. Keep hands and face clear, brace first/,
    );
    expect(text('vent-sealed-tubes')).toBe('Sealed tubes can burst when heated: vent them.');
  });
});
