import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { reportFiles } from '../../src/present/report.ts';
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
});
