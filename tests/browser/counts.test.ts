import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { expandTruss } from '../../src/core/truss/truss.ts';
import { setup as buildCli } from '../kit/buildCli.ts';
import { openChromium } from '../kit/chromium.ts';
import { countByHand } from '../kit/countByHand.ts';
import { openSheet } from '../kit/page.ts';
import { readPdf } from '../kit/readPdf.ts';
import { terminal } from '../kit/terminal.ts';

const address = inject('address');
const demo = 'demo-data/ground-loop.json';
let browser: Browser;
beforeAll(async () => {
  if (!existsSync('dist/cli/main.mjs')) await buildCli();
  browser = await openChromium();
});
afterAll(() => browser.close());

const words = {
  straighten: 'Straighten',
  splice: 'Splice',
  replace: 'Replace / rebuild',
  undecided: 'Undecided',
  notLookedAt: 'Not looked at',
} as const;
const each = (read: (word: string) => number) =>
  Object.fromEntries(Object.entries(words).map(([state, word]) => [state, read(word)]));
const after = (text: string, word: string, then: string): number =>
  Number(new RegExp(`(?:^|\\s)${word}${then}`, 'm').exec(text)?.[1] ?? Number.NaN);

it('counts straighten, splice, replace, undecided and not looked at alike on screen, in CSV, PDF and the terminal', async () => {
  const read = readJob(readFileSync(demo, 'utf8'));
  if (!read.ok) throw new Error('The demo job does not open.');
  const job = read.value;
  const want = countByHand(
    job,
    expandTruss(job.model).members.map((m) => m.id),
  );

  const { page, noise } = await openSheet(browser, address, [1440, 900]);
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Estimate/ })
    .click();
  const screen = page.getByRole('region', { name: 'Counts' });
  await screen.waitFor();
  const numbers = (rows: readonly string[]) => each((word) => after(rows.join('\n'), word, '\\s*(\\d+)'));
  expect(numbers(await screen.locator('.figure').allTextContents())).toEqual(want);
  // and beside the picture, tubes + clusters
  const legend = page.getByRole('group', { name: /fade|shown|state/i }).getByRole('button');
  expect(numbers(await legend.allTextContents())).toEqual(want);
  expect(noise).toEqual([]);

  const folder = join(mkdtempSync(join(tmpdir(), 'tubewright-')), 'r');
  expect(terminal('report', demo, '--out', folder).status).toBe(0);
  const csv = readFileSync(join(folder, 'tables/counts.csv'), 'utf8');
  expect(each((word) => after(csv, word, ',[^,]*,(\\d+),'))).toEqual(want);

  const pdf = (await readPdf(readFileSync(join(folder, 'report.pdf')))).join(' ');
  const inPdf = each((word) => after(pdf, word, '\\s+(\\d+) members?,'));
  expect(inPdf).toEqual(want);

  const { out } = terminal('assess', demo, '--only', 'estimate');
  expect(each((word) => after(out, word, '\\s+(?:[A-Z]{2}|·)?\\s+(\\d+)\\s'))).toEqual(want);
});
