import { readFileSync } from 'node:fs';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { readJob } from '../../src/core/job/read.ts';
import { paperTitles } from '../../src/present/papers/titles.ts';
import { chapterTitles } from '../../src/present/record/chapterNames.ts';
import { reportFiles, supplementFiles } from '../../src/present/report.ts';
import { openChromium } from '../kit/chromium.ts';
import { openSheet, touchInPicture } from '../kit/page.ts';
import { readPdf } from '../kit/readPdf.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

describe('the report from the screen', () => {
  it('downloads as a PDF with the bytes and pages the terminal gives, whatever is selected', async () => {
    const { page, noise } = await openSheet(browser, address);
    await touchInPicture(page, 'U7L-L7L');
    await page
      .getByRole('navigation', { name: 'Route' })
      .getByRole('button', { name: /^Record/ })
      .click();
    const download = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Download the report (PDF)' }).click();
    const screen = readFileSync(await (await download).path());

    const demo = readJob(readFileSync('demo-data/ground-loop.json', 'utf8'));
    if (!demo.ok) return expect.fail('the demo does not open');
    const files = await reportFiles(demo.value, { paper: 'a4', units: 'inFraction' });
    const terminal = files.find((file) => file.name === 'report.pdf');
    expect(screen.equals(terminal?.bytes ?? new Uint8Array())).toBe(true);

    const pages = await readPdf(screen);
    expect(pages.length).toBeGreaterThan(5);
    for (const [k, text] of pages.entries()) expect(text).toContain(`${k + 1} of ${pages.length}`);
    expect(pages[0]).toMatch(/NOT LOOKED AT/i);
    expect(noise).toEqual([]);
  });

  it('holds the chapters and papers that are ticked, and no others', async () => {
    const { page, noise } = await openSheet(browser, address);
    await record(page);
    await page.getByText('What is in the report: the usual chapters').click();
    for (const title of Object.values(chapterTitles)) await page.getByLabel(title, { exact: true }).uncheck();
    await page.getByLabel(chapterTitles.findings, { exact: true }).check();
    await page.getByLabel(paperTitles.tags, { exact: true }).check();
    await page.getByText('What is in the report: 2 chosen').waitFor();
    const [screen] = await downloads(page, 1, () =>
      page.getByRole('button', { name: 'Download the report (PDF)' }).click(),
    );
    const choice = { paper: 'a4', units: 'inFraction', holds: ['findings', 'tags'] } as const;
    const [terminal] = await reportFiles(demo(), choice);
    expect(screen!.bytes.equals(terminal!.bytes)).toBe(true);
    expect(noise).toEqual([]);
  });

  it('gives the supplement since a time as paper and table, the bytes the terminal gives', async () => {
    const { page, noise } = await openSheet(browser, address);
    await record(page);
    const section = page.getByRole('region', { name: 'Supplement' });
    await section.getByLabel('Time of a record').waitFor();
    const times = await section.getByLabel('Time of a record').locator('option').all();
    const at = (await times[Math.floor(times.length / 2)]!.getAttribute('value'))!;
    await section.getByLabel('Time of a record').selectOption(at);
    const files = await downloads(page, 2, () =>
      section.getByRole('button', { name: 'Supplement (PDF and CSV)' }).click(),
    );
    const choice = { paper: 'a4', units: 'inFraction', since: { kind: 'time', at } } as const;
    for (const { name, bytes } of await supplementFiles(demo(), choice))
      expect(files.find((file) => file.name === name)!.bytes.equals(bytes), name).toBe(true);
    expect(noise).toEqual([]);
  });

  it('lets a weld have a process of its own, with the side that was seen and who looked', async () => {
    const { page, noise } = await openSheet(browser, address);
    await record(page);
    const welds = page.getByRole('region', { name: 'Welds' });
    await welds.getByText('Process and filler of the whole job').click();
    await welds.getByLabel(/^Welding process: not entered/).fill('GTAW');
    await welds.getByLabel(/^Filler rod: not entered/).fill('ER70S-2');
    await welds.getByRole('button', { name: 'Enter them' }).click();
    await who(page);
    await welds.getByText(/welds, .* not entered/).click();
    await welds.getByRole('button', { name: 'Write down: L3R-L4L, at L3R' }).click();
    const process = welds.getByLabel('Welding process', { exact: true });
    expect(await process.inputValue()).toBe('GTAW');
    await process.fill('oxyacetylene');
    await welds.getByLabel('Far side').selectOption({ label: 'seen with a mirror' });
    await welds.getByLabel('Person qualified for the method').fill('Vera Kolbe');
    await welds.getByRole('button', { name: 'Write it down' }).click();
    const row = (joint: string) => welds.getByRole('listitem').filter({ hasText: `L3R-L4L, ${joint}` });
    await row('at L3R')
      .getByText(/oxyacetylene · ER70S-2 · far side seen with a mirror .* Vera Kolbe/)
      .waitFor();
    await row('at L4L')
      .getByText(/^GTAW · ER70S-2 · far side not entered/)
      .waitFor();
    expect(noise).toEqual([]);
  });
});

const demo = (): Job => {
  const read = readJob(readFileSync('demo-data/ground-loop.json', 'utf8'));
  if (!read.ok) throw new Error('the demo does not open');
  return read.value;
};

const record = (page: Page): Promise<void> =>
  page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Record/ })
    .click();

/** Gives a name where the program asks for one. */
const who = async (page: Page): Promise<void> => {
  const field = page.getByRole('dialog').getByRole('textbox');
  if (await field.isVisible()) {
    await field.fill('Odell Farrow');
    await page.keyboard.press('Enter');
  }
};

const downloads = async (
  page: Page,
  count: number,
  press: () => Promise<void>,
): Promise<readonly { readonly name: string; readonly bytes: Buffer }[]> => {
  const all: Download[] = [];
  const done = new Promise<void>((give) => {
    page.on('download', (one) => {
      all.push(one);
      if (all.length === count) give();
    });
  });
  await press();
  await done;
  return Promise.all(
    all.map(async (one) => ({ name: one.suggestedFilename(), bytes: readFileSync(await one.path()) })),
  );
};
