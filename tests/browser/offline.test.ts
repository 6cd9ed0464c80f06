import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { build, type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { go, openSheet, settled, touchInPicture } from '../kit/page.ts';

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

  it('goes to every part of the route, practises, imports a table and hands out papers', async () => {
    const { server, address } = await serve('dist/app');
    const { page, noise } = await openSheet(browser, address);
    await go(page, 'Start');
    await page.getByText(/Ready without network/).waitFor({ timeout: 60_000 });
    await server.close();
    await page.reload();
    await settled(page);

    await touchInPicture(page, 'U7L-L7L');
    const route = page.getByRole('navigation', { name: 'Route' }).getByRole('button');
    for (let k = 0; k < (await route.count()); k++) {
      await route.nth(k).click();
      await page.locator('.card-body .stack, .card-body .empty').first().waitFor();
      await page.waitForTimeout(300);
      expect(await page.getByText(/Our own fault/).count()).toBe(0);
    }
    await go(page, 'Start');
    await page.getByRole('button', { name: 'Bench sums' }).click();
    await page.getByRole('complementary', { name: 'Bench sums' }).waitFor();

    await go(page, 'Record');
    for (const name of ['Download the report (PDF)', /Download .*CSV/]) {
      const download = page.waitForEvent('download', { timeout: 120_000 });
      await page.getByRole('button', { name }).first().click();
      expect((await download).suggestedFilename()).toMatch(/\.(pdf|csv)$/);
    }
    await go(page, 'Start');
    await page.getByRole('button', { name: 'Model bench' }).click();
    await page.getByRole('navigation', { name: 'Parts of the bench' }).waitFor();
    const parts = page.getByRole('navigation', { name: 'Parts of the bench' }).getByRole('button');
    for (let k = 0; k < (await parts.count()); k++) {
      await parts.nth(k).click();
      await page.waitForTimeout(100);
      expect(await page.getByText(/The bench failed/).count()).toBe(0);
      const paste = page.getByLabel('Paste a table here');
      if ((await paste.count()) === 0) continue;
      await paste.fill('1\t0\t20\t10\t0\t10\n2\t24\t20\t10\t0\t10');
      await page.getByText(/^2 rows to take/).waitFor();
      await paste.fill('');
    }
    await page.getByRole('button', { name: 'Back to the job' }).click();
    await go(page, 'Practice');
    await page.getByLabel('Seed').first().fill('DRILL');
    await page.getByRole('button', { name: 'Begin the drill' }).click();
    await page.getByRole('region', { name: 'Layout drill' }).getByText(/1 of/).waitFor();
    expect(noise).toEqual([]);
    await page.context().close();
  });

  it('takes a newer build while entries are being made, loses none of them, and says its version', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tubewright-old-'));
    const newer = mkdtempSync(join(tmpdir(), 'tubewright-new-'));
    cpSync('dist/app', folder, { recursive: true });
    await build({
      logLevel: 'error',
      build: { outDir: newer, emptyOutDir: true },
      plugins: [
        {
          name: 'version to come',
          enforce: 'pre',
          transform: (code, id) =>
            id.endsWith('core/version.ts') ? code.replace(/'[\d.]+'/, "'9.8.7'") : null,
        },
      ],
    });
    const { server, address } = await serve(folder);
    const { page, context } = await openSheet(browser, address);
    await go(page, 'Start');
    await page.getByText(/Tubewright \d+\.\d+\.\d+\. Ready without network/).waitFor({ timeout: 60_000 });
    const other = await context.newPage();
    await other.goto(`${address}?aa=0`);
    await settled(other);

    await go(page, 'Walk-round');
    const bend = async (id: string): Promise<void> => {
      await page.getByRole('combobox', { name: /Find a tube/ }).fill(id);
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Bent', exact: true }).click();
    };
    await bend('U7L-L7L');
    cpSync(newer, folder, { recursive: true });
    await page.evaluate(() => void navigator.serviceWorker.getRegistration().then((one) => one?.update()));
    await bend('U6L-L6L');
    await page.getByText(/A newer version of this program is ready/).waitFor({ timeout: 60_000 });
    await bend('U5L-L5L');
    // at once, before this one is said to be saved
    await page.getByRole('button', { name: 'Use it now' }).click();
    await page.waitForEvent('load', { timeout: 60_000 });
    await settled(page);
    await go(page, 'Start');
    await page.getByText(/Tubewright 9\.8\.7\. Ready without network/).waitFor({ timeout: 60_000 });
    const kept = page.getByRole('region', { name: 'This job' });
    const download = page.waitForEvent('download');
    await kept.getByRole('button', { name: 'Save a copy of the job' }).click();
    const text = readFileSync(await (await download).path(), 'utf8');
    const bent = JSON.parse(text).records.flatMap((r: { damage?: string; of?: string }) =>
      r.damage === 'bow' ? [r.of] : [],
    );
    expect(bent).toEqual(expect.arrayContaining(['U7L-L7L', 'U6L-L6L', 'U5L-L5L']));
    // a tab that had the older one open says so, and goes on
    await other.getByText(/Another tab took it already/).waitFor({ timeout: 30_000 });
    await other.getByRole('button', { name: 'Use it now' }).click();
    await other.waitForEvent('load', { timeout: 60_000 });
    await settled(other);
    await server.close();
    await context.close();
    for (const one of [folder, newer]) rmSync(one, { recursive: true });
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
