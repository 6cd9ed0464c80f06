import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readJob } from '../../src/core/job/read.ts';
import { chromiumFlags, executable, openChromium } from '../kit/chromium.ts';
import { go, openSheet, settled } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const bend = async (page: Page, id: string): Promise<void> => {
  await go(page, 'Walk-round');
  await page.getByRole('combobox', { name: /Find a tube/ }).fill(id);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Bent', exact: true }).click();
};
const said = (page: Page) => page.getByRole('status', { name: 'Saved' });
const saved = (page: Page) =>
  said(page)
    .getByText(/^Saved/)
    .waitFor({ timeout: 30_000 });
/** The file that a press of a button hands out. */
const file = async (page: Page, press: () => Promise<void>): Promise<string> => {
  const download = page.waitForEvent('download');
  await press();
  return readFileSync(await (await download).path(), 'utf8');
};
const saveCopy = (page: Page): Promise<string> =>
  file(page, () => page.getByRole('alert').getByRole('button', { name: 'Save a copy of the job' }).click());
const bent = (text: string): readonly string[] => {
  const read = readJob(text);
  return read.ok
    ? read.value.records.flatMap((r) => (r.kind === 'finding' && r.damage === 'bow' ? [r.of] : []))
    : [];
};

/** Writes over what is kept of every job, as a failing device would. */
const spoil = (page: Page, text: unknown): Promise<void> =>
  page.evaluate(
    (put) =>
      new Promise<void>((give, fail) => {
        const open = indexedDB.open('tubewright');
        open.onerror = () => fail(open.error);
        open.onsuccess = () => {
          const change = open.result.transaction('jobs', 'readwrite');
          const cursor = change.objectStore('jobs').openCursor();
          cursor.onsuccess = () => {
            const at = cursor.result;
            if (!at) return;
            at.update({ ...at.value, text: put });
            at.continue();
          };
          change.oncomplete = () => {
            open.result.close();
            give();
          };
          change.onerror = () => fail(change.error);
        };
      }),
    text,
  );

describe('trouble with what the browser keeps', () => {
  it('a full storage: says so, hands out a file, and keeps everything again when there is room', async () => {
    const context = await browser.newContext({ acceptDownloads: true, reducedMotion: 'reduce' });
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    const origin = new URL(address).origin;
    // before the first use: Chromium remembers for long how much room a database had
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1000 });
    await page.goto(`${address}?aa=0`);
    await settled(page);
    await bend(page, 'U7L-L7L');
    await said(page).getByText('NOT SAVED on this device').waitFor({ timeout: 30_000 });
    await page
      .getByRole('alert')
      .getByText(/the storage it allows is full\. Save a copy as a file now/)
      .waitFor();
    expect(bent(await saveCopy(page))).toContain('U7L-L7L');
    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await bend(page, 'U6L-L6L');
    await saved(page);
    await expect.poll(() => page.getByRole('alert').filter({ hasText: 'refuses' }).count()).toBe(0);
    await page.reload();
    await settled(page);
    await go(page, 'Record');
    const text = await file(page, () =>
      page.getByRole('button', { name: 'Save a copy of the job' }).first().click(),
    );
    expect(bent(text)).toEqual(expect.arrayContaining(['U7L-L7L', 'U6L-L6L']));
    await context.close();
  });

  it.each([
    ['text cut short', '{"format":"tubewright-job","rec'],
    ['no text at all', 17],
  ])(
    'a spoiled entry (%s): opens an earlier state or the demo, and hands the entry out as it is',
    async (_, put) => {
      const { page, context, noise } = await openSheet(browser, address);
      await saved(page);
      await bend(page, 'U7L-L7L');
      await saved(page);
      // a second save leaves the first as an earlier state
      await bend(page, 'U6L-L6L');
      await saved(page);
      await spoil(page, put);
      await page.reload();
      await settled(page);
      await page
        .getByRole('alert')
        .getByText(/as kept here cannot be read/)
        .waitFor();
      await go(page, 'Start');
      const list = page.getByRole('region', { name: 'Jobs on this device' });
      await expect.poll(() => list.getByRole('button', { name: 'As a file' }).count()).toBeGreaterThan(1);
      const texts: string[] = [];
      for (const one of await list.getByRole('button', { name: 'As a file' }).all())
        texts.push(await file(page, () => one.click()));
      expect(texts.some((text) => text.includes(String(put)))).toBe(true);
      await bend(page, 'U5L-L5L');
      await saved(page);
      expect(noise).toEqual([]);
      await context.close();
    },
  );

  it('no storage (indexedDB throws): says so at once, works, and hands out what was entered', async () => {
    const context = await browser.newContext({ acceptDownloads: true, reducedMotion: 'reduce' });
    await context.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    });
    const page = await context.newPage();
    await page.goto(`${address}?aa=0`);
    await settled(page);
    await page
      .getByRole('alert')
      .getByText(/storage is switched off here.*Save a copy as a file now/)
      .waitFor();
    await bend(page, 'U7L-L7L');
    await said(page).getByText('NOT SAVED on this device').waitFor();
    expect(bent(await saveCopy(page))).toContain('U7L-L7L');
    await context.close();
  });

  it('storage denied in the settings of the browser: the same', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'tubewright-denied-'));
    mkdirSync(join(profile, 'Default'));
    writeFileSync(
      join(profile, 'Default', 'Preferences'),
      JSON.stringify({ profile: { default_content_setting_values: { cookies: 2 } } }),
    );
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: executable(),
      args: [...chromiumFlags],
      acceptDownloads: true,
      reducedMotion: 'reduce',
    });
    try {
      const page = await context.newPage();
      const faults: string[] = [];
      page.on('pageerror', (fault) => faults.push(fault.message));
      await page.goto(`${address}?aa=0`);
      await settled(page);
      const denied = await page.evaluate(() => {
        try {
          return String(localStorage.length);
        } catch (why) {
          return (why as DOMException).name;
        }
      });
      expect(denied).toBe('SecurityError');
      await page
        .getByRole('alert')
        .getByText(/refuses to keep the job on this device.*Save a copy as a file now/)
        .waitFor();
      await bend(page, 'U7L-L7L');
      await said(page).getByText('NOT SAVED on this device').waitFor();
      expect(bent(await saveCopy(page))).toContain('U7L-L7L');
      await go(page, 'Start');
      await page.getByText(/does not let the program be kept/).waitFor();
      expect(faults).toEqual([]);
    } finally {
      await context.close();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
  });

  it('a private window: keeps while it is open, says that it forgets, and hands out a file', async () => {
    // a context of its own is to Chromium what a private window is
    const { page, context, noise } = await openSheet(browser, address);
    await bend(page, 'U7L-L7L');
    await saved(page);
    await page.reload();
    await settled(page);
    await go(page, 'Start');
    await page.getByText(/a private window forgets everything when it is closed/).waitFor();
    const text = await file(page, () =>
      page.getByRole('button', { name: 'Save a copy of the job' }).first().click(),
    );
    expect(bent(text)).toContain('U7L-L7L');
    expect(noise).toEqual([]);
    await context.close();
  });

  it('two tabs on one job: the later one says so, and what both entered is there', async () => {
    const { page, context, noise } = await openSheet(browser, address);
    await saved(page);
    const other = await context.newPage();
    await other.goto(`${address}?aa=0`);
    await settled(other);
    await bend(page, 'U7L-L7L');
    await saved(page);
    await bend(other, 'U6L-L6L');
    await other
      .getByRole('alert')
      .getByText(/Another tab changed .* meanwhile\. Both are kept/)
      .waitFor();
    await saved(other);
    await bend(page, 'U5L-L5L');
    await saved(page);
    await go(other, 'Start');
    const list = other.getByRole('region', { name: 'Jobs on this device' });
    await expect.poll(() => list.getByRole('button', { name: 'As a file' }).count()).toBe(2);
    const texts: (readonly string[])[] = [];
    for (const one of await list.getByRole('button', { name: 'As a file' }).all())
      texts.push(bent(await file(other, () => one.click())));
    // one tube of each of the three entries, in the job of its own tab
    const has = (ids: readonly string[]) => texts.some((text) => ids.every((id) => text.includes(id)));
    expect(has(['U6L-L6L'])).toBe(true);
    expect(has(['U7L-L7L', 'U5L-L5L'])).toBe(true);
    expect(noise).toEqual([]);
    await context.close();
  });
});
