import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { give, go, openSheet, settled } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const demo = JSON.parse(readFileSync('demo-data/ground-loop.json', 'utf8'));
const opened = () => openSheet(browser, address, [1440, 900], { touch: true });

describe('focus, voice and motion', () => {
  it('never leaves the focus nowhere: whatever is closed, left, undone or taken away', async () => {
    const { page, context } = await opened();
    const lost: string[] = [];
    const kept = async (after: string): Promise<void> => {
      await page.waitForTimeout(200);
      const at = await page.evaluate(() => document.activeElement?.tagName ?? 'none');
      if (at === 'BODY' || at === 'none') lost.push(after);
    };
    const press = async (name: string | RegExp, exact = true): Promise<void> => {
      await page
        .getByRole('button', { name, ...(typeof name === 'string' ? { exact } : {}) })
        .first()
        .click();
      await kept(`after ${name}`);
    };
    const dialog = page.getByRole('dialog', { name: 'Keys' });
    await page.keyboard.press('Shift+?');
    await dialog.getByRole('button', { name: 'Close' }).click();
    await kept('closing the key sheet by its button');
    await page.keyboard.press('Shift+?');
    await dialog.waitFor();
    await page.keyboard.press('Escape');
    await kept('closing the key sheet by Escape');
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L');
    await page.keyboard.press('Escape');
    await kept('closing the found list');
    await go(page, 'Start');
    await give(page, /Open a file/, 'broken.json', '{');
    await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
    await kept('closing a message');
    await give(page, "Join another tablet's job", 'two.json', JSON.stringify(demo));
    await page.getByRole('region', { name: 'From two.json' }).waitFor();
    await press('Leave it');
    await give(page, "Join another tablet's job", 'two.json', JSON.stringify(demo));
    await press('Join them');
    await press(/^Undo: /);
    await press('Model bench');
    await page.getByRole('navigation', { name: 'Parts of the bench' }).waitFor();
    await press(/^Back to|^Leave the bench|^Close the bench|the job$/);
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
    await page.keyboard.press('Enter');
    await go(page, 'Walk-round');
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    const photo = { name: 'p.png', mimeType: 'image/png', buffer: png };
    await page.getByLabel('Photo from a file').setInputFiles(photo);
    await page.getByRole('button', { name: 'Record the photo' }).waitFor();
    await press('Leave it');
    await page.getByLabel('Photo from a file').setInputFiles(photo);
    await page.getByRole('button', { name: 'Record the photo' }).waitFor();
    await press('Record the photo');
    await press(/^Change marks/);
    await press('Leave it');
    await press(/^Change marks/);
    await press('Record the change');
    await press(/^Remove: Photo/);
    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('table');
    await page.getByRole('row', { name: /U6L-L6L/ }).click();
    await kept('a row of the table');
    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption('picture');
    await kept('closing the table');
    for (const part of ['Trammel', 'Decide', 'Plan', 'Estimate', 'Relieve', 'Record', 'Practice', 'Start']) {
      await go(page, part);
      await kept(`going to ${part}`);
    }
    await press('Bench sums');
    await go(page, 'Start');
    await kept('leaving the bench sums');
    expect(lost).toEqual([]);
    await context.close();
  });

  it('says aloud a tag, undo, redo and saving, and moves nothing by itself when motion is to be reduced', async () => {
    const { page, context } = await opened();
    await page.evaluate(() => {
      const heard: string[] = [];
      Object.assign(window, { heard });
      const log = document.querySelector('[role="log"]')!;
      new MutationObserver(() => heard.push(log.textContent ?? '')).observe(log, {
        childList: true,
        characterData: true,
        subtree: true,
      });
    });
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
    await page.keyboard.press('Enter');
    await page.locator('.picture [role="img"]').focus();
    await page.keyboard.press('b');
    await page.waitForTimeout(1200);
    await page.keyboard.press('Control+z');
    await page.waitForTimeout(1200);
    await page.keyboard.press('Control+Shift+z');
    await page.waitForTimeout(1200);
    const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard.join('\n'));
    expect(heard).toMatch(/Bent: U7L-L7L/);
    expect(heard).toMatch(/Saved on this device/);
    expect(heard).toMatch(/Undone: Bent: U7L-L7L/);
    expect(heard).toMatch(/Redone: Bent: U7L-L7L/);
    await page.getByRole('button', { name: 'Plan', exact: true }).first().click();
    await settled(page);
    const frames = () => page.evaluate(() => window.__tubewright!.frames().drawn);
    const before = await frames();
    await page.getByRole('button', { name: 'Left side' }).click();
    await page.waitForTimeout(600);
    // a move would be sixteen frames; a jump is one or two
    expect((await frames()) - before).toBeLessThan(4);
    await context.close();
  });
});
