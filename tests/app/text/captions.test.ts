import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { literalsOf } from './literals.ts';

/** What has been moved to `src/app/text`. The list only grows, until it is all of `src/app`. */
const moved = [
  'src/app/App.tsx',
  'src/app/main.tsx',
  ...readdirSync('src/app/parts')
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => `src/app/parts/${name}`),
  ...readdirSync('src/app/scene')
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => `src/app/scene/${name}`),
  ...readdirSync('src/app/panels')
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => `src/app/panels/${name}`),
  'src/app/panels/decideTopics.ts',
  'src/app/panels/findingFields.ts',
  'src/app/panels/trammelLines.ts',
  'src/app/parts/dialWords.ts',
  'src/app/scene/says.ts',
  ...readdirSync('src/app/picture')
    .filter((name) => !name.startsWith('use'))
    .map((name) => `src/app/picture/${name}`),
  ...readdirSync('src/app/bench').map((name) => `src/app/bench/${name}`),
  ...readdirSync('src/app/practice').map((name) => `src/app/practice/${name}`),
  'src/app/deeds.ts',
  'src/app/planDeeds.ts',
  'src/app/shopDeeds.ts',
  'src/app/trammelDeeds.ts',
];

describe('text of the screen', () => {
  it.each(moved)('%s: every caption of two words or more stands in src/app/text', (file) => {
    expect(literalsOf(file)).toEqual([]);
  });

  it('is found where it stands in an element, an attribute or an expression', () => {
    expect(literalsOf('tests/app/text/planted.tsx')).toEqual([
      'Said aloud here',
      'Two words',
      'One of two',
      'and 0 more',
    ]);
  });

  it('is found anywhere in a source without elements', () => {
    expect(literalsOf('tests/app/text/plantedPlain.ts')).toEqual(['Two words', 'Force along 0']);
  });
});
