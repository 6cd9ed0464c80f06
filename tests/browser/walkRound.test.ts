import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openChromium } from '../kit/chromium.ts';
import { openSheet, settled, touchInPicture } from '../kit/page.ts';

const address = inject('address');
let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

describe('walk-round in a real browser', () => {
  it('tags a tube touched in the picture, undoes, redoes, and finds it again after closing the tab', async () => {
    const { page, noise } = await openSheet(browser, address);
    await page.getByRole('button', { name: 'Left side' }).click();
    await page.waitForTimeout(400);
    await touchInPicture(page, 'U7L-L7L');
    const selected = page.getByRole('region', { name: 'Selected' });
    await selected.getByText('U7L-L7L').waitFor();
    await page.getByRole('button', { name: 'Bent', exact: true }).click();
    await selected.getByText('Bent, undecided').waitFor();
    await page.getByRole('button', { name: /^Undo: / }).click();
    await selected.getByText('Bent, undecided').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Redo: / }).click();
    await selected.getByText('Bent, undecided').waitFor();
    await page
      .getByRole('status', { name: 'Saved' })
      .getByText(/^Saved/)
      .waitFor();

    await page.reload();
    await settled(page);
    await page.getByRole('combobox', { name: /Find a tube/ }).fill('U7L-L7L');
    await page.keyboard.press('Enter');
    await selected.getByText('Bent, undecided').waitFor();
    expect(noise).toEqual([]);
  });

  it('tags several at once by keyboard in the table, and finds a tube by what it is', async () => {
    const { page, noise } = await openSheet(browser, address);
    await page.getByRole('combobox', { name: 'Picture or table' }).selectOption({ label: 'Both' });
    const row = (id: string) => page.locator(`tr[data-id="${id}"]`);
    await page.getByRole('searchbox', { name: /table/i }).fill('vertical');
    await row('U8L-L8L').click();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Shift+Space');
    await page.getByText('2 selected').first().waitFor();
    await page.keyboard.press('a');
    await expect.poll(() => row('U8L-L8L').textContent()).toContain('Look again');

    const find = page.getByRole('combobox', { name: /Find a tube/ });
    await find.fill('upper left longeron, bay 4');
    await page.getByRole('option', { name: /U4L-U5L/ }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Selected' }).getByText('U4L-U5L').waitFor();
    expect(noise).toEqual([]);
  });
});
