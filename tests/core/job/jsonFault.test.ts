import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../../src/core/job/jsonFault.ts';
import { mutated } from '../../kit/garbage.ts';
import { soak } from '../../kit/soak.ts';

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};
/** The longest start of the text that can still become JSON ends where the fault is; found by trying ends. */
const canGoOn = (start: string): boolean => {
  const ends = [
    '',
    '0',
    '"',
    '0"',
    'rue',
    'ue',
    'e',
    'alse',
    'lse',
    'se',
    'ull',
    'll',
    'l',
    '\\"',
    'n"',
    '000"',
    '00"',
    '0000"',
  ];
  const afters = ['', ':0', '""', '"":0', '0'];
  let open = '';
  let quoted = false;
  for (let i = 0; i < start.length; i++) {
    const c = start[i];
    if (quoted && c === '\\') i++;
    else if (c === '"') quoted = !quoted;
    else if (!quoted && (c === '[' || c === '{')) open = (c === '[' ? ']' : '}') + open;
    else if (!quoted && (c === ']' || c === '}')) open = open.slice(1);
  }
  return ends.some((end) => afters.some((after) => parses(start + end + after + open)));
};

describe('jsonFault', { timeout: 300_000 }, () => {
  it.each([
    ['{"a":1,}', 1, 8, '}', 'name'],
    ['[1,\n2\n3]', 3, 1, '3', 'commaOrClose'],
    ['{"a" 1}', 1, 6, '1', 'colon'],
    ['{"a":1} x', 1, 9, 'x', 'end'],
    ['[01]', 1, 3, '1', 'commaOrClose'],
    ['[1.]', 1, 3, '.', 'commaOrClose'],
    ['["a\nb"]', 1, 4, '\n', 'string'],
    ['["\\x"]', 1, 3, '\\', 'string'],
    ['[tru]', 1, 2, 't', 'value'],
    ['["a', 1, 4, '', 'string'],
    ['', 1, 1, '', 'value'],
    ['{', 1, 2, '', 'name'],
    ["{'a':1}", 1, 2, "'", 'name'],
    ['[1]]', 1, 4, ']', 'end'],
    ['[1}', 1, 3, '}', 'commaOrClose'],
    ['[NaN]', 1, 2, 'N', 'value'],
  ])('finds the fault of %j', (text, line, column, got, expected) => {
    expect(jsonFault(text)).toEqual({ line, column, got, expected });
  });

  it('finds a fault exactly where JSON.parse finds one, whatever was done to a text (seed 431)', () => {
    const start = JSON.stringify(
      { a: [1, -2.5e3, 'x\\"\u20ac', null], b: { c: true, d: false }, e: [] },
      null,
      1,
    );
    fc.assert(
      fc.property(fc.oneof(mutated(start), fc.string(), fc.json()), (text) => {
        expect(jsonFault(text) === null).toBe(parses(text));
      }),
      { seed: 431, numRuns: soak(40_000) },
    );
  });

  it('places the fault so that all before it could still have become JSON (seed 432)', () => {
    const start = '{"a":[1,-2.5e3,"x",null],"b":{"c":true},"e":[]}';
    fc.assert(
      fc.property(mutated(start), (text) => {
        const fault = jsonFault(text);
        if (!fault || fault.line > 1) return;
        expect(canGoOn(text.slice(0, fault.column - 1)), text).toBe(true);
      }),
      { seed: 432, numRuns: soak(10_000) },
    );
  });

  it('does not run out of stack on strings and nests of a million', () => {
    expect(jsonFault(`["${'a\\n'.repeat(1_000_000)}"`)).toMatchObject({ expected: 'commaOrClose' });
    expect(jsonFault('['.repeat(1_000_000))).toMatchObject({ column: 1_000_001, expected: 'value' });
  });
});
