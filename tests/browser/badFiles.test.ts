import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { openSheet } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

describe('bad files on the screen', () => {
  it('each get a message in words that names the file, and the open job stays as it was', async () => {
    const { page, noise } = await openSheet(browser, address);
    const demo = readFileSync('demo-data/ground-loop.json', 'utf8');
    const files: readonly (readonly [string, string])[] = [
      ['not-json.json', '{"format": "tubewright-job"'],
      ['other.json', '{"format":"something","version":1}'],
      ['newer.json', demo.replace(/"version":\s*1/, '"version":42')],
      ['typed.json', demo.replace(/"name":\s*"[^"]*"/, '"name":5')],
      ['garbage.json', '\u0000\u0001'.repeat(2_000_000)],
    ];
    const name = await page.getByRole('heading', { level: 1 }).textContent();
    for (const [file, text] of files) {
      await page
        .getByRole('navigation', { name: 'Route' })
        .getByRole('button', { name: /^Start/ })
        .click();
      const choose = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: /Open a file/ }).click();
      await (await choose).setFiles({ name: file, mimeType: 'application/json', buffer: Buffer.from(text) });
      await page.getByText(file, { exact: false }).first().waitFor({ timeout: 30_000 });
      const said = (await page.getByRole('alert').allTextContents()).join(' ').replace(/\s+/g, ' ');
      expect(said).toContain(file);
      expect(said).not.toMatch(/\bat \w+ \(|TypeError|undefined is not/);
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(name);
    }
    expect(noise).toEqual([]);
  });
});
