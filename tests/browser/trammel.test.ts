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

describe('the trammel on the floor', () => {
  it('takes 23 5/16 in five presses, says the difference before it is recorded, and undoes it with one touch', async () => {
    const { page, noise } = await openSheet(browser, address);
    await page.getByRole('button', { name: /^Trammel/ }).click();
    const pad = page.getByRole('group', { name: 'Keypad' });
    await pad.waitFor({ timeout: 60_000 });
    const reading = page.getByRole('region', { name: 'Take a reading' });
    const line = reading.getByRole('heading');
    const first = await line.textContent();
    for (const key of ['2', '3', 'and a fraction', '5', 'over 16'])
      await pad.getByRole('button', { name: key, exact: true }).click();
    await expect.poll(() => reading.getByLabel('Length read').inputValue()).toBe('23 5/16');
    await reading.getByText('= 23.313 in · 23 5/16').first().waitFor();
    await reading.getByText(/(longer: draw in|shorter: spread|On the target)/).waitFor();
    await reading.getByRole('button', { name: 'Record', exact: true }).click();
    await expect.poll(() => line.textContent()).not.toBe(first);
    await reading.getByRole('button', { name: `Undo ${first}` }).click();
    await expect.poll(() => line.textContent()).toBe(first);
    await reading.getByRole('button', { name: 'Undo last' }).waitFor();
    expect(noise).toEqual([]);
  });

  it('records a point on its mark, and plans anew when a line is struck', async () => {
    const { page, noise } = await openSheet(browser, address);
    await page.getByRole('button', { name: /^Trammel/ }).click();
    const reading = page.getByRole('region', { name: 'Take a reading' });
    await reading.waitFor({ timeout: 60_000 });
    const line = reading.getByRole('heading');
    const first = await line.textContent();
    await reading.getByRole('button', { name: 'Set, and the miss' }).click();
    await reading.getByRole('button', { name: 'On the mark' }).click();
    await expect.poll(() => line.textContent()).not.toBe(first);
    const second = (await line.textContent())!;
    await reading.getByRole('button', { name: /strike it/ }).click();
    await page.getByText(/^Measuring plan/).click();
    await page
      .locator('li.entry-head', { hasText: second })
      .getByRole('button', { name: 'Put back' })
      .waitFor({ timeout: 60_000 });
    await expect.poll(() => line.textContent(), { timeout: 60_000 }).not.toBe(second);
    expect(noise).toEqual([]);
  });
});
