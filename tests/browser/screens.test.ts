import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { accessFaults } from '../kit/access.ts';
import { openChromium } from '../kit/chromium.ts';
import { misfits, openSheet, touchInPicture } from '../kit/page.ts';

const address = inject('address');
const shots = 'tests/browser/shots';
let browser: Browser;
beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  browser = await openChromium();
});
afterAll(() => browser.close());

const sizes = [
  [1440, 900],
  [1024, 768],
  [820, 1180],
  [390, 844],
] as const;

/** The light is chosen in the head, on a phone on the first part of the route. */
const choose = async (page: Page, light: string): Promise<void> => {
  const head = page.getByRole('banner').getByRole('combobox', { name: 'Light' });
  if (await head.isVisible()) return void (await head.selectOption({ label: light }));
  await page
    .getByRole('navigation', { name: 'Route' })
    .getByRole('button', { name: /^Start/ })
    .click();
  await page
    .getByRole('complementary')
    .getByRole('combobox', { name: 'Sheet for' })
    .selectOption({ label: light });
};

describe.each(sizes)('every part of the route at %i by %i', (width, height) => {
  it('has nothing overlapping or cut off, and nothing an automated check of WCAG 2.2 AA finds', async () => {
    const { page, noise } = await openSheet(browser, address, [width, height], { touch: width < 1000 });
    await touchInPicture(page, 'L3R-L4R');
    const route = page.getByRole('navigation', { name: 'Route' }).getByRole('button');
    const wrong: string[] = [];
    const lights = width === 1440 ? ['Day', 'Night', 'Outdoor'] : ['Day', 'Night'];
    for (const light of lights) {
      await choose(page, light);
      for (let k = 0; k < (await route.count()); k++) {
        await route.nth(k).click();
        await page.waitForTimeout(150);
        const word = ((await route.nth(k).textContent()) ?? '').replace(/[^A-Za-z-].*$/, '');
        const where = `${word} ${light} ${width}`;
        await page.screenshot({ path: `${shots}/${width}-${light}-${word}.png` });
        if (light === 'Day') wrong.push(...(await misfits(page)).map((one) => `${where}: ${one}`));
        if (light === 'Day' && width !== 1440 && width !== 390) continue;
        wrong.push(...(await accessFaults(page)).map((one) => `${where}: ${one}`));
      }
    }
    expect(wrong).toEqual([]);
    expect(noise).toEqual([]);
  });
});
