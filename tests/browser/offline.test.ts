import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { openSheet, settled, touchInPicture } from '../kit/page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const serve = async (outDir: string): Promise<{ server: PreviewServer; address: string }> => {
  const server = await preview({
    preview: { host: '127.0.0.1', port: 0 },
    build: { outDir },
    logLevel: 'error',
  });
  return { server, address: server.resolvedUrls?.local[0] ?? '' };
};

const go = (page: Page, part: string) =>
  page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: new RegExp(`^${part}`) })
    .click();

describe('without network', () => {
  it('starts again, tags, and draws the report after one visit, and asks nothing of another machine', async () => {
    const { server, address } = await serve('dist/app');
    const { page, noise } = await openSheet(browser, address);
    await go(page, 'Start');
    await page.getByText(/Tubewright \d+\.\d+\.\d+\. Ready without network/).waitFor({ timeout: 60_000 });
    await server.close();

    await page.reload();
    await settled(page);
    await touchInPicture(page, 'U7L-L7L');
    await page.getByRole('button', { name: 'Bent', exact: true }).click();
    await page.getByRole('region', { name: 'Selected' }).getByText('Bent, undecided').waitFor();
    await go(page, 'Record');
    const download = page.waitForEvent('download', { timeout: 120_000 });
    await page.getByRole('button', { name: 'Download the report (PDF)' }).click();
    expect(
      readFileSync(await (await download).path())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    expect(noise).toEqual([]);
    await page.context().close();
  });

  it('offers a newer version, and takes it only when asked and nothing is half typed', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tubewright-'));
    cpSync('dist/app', folder, { recursive: true });
    const { server, address } = await serve(folder);
    const { page } = await openSheet(browser, address);
    await go(page, 'Start');
    await page.getByText(/Ready without network/).waitFor({ timeout: 60_000 });
    // another build: the list of what is kept differs in one file
    const index = join(folder, 'index.html');
    writeFileSync(index, readFileSync(index, 'utf8').replace('<title>', '<title>Newer '));
    const worker = join(folder, 'sw.js');
    const listed = readFileSync(worker, 'utf8');
    const changed = listed.replace(
      /(url:"index\.html",revision:")([0-9a-f]{4})/,
      (_, before: string) => `${before}ffff`,
    );
    const other =
      changed === listed
        ? listed.replace(/(revision:")[0-9a-f]{4}([0-9a-f]*",url:"index\.html")/, '$1ffff$2')
        : changed;
    expect(other).not.toBe(listed);
    writeFileSync(worker, other);
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    const offer = page.getByText(/A newer version of this program is ready/);
    await offer.waitFor({ timeout: 60_000 });
    expect(await page.title()).toBe('Tubewright');

    await page.evaluate(() => {
      const form = document.createElement('form');
      form.innerHTML = '<input type="text" aria-label="Half typed" value="23 5/">';
      document.querySelector('.card-body')?.append(form);
    });
    await page.getByRole('button', { name: 'Use it now' }).click();
    await page.getByText('Record or clear what you are typing first.').waitFor();
    expect(await page.title()).toBe('Tubewright');
    await page.getByLabel('Half typed').fill('');
    await page.getByRole('button', { name: 'Use it now' }).click();
    await page.waitForFunction(() => document.title === 'Newer Tubewright', undefined, { timeout: 60_000 });
    await settled(page);
    await server.close();
    await page.context().close();
    rmSync(folder, { recursive: true });
  });
});
